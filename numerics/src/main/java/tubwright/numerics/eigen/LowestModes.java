// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Arrays;
import java.util.List;
import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;

/**
 * Lowest eigenpairs of K x = λ M x, both symmetric and positive semi-definite (M may have zero rows, K rigid motions),
 * by Lanczos on the shift-and-invert operator (K - σM)⁻¹M, whose eigenvalues are 1/(λ - σ) (Ericsson and Ruhe 1980,
 * Math. Comput. 35:1251). Unknowns that are held must be cleared in M and decoupled with a positive diagonal in K.
 */
public final class LowestModes {
    /** Vectors advanced at once: one is solved on one core, four on two in hardly more time. */
    private static final int BLOCK = 4;

    /** Residual over eigenvalue of the last estimate wanted at which a shift is placed beyond it. */
    private static final double BELIEVED = 0.3;

    private static final int GUARD = 2;
    /** Residual over eigenvalue of the operator; the error of eigenvalues goes with its square. A decade costs one step. */
    private static final double TOLERANCE = 1e-11;

    private static final int RESTARTS = 60;
    private static final int ATTEMPTS = 7;
    /** Backward error up to which vectors are good as the iteration leaves them. */
    private static final double CLEAN = 1e-10;

    private LowestModes() {}

    /**
     * Finds the lowest pairs and proves by inertia that none was missed.
     *
     * @param k stiffness
     * @param m mass, on the same pattern
     * @param count how many; fewer come back if M has lower rank
     * @param shift σ, below all eigenvalues: zero where K is positive definite, else negative, best of the size of the
     *     lowest eigenvalue that is not zero
     * @return values rising, vectors of unit norm in M
     * @throws IllegalArgumentException if an eigenvalue lies below the shift
     * @throws EigenException if the iteration stalls
     */
    public static EigenPairs of(SymmetricMatrix k, SymmetricMatrix m, int count, double shift, DirectSolver solver) {
        return of(k, m, count, shift, List.of(), solver);
    }

    /**
     * As {@link #of(SymmetricMatrix, SymmetricMatrix, int, double, DirectSolver)}, where some vectors are known that K sends
     * to zero: rigid motions. They need no solution; the inertia counts them like any other.
     *
     * @param still such vectors, none of them a mixture of the others in M
     */
    public static EigenPairs of(
            SymmetricMatrix k, SymmetricMatrix m, int count, double shift, List<double[]> still, DirectSolver solver) {
        if (!still.isEmpty() && !(shift < 0)) {
            throw new IllegalArgumentException("where motions without stiffness are known the shift is negative");
        }
        if (count < 1) {
            throw new IllegalArgumentException("Ask for at least one eigenpair, not " + count);
        }
        Product inner = Product.by(m);
        BlockLanczos.Ritz known = known(inner, shift, still);
        try (Analysis analysis = solver.analyse(k.pattern(), Definiteness.INDEFINITE)) {
            CountedSearch search =
                    new CountedSearch(new Problem(k, m, inner, shift), analysis, shift, BLOCK, TOLERANCE);
            BlockLanczos first;
            double[] estimates;
            int reliable;
            try (Factorisation factor = analysis.factorise(shift == 0 ? k : k.plus(-shift, m))) {
                if (factor.negativePivots() > 0) {
                    throw new IllegalArgumentException(factor.negativePivots() + " eigenvalues lie below the shift "
                            + shift + "; choose a lower one, and see that the stiffness has no negative part");
                }
                first = new BlockLanczos(
                        inner,
                        (v, bv) -> factor.solve(bv),
                        BLOCK,
                        new BlockLanczos.Wanted(count + GUARD, GUARD, 0, 0, TOLERANCE),
                        1);
                BlockLanczos.Rough rough =
                        first.sketch(known, r -> r.values().length > count && r.residuals()[count - 1] < BELIEVED);
                if (rough.exhausted() || rough.values().length < count) {
                    return whole(k, m, inner, count, shift, known, analysis, factor);
                }
                estimates =
                        Arrays.stream(rough.values()).map(t -> shift + 1 / t).toArray();
                reliable = count;
            }
            return search.run(first, count, estimates, reliable, (found, operator) -> {
                int returned = Math.min(count, found.values().length);
                double[] lowest = Arrays.copyOf(found.values(), returned);
                double[][] vectors = found.vectors().subList(0, returned).toArray(new double[0][]);
                return cleaned(
                        k,
                        m,
                        lowest,
                        vectors,
                        operator,
                        new InertiaCount(
                                found.cut().bound(),
                                found.cut().below(),
                                found.cut().below()),
                        first.solves() + search.solves(),
                        1 + search.factorisations());
            });
        }
    }

