// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.numerics.Analysis;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/**
 * Load factors λ at which (K + λG) x = 0, K positive definite and G of any sign: the smallest positive ones, and the
 * smallest negative ones (load reversed).
 *
 * <p>Lanczos in the inner product of K, first on -K⁻¹G, whose eigenvalues are 1/λ and which needs only the factorisation
 * of K. Where these crowd and convergence is slow, K + σG with σ beyond or among the factors asked for is factorised, which
 * counts those before it at once, and the iteration continues on -σ(K + σG)⁻¹G, whose eigenvalues are σ/(λ - σ) (buckling mode of
 * Grimes, Lewis and Simon 1994, SIAM J. Matrix Anal. Appl. 15:228, less the identity).
 */
public final class CriticalFactors {
    private static final int BLOCK = 4;
    private static final int GUARD = 1;
    /** Residual over eigenvalue of the operator; the error of factors goes with its square. */
    private static final double TOLERANCE = 1e-9;

    private static final int EASY_RESTARTS = 0;
    private static final int RESTARTS = 40;
    /** How many more than twice those asked for may lie before a shift. */
    private static final int SPARE = 8;

    /** Residual over eigenvalue up to which an estimate is good enough to place a shift by. */
    private static final double BELIEVED = 0.35;

    private static final int ATTEMPTS = 12;

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
        BlockLanczos.Ritz ritz = new BlockLanczos(k, inverse(), BLOCK, wanted(positive, negative), 1)
                .run(BlockLanczos.Ritz.NONE, List.of(), EASY_RESTARTS);
        solves += ritz.solves();
        EigenPairs up = side(1, positive, ritz);
        EigenPairs down = side(-1, negative, ritz);
        return new Both(up, down);
    }

    private static int guarded(int count) {
        return count == 0 ? 0 : count + GUARD;
    }

    private static BlockLanczos.Wanted wanted(int positive, int negative) {
        return new BlockLanczos.Wanted(
                guarded(positive), Math.min(positive, GUARD), guarded(negative), Math.min(negative, GUARD), TOLERANCE);
    }

    private BlockLanczos.Operator inverse() {
        return (v, bv) -> {
            double[][] w = g.multiply(v);
            for (double[] x : w) {
                for (int j = 0; j < x.length; j++) {
                    x[j] = -x[j];
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
        double[] residuals = residuals(sign, first);
        boolean converged = first.converged();
        int wanted = guarded(count);
        if (count > 0 && !converged && factors.length > 0) {
            return shifted(sign, count, factors, reliable(sign, first), vectors);
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
                    Arrays.stream(factors).map(f -> 1 / f).toArray(),
                    vectors.toArray(new double[0][]),
                    true,
                    residuals,
                    0);
            BlockLanczos.Ritz more = new BlockLanczos(
                            k,
                            scaledInverse(sign),
                            BLOCK,
                            new BlockLanczos.Wanted(wanted, GUARD, 0, 0, TOLERANCE),
                            2 + attempt)
                    .run(known, List.of(), RESTARTS);
            solves += more.solves();
            if (!more.converged()) {
                return shifted(sign, count, factors, factors.length, vectors);
            }
            vectors = new ArrayList<>();
            factors = factors(1, more, vectors);
            residuals = residuals(1, more);
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

    /** How many of the lowest estimates of one sign can be believed to some ten per cent. */
    private static int reliable(int sign, BlockLanczos.Ritz ritz) {
        int n = ritz.values().length;
        int reliable = 0;
        for (int i = 0; i < n; i++) {
            int at = sign > 0 ? i : n - 1 - i;
            if (!(sign * ritz.values()[at] > 0) || ritz.residuals()[at] > BELIEVED) {
                break;
            }
            reliable++;
        }
        return reliable;
    }

    /**
     * Iterates about a shift placed just beyond the factors asked for, or beyond those of them that the first run has told.
     * Its factorisation counts what lies before it, so that in the first case no other count is needed.
     */
    private EigenPairs shifted(int sign, int count, double[] estimates, int reliable, List<double[]> start) {
        int inside = Math.min(Math.min(count, reliable), estimates.length);
        double shift = 0.9 * estimates[0];
        if (inside > 0) {
            double last = estimates[inside - 1];
            shift = 1.05 * last;
            if (inside < estimates.length && estimates[inside] > last * (1 + 1e-7)) {
                shift = Math.min(shift, 0.5 * (last + estimates[inside]));
            }
        }
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            try (Factorisation factor = analysis.factorise(k.plus(sign * shift, g))) {
                factorisations++;
                int before = factor.negativePivots();
                if (before <= 2 * count + SPARE) {
                    return shifted(sign, count, shift, before, factor, start);
                }
                shift *= attempt < 2 ? 0.8 : 0.4;
            } catch (SingularMatrixException e) {
                shift *= 1 + 1e-4;
            }
        }
        throw disagreement();
    }

    private EigenPairs shifted(
            int sign, int count, double shift, int before, Factorisation factor, List<double[]> start) {
        // Eigenvalues σ/(λ - σ): those before the shift lie below -1, those beyond above 0, the other sign's between.
        BlockLanczos.Operator operator = (v, bv) -> {
            double[][] w = g.multiply(v);
            for (double[] x : w) {
                for (int j = 0; j < x.length; j++) {
                    x[j] *= -sign * shift;
                }
            }
            factor.solveInPlace(w);
            return w;
        };
        BlockLanczos.Ritz ritz = BlockLanczos.Ritz.NONE;
        int low = before;
        int high = before >= count ? 0 : guarded(count) - before;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            List<double[]> from = attempt == 0 ? mixed(start) : List.of();
            ritz = new BlockLanczos(
                            k,
                            operator,
                            BLOCK,
                            new BlockLanczos.Wanted(high, Math.min(high, GUARD), low, 0, TOLERANCE),
                            20 + attempt)
                    .run(ritz, from, RESTARTS);
            solves += ritz.solves();
            if (!ritz.converged()) {
                throw new EigenException("The lowest critical factors did not converge; too many lie close together");
            }
            List<double[]> vectors = new ArrayList<>();
            double[] factors = aboutShift(shift, ritz, vectors);
            int found = (int) Arrays.stream(factors).filter(f -> f < shift).count();
            if (found < before) {
                low += before - found;
                continue;
            }
            if (before >= count) {
                return pairs(sign, count, factors, vectors, new Spectrum.Cut(shift, before));
            }
            Spectrum.Cut cut = Spectrum.cut(factors, Math.min(count, factors.length), 0);
            int counted = cut.below() == before ? before : counted(sign, cut.bound());
            if (counted == cut.below()) {
                return pairs(sign, count, factors, vectors, cut);
            }
            high += Math.max(0, counted - cut.below());
        }
        throw disagreement();
    }

    /** Factors as positive numbers, rising; their vectors are appended. */
    private static double[] aboutShift(double shift, BlockLanczos.Ritz ritz, List<double[]> vectors) {
        int n = ritz.values().length;
        int firstNegative = 0;
        while (firstNegative < n && ritz.values()[firstNegative] > 0) {
            firstNegative++;
        }
        double[] factors = new double[n];
        int count = 0;
        // In falling order the negative ones bring the factors before the shift, rising; then come those beyond.
        for (int step = 0; step < n; step++) {
            int i = (firstNegative + step) % n;
            double value = ritz.values()[i];
            if (value < -1 || value > 0) {
                factors[count++] = shift * (1 + 1 / value);
                vectors.add(ritz.vectors()[i]);
            }
        }
        return Arrays.copyOf(factors, count);
    }

    /** One block of vectors in which all the estimates have a part. */
    private static List<double[]> mixed(List<double[]> estimates) {
        List<double[]> block = new ArrayList<>();
        for (int i = 0; i < estimates.size(); i++) {
            if (i < BLOCK) {
                block.add(estimates.get(i).clone());
            } else {
                double[] sum = block.get(i % BLOCK);
                double[] more = estimates.get(i);
                for (int j = 0; j < sum.length; j++) {
                    sum[j] += more[j];
                }
            }
        }
        return block;
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

    /** Residuals in the order of {@link #factors}. */
    private static double[] residuals(int sign, BlockLanczos.Ritz ritz) {
        int n = ritz.values().length;
        return IntStream.range(0, n)
                .map(i -> sign > 0 ? i : n - 1 - i)
                .filter(i -> sign * ritz.values()[i] > 0)
                .mapToDouble(i -> ritz.residuals()[i])
                .toArray();
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
