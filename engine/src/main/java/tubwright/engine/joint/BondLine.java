// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * An elastic layer of adhesive.
 *
 * @param thickness η or ta, m
 * @param shearModulus G, Pa
 * @param modulus Ea in peel, Pa
 */
public record BondLine(double thickness, double shearModulus, double modulus) {
    public BondLine {
        if (!(thickness > 0 && shearModulus > 0 && modulus > 0)) {
            throw new IllegalArgumentException("a bond line needs a thickness and moduli greater than zero, not "
                    + thickness + " m, " + shearModulus + " Pa, " + modulus + " Pa");
        }
    }
}
