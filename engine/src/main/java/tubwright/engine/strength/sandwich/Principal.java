// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/**
 * The largest compression of a plane stress or force.
 *
 * @param compression its amount, positive; negative if there is tension all round
 * @param direction in which it acts, radians from x
 * @param biaxiality compression across over it, 0 if there is tension across
 */
record Principal(double compression, double direction, double biaxiality) {
    /** Of (x, y, xy). */
    static Principal of(double[] s) {
        double mean = 0.5 * (s[0] + s[1]);
        double half = 0.5 * (s[0] - s[1]);
        double radius = Math.hypot(half, s[2]);
        double least = mean - radius;
        double other = mean + radius;
        double direction = 0.5 * Math.atan2(-s[2], -half);
        return new Principal(-least, direction, least < 0 && other < 0 ? other / least : 0);
    }
}
