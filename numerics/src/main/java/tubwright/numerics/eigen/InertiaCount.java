// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

/**
 * Outcome of a count after Sylvester's law of inertia: factorising the matrix shifted to a bound counts the eigenvalues
 * between the origin of the search and that bound.
 *
 * @param bound where it was counted, just beyond the last pair returned or beyond the cluster it belongs to
 * @param counted eigenvalues up to the bound by the signs of the pivots
 * @param found of those by iteration
 */
public record InertiaCount(double bound, int counted, int found) {
    /** Whether every eigenvalue up to the bound was found. */
    public boolean complete() {
        return counted == found;
    }
}
