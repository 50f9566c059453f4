// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/**
 * What the inclined fracture plane of a ply crushed across its fibres tells about shear (Dávila and Camanho 2003,
 * NASA/TM-2003-212663, "LaRC03").
 *
 * @param transverseShearStrength ST, Pa
 * @param transverseFriction ηT
 * @param longitudinalFriction ηL
 */
public record FracturePlane(double transverseShearStrength, double transverseFriction, double longitudinalFriction) {
    /** Usual angle of the fracture plane against the thickness direction, radians: 53 degrees. */
    public static final double USUAL_ANGLE = Math.toRadians(53);

    /**
     * From the fracture angle.
     *
     * @param yc compressive strength across the fibres, Pa
     * @param sl in-plane shear strength, Pa
     * @param angle of the fracture plane, radians
     */
    public static FracturePlane of(double yc, double sl, double angle) {
        double tangentOfTwice = Math.tan(2 * angle);
        double cosine = Math.cos(angle);
        return new FracturePlane(
                yc * cosine * (Math.sin(angle) + cosine / tangentOfTwice),
                -1 / tangentOfTwice,
                -sl * Math.cos(2 * angle) / (yc * cosine * cosine));
    }
}
