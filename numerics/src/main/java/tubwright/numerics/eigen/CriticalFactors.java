// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import tubwright.numerics.Analysis;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;

/**
 * Load factors λ at which (K + λG) x = 0, K positive definite and G of any sign: the smallest positive ones, and the
 * smallest negative ones (load reversed).
 *
 * <p>Lanczos in the inner product of K, first on -K⁻¹G, whose eigenvalues are 1/λ and which needs only the factorisation
 * of K. Where these crowd and convergence is slow, K + σG with σ short of the lowest factor is factorised and the
 * iteration continues on (K + σG)⁻¹K, whose eigenvalues are λ/(λ - σ) (buckling mode of Grimes, Lewis and Simon 1994,
 * SIAM J. Matrix Anal. Appl. 15:228).
 */
public final class CriticalFactors {
    private static final int BLOCK = 4;
    private static final int GUARD = 1;
    private static final int EASY_RESTARTS = 0;
    private static final int RESTARTS = 40;
    private static final int ATTEMPTS = 6;

    private final SymmetricMatrix k;
    private final SymmetricMatrix g;
    private final Analysis analysis;
    private final Factorisation ofK;
    private int solves;
    private int factorisations;

    private CriticalFactors(SymmetricMatrix k, SymmetricMatrix g, Analysis analysis, Factorisation ofK) {
        this.k = k;
        this.g = g;
        this.analysis = analysis;
        this.ofK = ofK;
    }

    /**
     * Both sides of the spectrum.
     *
     * @param positive factors rising from zero; fewer than asked for, or none, where the load cannot buckle
     * @param negative factors falling from zero
     */
    public record Both(EigenPairs positive, EigenPairs negative) {}

    /**
     * Finds the lowest factors and proves by inertia that none was missed.
     *
     * @param k stiffness, positive definite, held unknowns decoupled
     * @param g geometric stiffness per unit load factor on the same pattern, held unknowns cleared
     * @param positive how many positive factors
     * @param negative how many negative factors
     * @param analysis of the pattern, for indefinite matrices; used for the count
     * @param ofK factorisation of K
     * @throws EigenException if the iteration stalls
     */
    public static Both of(
            SymmetricMatrix k, SymmetricMatrix g, int positive, int negative, Analysis analysis, Factorisation ofK) {
        return new CriticalFactors(k, g, analysis, ofK).both(positive, negative);
    }

    private Both both(int positive, int negative) {
        BlockLanczos.Ritz none = new BlockLanczos.Ritz(new double[0], new double[0][], true, 0);
        BlockLanczos.Ritz ritz = new BlockLanczos(k, inverse(), BLOCK, guarded(positive), guarded(negative), 1)
                .run(none, List.of(), EASY_RESTARTS);
        solves += ritz.solves();
        EigenPairs up = side(1, positive, ritz);
        EigenPairs down = side(-1, negative, ritz);
        return new Both(up, down);
    }

    private static int guarded(int count) {
        return count == 0 ? 0 : count + GUARD;
    }

    private BlockLanczos.Operator inverse() {
        return (v, bv) -> {
            double[][] w = new double[v.length][];
            for (int i = 0; i < v.length; i++) {
                w[i] = g.multiply(v[i]);
                for (int j = 0; j < w[i].length; j++) {
                    w[i][j] = -w[i][j];
                }
            }
            ofK.solveInPlace(w);
            return w;
        };
    }

