// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

/** What gauges read, as a function of the doubts. */
@FunctionalInterface
public interface TwistModel {
    /**
     * Rotation about x over torque at each gauge station, as it is read: against the held station where that is read, or
     * else against the ground.
     *
     * @param logarithms θ of each doubt
     * @return rad/(N·m), positive when turning with the torque
     */
    double[] read(double[] logarithms);
}
