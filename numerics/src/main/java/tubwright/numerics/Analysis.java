// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/**
 * The symbolic part of a factorisation: order of elimination and layout of the factor. Factorisations made from it stay
 * usable after it is closed.
 */
public interface Analysis extends AutoCloseable {
    /**
     * Factorises a matrix on the analysed pattern. The matrix is left alone and may be changed afterwards.
     *
     * @throws SingularMatrixException if a pivot is zero to rounding, or not positive where all should be
     * @throws IllegalArgumentException if the matrix has another pattern
     */
    Factorisation factorise(SymmetricMatrix matrix);

    /** Entries the factor will have, diagonal included; 0 if not known before the factorisation. */
    long factorEntries();

    @Override
    void close();
}
