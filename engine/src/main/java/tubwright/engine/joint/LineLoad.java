// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * What a joint carries at one place, per length of the joint.
 *
 * @param across square to the line in the surface, N/m, positive where it pulls the pieces apart
 * @param along shear flow, N/m, either sign
 * @param normal out of the surface joined onto, N/m, positive where it lifts the piece off
 * @param moment about the line, N, either sign
 */
public record LineLoad(double across, double along, double normal, double moment) {
    /** The same grown by a factor. */
    LineLoad times(double factor) {
        return new LineLoad(factor * across, factor * along, factor * normal, factor * moment);
    }

    /** Amount of the load in the surface, N/m. */
    public double inSurface() {
        return Math.hypot(across, along);
    }
}