    /** K - σM, about any σ. */
    private record Problem(SymmetricMatrix k, SymmetricMatrix m, Product inner, double origin)
            implements CountedSearch.Problem {
        @Override
        public SymmetricMatrix at(double shift) {
            return k.plus(-shift, m);
        }

        @Override
        public BlockLanczos.Operator about(double shift, Factorisation factor) {
            return (v, bv) -> factor.solve(bv);
        }

        @Override
        public double scale(double shift) {
            return 1;
        }

        @Override
        public boolean asked(double value) {
            return true;
        }

        @Override
        public BlockLanczos turned(BlockLanczos first, double shift, Factorisation factor, BlockLanczos.Wanted wanted) {
            return first.turned(shift - origin, 1, about(shift, factor), wanted, 20);
        }
    }

    /** Motions without stiffness as pairs of the operator: (K - σM)⁻¹M x = -x/σ. */
    private static BlockLanczos.Ritz known(Product m, double shift, List<double[]> still) {
        Basis basis = new Basis(m);
        for (double[] each : still) {
            basis.orthogonalise(each.clone(), new double[still.size() + 1]);
        }
        double[] values = new double[basis.size()];
        double[][] vectors = new double[basis.size()][];
        for (int i = 0; i < vectors.length; i++) {
            values[i] = -1 / shift;
            vectors[i] = basis.vector(i);
        }
        return new BlockLanczos.Ritz(values, vectors, true, new double[values.length], 0);
    }

    /** All pairs there are, or as many as asked for, of a problem so small that an iteration soon has seen the whole of it. */
    private static EigenPairs whole(
            SymmetricMatrix k,
            SymmetricMatrix m,
            Product inner,
            int count,
            double shift,
            BlockLanczos.Ritz still,
            Analysis analysis,
            Factorisation factor) {
        BlockLanczos.Operator operator = (v, bv) -> factor.solve(bv);
        int wanted = count + GUARD;
        int solves = 0;
        BlockLanczos.Ritz ritz = still;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            ritz = new BlockLanczos(
                            inner,
                            operator,
                            BLOCK,
                            new BlockLanczos.Wanted(wanted, GUARD, 0, 0, TOLERANCE),
                            1 + attempt)
                    .run(ritz, List.of(), RESTARTS, attempt > 0);
            solves += ritz.solves();
            if (!ritz.converged()) {
                throw new EigenException("The lowest eigenpairs did not converge with shift " + shift
                        + "; choose one nearer to the lowest eigenvalue");
            }
            double[] values =
                    Arrays.stream(ritz.values()).map(t -> shift + 1 / t).toArray();
            int returned = Math.min(count, values.length);
            if (returned == 0) {
                throw new EigenException("There is no mass to move");
            }
            Spectrum.Cut cut = Spectrum.cut(values, returned, shift);
            int counted = Spectrum.negativePivots(analysis, k, -cut.bound(), m);
            if (counted == cut.below()) {
                return cleaned(
                        k,
                        m,
                        Arrays.copyOf(values, returned),
                        Arrays.copyOf(ritz.vectors(), returned),
                        operator,
                        new InertiaCount(cut.bound(), counted, cut.below()),
                        solves,
                        2 + attempt);
            }
            wanted += Math.max(0, counted - cut.below());
        }
        throw new EigenException("The count by inertia and the iteration do not agree on the number of eigenvalues");
    }

    private static EigenPairs cleaned(
            SymmetricMatrix k,
            SymmetricMatrix m,
            double[] values,
            double[][] vectors,
            BlockLanczos.Operator operator,
            InertiaCount count,
            int solves,
            int factorisations) {
        double[] errors = Spectrum.errors(k, m, values, vectors);
        if (Arrays.stream(errors).max().orElse(0) <= CLEAN) {
            return new EigenPairs(values, vectors, errors, count, solves, factorisations);
        }
        // What rounding has put where M sees nothing grew too much; another application takes it out.
        double[][] clean = operator.apply(vectors, m.multiply(vectors));
        normalise(clean, m.multiply(clean));
        return new EigenPairs(
                values, clean, Spectrum.errors(k, m, values, clean), count, solves + clean.length, factorisations);
    }

    private static void normalise(double[][] vectors, double[][] products) {
        for (int p = 0; p < vectors.length; p++) {
            double norm = Math.sqrt(Basis.dot(vectors[p], products[p]));
            for (int i = 0; i < vectors[p].length; i++) {
                vectors[p][i] /= norm;
            }
        }
    }
}
