// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Arrays;
import tubwright.numerics.Analysis;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;

/**
 * Load factors λ at which (K + λG) x = 0, K positive definite and G of any sign: the smallest positive ones, and the
 * smallest negative ones (load reversed).
 *
 * <p>Lanczos in the inner product of K, first on -K⁻¹G, whose eigenvalues are 1/λ and which needs only the factorisation
 * of K, until it can be told about where the factors asked for end. There K + σG is factorised, which counts those before
 * it at once, and the iteration goes on with what it has, on -σ(K + σG)⁻¹G, whose eigenvalues are σ/(λ - σ) (buckling mode of
 * Grimes, Lewis and Simon 1994, SIAM J. Matrix Anal. Appl. 15:228, less the identity).
 */
public final class CriticalFactors {
    /** Over twice the factors asked for: so many vectors are solved before a shift is placed by what is known by then. */
    private static final int SKETCHED = 20;

    private static final int BLOCK = 4;
    private static final int GUARD = 1;
    /** Residual over eigenvalue of the operator; the error of factors goes with its square. */
    private static final double TOLERANCE = 1e-8;

    /** Residual over eigenvalue up to which an estimate is good enough to place a shift by. */
    private static final double BELIEVED = 0.1;

    private final SymmetricMatrix k;
    private final SymmetricMatrix g;
    private final Product inner;
    private final Product load;
    private final Analysis analysis;
    private final Factorisation ofK;
    private int solves;
    private int factorisations;

    private CriticalFactors(SymmetricMatrix k, SymmetricMatrix g, Analysis analysis, Factorisation ofK) {
        this.k = k;
        this.g = g;
        this.inner = Product.by(k);
        this.load = Product.by(g);
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
        BlockLanczos run = new BlockLanczos(inner, inverse(), BLOCK, wanted(positive, negative), 1);
        BlockLanczos.Rough rough = run.sketch(
                BlockLanczos.Ritz.NONE,
                r -> known(1, r, positive, run.solves()) && known(-1, r, negative, run.solves()));
        solves += run.solves();
        EigenPairs up = side(1, positive, run, rough);
        EigenPairs down = side(-1, negative, run, rough);
        return new Both(up, down);
    }

    /** Whether the run so far can place a shift: beyond the last factor asked for or, at some length, beyond some. */
    private static boolean known(int sign, BlockLanczos.Rough rough, int count, int solves) {
        int reliable = reliable(sign, rough);
        return count == 0 || reliable > count || (solves >= 2 * count + SKETCHED && reliable > 0);
    }

    private static int guarded(int count) {
        return count == 0 ? 0 : count + GUARD;
    }

    private static BlockLanczos.Wanted wanted(int positive, int negative) {
        return new BlockLanczos.Wanted(
                guarded(positive), Math.min(positive, GUARD), guarded(negative), Math.min(negative, GUARD), TOLERANCE);
    }

    /** The pairs of one sign, counted. */
    private EigenPairs side(int sign, int count, BlockLanczos run, BlockLanczos.Rough rough) {
        double[] estimates = Arrays.stream(rough.values())
                .filter(value -> sign * value > 0)
                .map(value -> sign / value)
                .sorted()
                .toArray();
        if (estimates.length == 0 || count == 0) {
            return new EigenPairs(
                    new double[0], new double[0][], new double[0], new InertiaCount(0, 0, 0), solves, factorisations);
        }
        CountedSearch search = new CountedSearch(new Problem(k, g, inner, load, sign), analysis, 0, BLOCK, TOLERANCE);
        return search.run(run, count, estimates, reliable(sign, rough), (found, operator) -> {
            solves += search.solves();
            factorisations += search.factorisations();
            return pairs(sign, count, found);
        });
    }

    /** K + σG, about any σ. */
    private record Problem(SymmetricMatrix k, SymmetricMatrix g, Product inner, Product load, int sign)
            implements CountedSearch.Problem {
        @Override
        public SymmetricMatrix at(double shift) {
            return k.plus(sign * shift, g);
        }

        @Override
        public BlockLanczos.Operator about(double shift, Factorisation factor) {
            return (v, bv) -> times(-sign * shift, load, v, factor);
        }

        @Override
        public double scale(double shift) {
            return shift;
        }

        /** Of σ/(λ - σ) the factors before the shift lie below -1, those beyond above 0, the other sign's between. */
        @Override
        public boolean asked(double value) {
            return value < -1 || value > 0;
        }

        @Override
        public BlockLanczos turned(BlockLanczos first, double shift, Factorisation factor, BlockLanczos.Wanted wanted) {
            return first.turned(sign * shift, sign * shift, about(shift, factor), wanted, 20);
        }
    }

    private static double[][] times(double factor, Product load, double[][] v, Factorisation factorisation) {
        double[][] w = load.of(v);
        for (double[] x : w) {
            for (int j = 0; j < x.length; j++) {
                x[j] *= factor;
            }
        }
        factorisation.solveInPlace(w);
        return w;
    }

    private BlockLanczos.Operator inverse() {
        return (v, bv) -> times(-1, load, v, ofK);
    }

    /** How many of the lowest estimates of one sign can be believed to some ten per cent. */
    private static int reliable(int sign, BlockLanczos.Rough rough) {
        int n = rough.values().length;
        int reliable = 0;
        for (int i = 0; i < n; i++) {
            int at = sign > 0 ? i : n - 1 - i;
            if (!(sign * rough.values()[at] > 0) || rough.residuals()[at] > BELIEVED) {
                break;
            }
            reliable++;
        }
        return reliable;
    }

    private EigenPairs pairs(int sign, int count, CountedSearch.Found found) {
        int returned = Math.min(count, found.values().length);
        double[] values = new double[returned];
        double[] minus = new double[returned];
        for (int i = 0; i < returned; i++) {
            values[i] = sign * found.values()[i];
            minus[i] = -values[i];
        }
        double[][] x = found.vectors().subList(0, returned).toArray(new double[0][]);
        return new EigenPairs(
                values,
                x,
                Spectrum.errors(k, g, minus, x),
                new InertiaCount(
                        sign * found.cut().bound(),
                        found.cut().below(),
                        found.cut().below()),
                solves,
                factorisations);
    }
}
