// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/** Collapse of the core in shear under edge load, the short-wave end of general buckling (NASA CR-1457; from memory). */
public final class ShearCrimping {
    private ShearCrimping() {}

    /**
     * Compression per width, G d²/tc, N/m.
     *
     * @param shearModulus of the core in the plane of load and thickness, Pa
     * @param distance d between the faces' middles, m
     */
    public static double compression(double shearModulus, double distance, double coreThickness) {
        return shearModulus * distance * distance / coreThickness;
    }

    /** Shear per width, √(Gxz Gyz) d²/tc, N/m. */
    public static double shear(double gxz, double gyz, double distance, double coreThickness) {
        return Math.sqrt(gxz * gyz) * distance * distance / coreThickness;
    }
}
