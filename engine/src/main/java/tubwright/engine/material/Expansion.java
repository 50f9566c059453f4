// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * Free strains in the plane of a layer, principal axes.
 *
 * @param alpha1 thermal strain along 1 per kelvin
 * @param alpha2 thermal strain along 2 per kelvin
 * @param beta1 strain along 1 per mass fraction of moisture taken up
 * @param beta2 strain along 2 per mass fraction of moisture taken up
 */
public record Expansion(double alpha1, double alpha2, double beta1, double beta2) {
    /** No strain from heat or moisture. */
    public static final Expansion NONE = new Expansion(0, 0, 0, 0);
}
