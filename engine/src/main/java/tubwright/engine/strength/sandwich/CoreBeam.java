// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/**
 * A sandwich strip with equal thin faces and a weak core in three-point bending (Allen 1969): the form in which cores and
 * faces are tested.
 *
 * @param faceModulus Ef, Pa
 * @param faceThickness tf, m
 * @param coreShearModulus Gc along the strip, Pa
 * @param coreThickness tc, m
 * @param width b, m
 */
public record CoreBeam(
        double faceModulus, double faceThickness, double coreShearModulus, double coreThickness, double width) {

    /** d = tc + tf, m. */
    public double distance() {
        return coreThickness + faceThickness;
    }

    /** Ef tf d²/2 per width, N·m. */
    public double bendingStiffness() {
        return faceModulus * faceThickness * distance() * distance() / 2;
    }

    /** Gc d²/tc per width, N/m. */
    public double shearStiffness() {
        return ShearCrimping.compression(coreShearModulus, distance(), coreThickness);
    }

    /** Stress of the faces at the middle, P L/(4 b d tf), Pa. */
    public double faceStress(double force, double span) {
        return force * span / (4 * width * distance() * faceThickness);
    }

    /** Shear stress of the core, P/(2 b d), Pa. */
    public double coreShear(double force) {
        return force / (2 * width * distance());
    }

    /** Deflection by bending, P L³/(48 b D), m. */
    public double deflectionByBending(double force, double span) {
        return force * span * span * span / (48 * width * bendingStiffness());
    }

    /** Deflection by shear, P L/(4 b S), m. */
    public double deflectionByShear(double force, double span) {
        return force * span / (4 * width * shearStiffness());
    }
}
