// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/** What a symmetric matrix is known to be before it is factorised. */
public enum Definiteness {
    /** All eigenvalues positive; a pivot that is not positive is an error. */
    POSITIVE_DEFINITE,
    /** Eigenvalues of either sign, none zero; the signs of the pivots count them (Sylvester's law of inertia). */
    INDEFINITE
}
