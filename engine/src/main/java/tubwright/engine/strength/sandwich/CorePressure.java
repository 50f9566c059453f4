// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/** Pressure of the faces on the core, Pa, positive where it crushes (equilibrium of a curved face; derived). */
public final class CorePressure {
    private CorePressure() {}

    /**
     * Of a flat panel bent by a moment, 2 M²/(Ef tf d³), equal faces.
     *
     * @param moment M per width, N
     */
    public static double byBending(double moment, double faceModulus, double faceThickness, double distance) {
        return 2 * moment * moment / (faceModulus * faceThickness * distance * distance * distance);
    }

    /**
     * Of a panel with radius R, Nf/R: compression of the core if the face on the outside of the bend is in tension.
     *
     * @param faceForce Nf per width in the outer face, N/m, tension positive
     */
    public static double byCurvature(double faceForce, double radius) {
        return faceForce / radius;
    }
}
