// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Effective radius of the resin around an insert in honeycomb, m (ESA PSS-03-1202, 1987; coefficients from memory): the
 * resin fills whole cells, so it depends on where the insert meets them.
 */
public final class Potting {
    private Potting() {}

    /**
     * Least radius that can come about.
     *
     * @param insertRadius bi, m
     * @param cellSize Sc across the flats, m
     */
    public static double leastRadius(double insertRadius, double cellSize) {
        return 0.93192 * insertRadius + 0.874 * cellSize - 0.66151e-3;
    }

    /** Usual radius. */
    public static double usualRadius(double insertRadius, double cellSize) {
        return 1.002064 * insertRadius + 0.940375 * cellSize - 0.7113e-3;
    }
}
