// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

/**
 * Eigenvalues with their vectors. Arrays are not to be modified.
 *
 * @param values in the order of their magnitude, lowest first
 * @param vectors {@code vectors[k]} belongs to {@code values[k]}
 * @param errors normwise backward error of each pair, ‖Kx - λMx‖∞ / ‖|K||x| + |λ||M||x|‖∞; about 1e-15 to 1e-10
 * @param count the proof by inertia that none was missed
 * @param solves back-substitutions it took
 * @param factorisations it took, those of the count included
 */
public record EigenPairs(
        double[] values, double[][] vectors, double[] errors, InertiaCount count, int solves, int factorisations) {
    /** Number of pairs. */
    public int size() {
        return values.length;
    }
}
