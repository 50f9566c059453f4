// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/**
 * Lowest eigenpairs of K x = λ M x, both symmetric and positive semi-definite (M may have zero rows, K rigid motions),
 * by Lanczos on the shift-and-invert operator (K - σM)⁻¹M, whose eigenvalues are 1/(λ - σ) (Ericsson and Ruhe 1980,
 * Math. Comput. 35:1251). Unknowns that are held must be cleared in M and decoupled with a positive diagonal in K.
 */
public final class LowestModes {
    /**
     * One vector at a time needs about half the solutions that four at a time need, and the mirror symmetry of a tub forces
     * no eigenvalue to come twice. What one vector cannot see, equal eigenvalues, the count tells; then more go together.
     */
    private static final int FIRST_BLOCK = 1;

    private static final int BLOCK = 4;
    private static final int GUARD = 2;
    /** Residual over eigenvalue of the operator. The last decade costs one vector. */
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
        SymmetricMatrix shifted = shift == 0 ? k : k.plus(-shift, m);
        try (Analysis analysis = solver.analyse(k.pattern(), Definiteness.POSITIVE_DEFINITE);
                Factorisation factor = analysis.factorise(shifted)) {
            return search(k, m, count, shift, known(m, shift, still), solver, factor);
        } catch (SingularMatrixException notPositive) {
            throw below(shifted, shift, solver).orElseThrow(() -> notPositive);
        }
    }

    /** What is wrong with a shift whose matrix is not positive definite; nothing where no eigenvalue lies below it. */
    private static Optional<IllegalArgumentException> below(
            SymmetricMatrix shifted, double shift, DirectSolver solver) {
        try (Analysis analysis = solver.analyse(shifted.pattern(), Definiteness.INDEFINITE);
                Factorisation factor = analysis.factorise(shifted)) {
            return factor.negativePivots() == 0
                    ? Optional.empty()
                    : Optional.of(new IllegalArgumentException(factor.negativePivots()
                            + " eigenvalues lie below the shift " + shift
                            + "; choose a lower one, and see that the stiffness has no negative part"));
        }
    }

    /** Motions without stiffness as pairs of the operator: (K - σM)⁻¹M x = -x/σ. */
    private static BlockLanczos.Ritz known(SymmetricMatrix m, double shift, List<double[]> still) {
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

    private static EigenPairs search(
            SymmetricMatrix k,
            SymmetricMatrix m,
            int count,
            double shift,
            BlockLanczos.Ritz still,
            DirectSolver solver,
            Factorisation factor) {
        BlockLanczos.Operator operator = (v, bv) -> factor.solve(bv);
        int wanted = count + GUARD;
        int solves = 0;
        int factorisations = 1;
        BlockLanczos.Ritz ritz = still;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            int block = attempt == 0 ? FIRST_BLOCK : BLOCK;
            ritz = new BlockLanczos(
                            m, operator, block, new BlockLanczos.Wanted(wanted, GUARD, 0, 0, TOLERANCE), 1 + attempt)
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
            int counted = counted(k, m, cut.bound(), solver);
            factorisations++;
            if (counted == cut.below()) {
                double[] lowest = Arrays.copyOf(values, returned);
                double[][] vectors = Arrays.copyOf(ritz.vectors(), returned);
                double[] errors = Spectrum.errors(k, m, lowest, vectors);
                if (Arrays.stream(errors).max().orElse(0) > CLEAN) {
                    // What rounding has put where M sees nothing grew too much; another application takes it out.
                    vectors = operator.apply(vectors, m.multiply(vectors));
                    solves += vectors.length;
                    normalise(vectors, m.multiply(vectors));
                    errors = Spectrum.errors(k, m, lowest, vectors);
                }
                return new EigenPairs(
                        lowest,
                        vectors,
                        errors,
                        new InertiaCount(cut.bound(), counted, cut.below()),
                        solves,
                        factorisations);
            }
            wanted += Math.max(0, counted - cut.below());
        }
        throw new EigenException("The count by inertia and the iteration do not agree on the number of eigenvalues");
    }

    private static int counted(SymmetricMatrix k, SymmetricMatrix m, double bound, DirectSolver solver) {
        try (Analysis analysis = solver.analyse(k.pattern(), Definiteness.INDEFINITE)) {
            return Spectrum.negativePivots(analysis, k, -bound, m);
        }
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
