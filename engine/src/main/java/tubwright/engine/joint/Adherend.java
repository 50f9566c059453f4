// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * One of the sheets or laminates a joint connects.
 *
 * @param thickness m
 * @param modulus Young's modulus in the direction of the load, Pa; for a laminate its membrane modulus
 * @param poisson Poisson's ratio
 */
public record Adherend(double thickness, double modulus, double poisson) {
    public Adherend {
        if (!(thickness > 0 && modulus > 0 && Math.abs(poisson) < 1)) {
            throw new IllegalArgumentException("an adherend needs a thickness and a modulus greater than zero and a"
                    + " Poisson's ratio below one, not " + thickness + " m, " + modulus + " Pa, " + poisson);
        }
    }

    /** Membrane stiffness E t, N/m. */
    public double stiffness() {
        return modulus * thickness;
    }

    /** Bending stiffness E t³/(12 (1 − ν²)), N·m. */
    public double bending() {
        return stiffness() * thickness * thickness / (12 * (1 - poisson * poisson));
    }
}
