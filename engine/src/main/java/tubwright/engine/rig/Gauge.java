// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

/**
 * Something that was read at every load step.
 *
 * @param name as in the table's header
 * @param station x, m
 * @param sense what it reads
 * @param y place across the car, m, to the right; 0 for an angle
 * @param z height, m; 0 for an angle
 * @param line of the file that declares it
 */
public record Gauge(String name, double station, Sense sense, double y, double z, int line) {
    /** What a gauge reads. */
    public enum Sense {
        /** Displacement to the right, m. */
        Y,
        /** Displacement upward, m. */
        Z,
        /** Rotation about x, right-handed, rad. */
        ANGLE
    }

    /** What the gauge reads per radian of turning about the x axis: y for a vertical gauge, −z for a lateral one. */
    public double lever() {
        return switch (sense) {
            case Y -> -z;
            case Z -> y;
            case ANGLE -> 1;
        };
    }
}
