// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/**
 * Buckling of a face within one cell of a honeycomb (MIL-HDBK-23A; NASA CR-1457; constants from memory). Stresses in the
 * face, Pa; s is the cell's inscribed circle.
 */
public final class Dimpling {
    /** What tests leave of the theory of a simply supported orthotropic plate over the cell. */
    public static final double TEST_FACTOR = 0.6;

    private Dimpling() {}

    /** In compression, 2 Ef/(1 − ν²) (tf/s)². */
    public static double stress(double faceModulus, double poisson, double faceThickness, double cell) {
        double ratio = faceThickness / cell;
        return 2 * faceModulus / (1 - poisson * poisson) * ratio * ratio;
    }

    /** In shear, 0.6 Ef (tf/s)^1.5. */
    public static double shearStress(double faceModulus, double faceThickness, double cell) {
        return 0.6 * faceModulus * Math.pow(faceThickness / cell, 1.5);
    }

    /**
     * Of a laminated face in compression, {@link #TEST_FACTOR} (π²/(tf s²)) [D11 + 2 (D12 + 2 D66) + D22].
     *
     * @param bending D of the face, 3 × 3 row-major, 1 along the compression, N·m
     */
    public static double stress(double[] bending, double faceThickness, double cell) {
        double sum = bending[0] + 2 * (bending[1] + 2 * bending[8]) + bending[4];
        return TEST_FACTOR * Math.PI * Math.PI / (faceThickness * cell * cell) * sum;
    }
}
