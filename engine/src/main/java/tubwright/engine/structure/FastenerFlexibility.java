// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Flexibility of one fastener in shear after Huth (1986, "Influence of fastener flexibility on the prediction of load
 * transfer and fatigue life for multiple-row joints", ASTM STP 927):
 *
 * <p>C = ((t1 + t2)/(2 d))^a · (b/n) · [1/(t1 E1) + 1/(n t2 E2) + 1/(2 t1 Ef) + 1/(2 n t2 Ef)]
 *
 * <p>n = 1 for single shear, 2 for double shear, where plate 1 is the one in the middle. The printed paper has 1/(n t1 Ef)
 * as the third term, which is known for a misprint.
 *
 * @param exponent a
 * @param factor b
 */
public record FastenerFlexibility(double exponent, double factor) {
    /** Riveted metal sheets. */
    public static final FastenerFlexibility RIVETED_METAL = new FastenerFlexibility(2.0 / 5.0, 2.2);

    /** Bolted metal sheets. */
    public static final FastenerFlexibility BOLTED_METAL = new FastenerFlexibility(2.0 / 3.0, 3.0);

    /** Bolted carbon-epoxy laminates, also carbon to metal. */
    public static final FastenerFlexibility BOLTED_CARBON = new FastenerFlexibility(2.0 / 3.0, 4.2);

    /**
     * One of the two plates.
     *
     * @param thickness m
     * @param modulus Young's modulus in the direction of the load, Pa
     */
    public record Plate(double thickness, double modulus) {}

    /**
     * Flexibility in single shear, m/N.
     *
     * @param diameter of the shank, m
     * @param fastenerModulus Young's modulus of the fastener, Pa
     */
    public double singleShear(Plate one, Plate two, double diameter, double fastenerModulus) {
        return of(one, two, diameter, fastenerModulus, 1);
    }

    /** Flexibility in double shear, m/N per fastener; the load goes from the middle plate into two outer ones. */
    public double doubleShear(Plate middle, Plate outer, double diameter, double fastenerModulus) {
        return of(middle, outer, diameter, fastenerModulus, 2);
    }

    private double of(Plate one, Plate two, double diameter, double fastenerModulus, int shearPlanes) {
        double slenderness = Math.pow((one.thickness + two.thickness) / (2 * diameter), exponent);
        double compliances = 1 / (one.thickness * one.modulus)
                + 1 / (shearPlanes * two.thickness * two.modulus)
                + 1 / (2 * one.thickness * fastenerModulus)
                + 1 / (2 * shearPlanes * two.thickness * fastenerModulus);
        return slenderness * factor / shearPlanes * compliances;
    }
}
