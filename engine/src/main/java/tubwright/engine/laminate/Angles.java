// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/** Layer angles are lines, not arrows: half a turn changes nothing. */
final class Angles {
    /** Angles closer than this many degrees count as equal: far below what hands or rollers can lay. */
    static final double TOLERANCE = 1e-6;

    private Angles() {}

    /** Into (−90, 90], with rounding noise from radians removed. */
    static double normalisedDegrees(double degrees) {
        double turned = degrees - 180 * Math.rint(degrees / 180);
        double rounded = Math.rint(turned * 1e9) / 1e9;
        return rounded <= -90 ? 90 : rounded == 0 ? 0 : rounded;
    }

    static boolean same(double degrees, double other) {
        double difference = Math.abs(normalisedDegrees(degrees - other));
        return difference < TOLERANCE;
    }
}