    /** The pairs of one sign, counted; more are sought where the count says so. */
    private EigenPairs side(int sign, int count, BlockLanczos.Ritz first) {
        List<double[]> vectors = new ArrayList<>();
        double[] factors = factors(sign, first, vectors);
        boolean converged = first.converged();
        int wanted = guarded(count);
        if (count > 0 && !converged && factors.length > 0) {
            return shifted(sign, count, factors, vectors);
        }
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            if (factors.length == 0 || count == 0) {
                return new EigenPairs(
                        new double[0],
                        new double[0][],
                        new double[0],
                        new InertiaCount(0, 0, 0),
                        solves,
                        factorisations);
            }
            Spectrum.Cut cut = Spectrum.cut(factors, Math.min(count, factors.length), 0);
            int counted = counted(sign, cut.bound());
            if (counted == cut.below()) {
                return pairs(sign, count, factors, vectors, cut);
            }
            wanted += Math.max(0, counted - cut.below());
            BlockLanczos.Ritz known = new BlockLanczos.Ritz(
                    Arrays.stream(factors).map(f -> 1 / f).toArray(), vectors.toArray(new double[0][]), true, 0);
            BlockLanczos.Ritz more = new BlockLanczos(k, scaledInverse(sign), BLOCK, wanted, 0, 2 + attempt)
                    .run(known, List.of(), RESTARTS);
            solves += more.solves();
            if (!more.converged()) {
                return shifted(sign, count, factors, vectors);
            }
            vectors = new ArrayList<>();
            factors = factors(1, more, vectors);
        }
        throw disagreement();
    }

    private BlockLanczos.Operator scaledInverse(int sign) {
        BlockLanczos.Operator plain = inverse();
        return sign > 0
                ? plain
                : (v, bv) -> {
                    double[][] w = plain.apply(v, bv);
                    for (double[] x : w) {
                        for (int j = 0; j < x.length; j++) {
                            x[j] = -x[j];
                        }
                    }
                    return w;
                };
    }

    /** Buckling mode with a shift short of the lowest factor. */
    private EigenPairs shifted(int sign, int count, double[] estimates, List<double[]> start) {
        double shift = 0.9 * estimates[0];
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            try (Factorisation factor = analysis.factorise(k.plus(sign * shift, g))) {
                factorisations++;
                if (factor.negativePivots() > 0) {
                    shift *= 0.7;
                    continue;
                }
                return shifted(sign, count, shift, factor, start);
            }
        }
        throw disagreement();
    }

    private EigenPairs shifted(int sign, int count, double shift, Factorisation factor, List<double[]> start) {
        BlockLanczos.Operator operator = (v, bv) -> factor.solve(bv);
        int wanted = guarded(count);
        BlockLanczos.Ritz ritz = new BlockLanczos.Ritz(new double[0], new double[0][], true, 0);
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            List<double[]> from =
                    attempt == 0 ? start.stream().map(double[]::clone).toList() : List.of();
            ritz = new BlockLanczos(k, operator, BLOCK, wanted, 0, 20 + attempt).run(ritz, from, RESTARTS);
            solves += ritz.solves();
            if (!ritz.converged()) {
                throw new EigenException("The lowest critical factors did not converge; too many lie close together");
            }
            List<double[]> vectors = new ArrayList<>();
            List<Double> list = new ArrayList<>();
            for (int i = 0; i < ritz.values().length; i++) {
                if (ritz.values()[i] > 1 + 1e-9) {
                    list.add(shift * ritz.values()[i] / (ritz.values()[i] - 1));
                    vectors.add(ritz.vectors()[i]);
                }
            }
            double[] factors = list.stream().mapToDouble(Double::doubleValue).toArray();
            Spectrum.Cut cut = Spectrum.cut(factors, Math.min(count, factors.length), 0);
            int counted = counted(sign, cut.bound());
            if (counted == cut.below()) {
                return pairs(sign, count, factors, vectors, cut);
            }
            wanted += Math.max(0, counted - cut.below());
        }
        throw disagreement();
    }

    /** Factors of one sign as positive numbers, rising; their vectors are appended. */
    private static double[] factors(int sign, BlockLanczos.Ritz ritz, List<double[]> vectors) {
        List<Double> list = new ArrayList<>();
        for (int i = 0; i < ritz.values().length; i++) {
            if (sign * ritz.values()[i] > 0) {
                list.add(sign / ritz.values()[i]);
                vectors.add(ritz.vectors()[i]);
            }
        }
        if (sign < 0) {
            Collections.reverse(list);
            Collections.reverse(vectors);
        }
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private int counted(int sign, double bound) {
        factorisations++;
        return Spectrum.negativePivots(analysis, k, sign * bound, g);
    }

    private EigenPairs pairs(int sign, int count, double[] factors, List<double[]> vectors, Spectrum.Cut cut) {
        int returned = Math.min(count, factors.length);
        double[] values = new double[returned];
        double[] minus = new double[returned];
        for (int i = 0; i < returned; i++) {
            values[i] = sign * factors[i];
            minus[i] = -values[i];
        }
        double[][] x = vectors.subList(0, returned).toArray(new double[0][]);
        return new EigenPairs(
                values,
                x,
                Spectrum.errors(k, g, minus, x),
                new InertiaCount(sign * cut.bound(), cut.below(), cut.below()),
                solves,
                factorisations);
    }

    private static EigenException disagreement() {
        return new EigenException("The count by inertia and the iteration do not agree on the number of factors");
    }
}
