// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/** A sparse direct solver for symmetric systems. Stateless; may be shared between threads. */
public interface DirectSolver {
    /** Short name for reports, such as "java" or "native". */
    String name();

    /**
     * Chooses the order of elimination and lays out the factor, from the pattern alone.
     *
     * @return the symbolic part, to be closed by the caller; it serves any number of matrices on the same pattern
     */
    Analysis analyse(SymmetricPattern pattern, Definiteness definiteness);

    /** Analyses and factorises in one go. The matrix is left alone. */
    default Factorisation factorise(SymmetricMatrix matrix, Definiteness definiteness) {
        try (Analysis analysis = analyse(matrix.pattern(), definiteness)) {
            return analysis.factorise(matrix);
        }
    }

    /**
     * What a matrix is at some of its unknowns when all others are left to themselves.
     *
     * @param matrix positive definite in the others; left alone
     * @param kept unknowns, rising
     * @param load right-hand side, one number an unknown
     * @throws SingularMatrixException where the others by themselves are not held
     */
    default Condensed condense(SymmetricMatrix matrix, int[] kept, double[] load) {
        return Condensed.bySolving(this, matrix, kept, load);
    }
}
