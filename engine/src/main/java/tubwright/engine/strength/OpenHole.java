// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import tubwright.engine.laminate.EngineeringConstants;

/**
 * Strength of a wide laminate with an open circular hole under uniaxial load, as a share of its unnotched strength
 * (Whitney and Nuismer 1974, J. Compos. Mater. 8, 253).
 */
public final class OpenHole {
    /** d0 of the point-stress criterion, m (Whitney and Nuismer 1974; from memory). */
    public static final double USUAL_POINT_DISTANCE = 1.016e-3;

    /** a0 of the average-stress criterion, m (Whitney and Nuismer 1974; from memory). */
    public static final double USUAL_AVERAGE_LENGTH = 3.81e-3;

    private OpenHole() {}

    /** Stress concentration at the edge of a hole in an infinite orthotropic plate loaded along x (Lekhnitskii 1968). */
    public static double concentration(EngineeringConstants c) {
        return 1 + Math.sqrt(2 * (Math.sqrt(c.ex() / c.ey()) - c.nuxy()) + c.ex() / c.gxy());
    }

    /**
     * Fails when the stress at distance d0 from the hole reaches the unnotched strength.
     *
     * @param radius of the hole, m
     * @param d0 m
     * @param kt concentration factor
     */
    public static double pointStress(double radius, double d0, double kt) {
        double x = radius / (radius + d0);
        double x2 = x * x;
        double x6 = x2 * x2 * x2;
        return 2 / (2 + x2 + 3 * x2 * x2 - (kt - 3) * (5 * x6 - 7 * x6 * x2));
    }

    /**
     * Fails when the mean stress over the length a0 from the hole reaches the unnotched strength.
     *
     * @param radius of the hole, m
     * @param a0 m
     * @param kt concentration factor
     */
    public static double averageStress(double radius, double a0, double kt) {
        double x = radius / (radius + a0);
        double x2 = x * x;
        double x6 = x2 * x2 * x2;
        return 2 * (1 - x) / (2 - x2 - x2 * x2 + (kt - 3) * (x6 - x6 * x2));
    }
}
