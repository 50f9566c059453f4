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

    /**
     * Derivative of what is read by the doubts, by one-sided differences towards softer, where a stiff joint shows itself
     * soonest.
     *
     * @param logarithms θ where it is taken
     * @return one row a station, one column a doubt
     */
    default double[][] derivative(double[] logarithms) {
        double[] here = read(logarithms);
        double[][] result = new double[here.length][logarithms.length];
        for (int i = 0; i < logarithms.length; i++) {
            double[] aside = logarithms.clone();
            aside[i] -= DIFFERENCE;
            double[] read = read(aside);
            for (int k = 0; k < here.length; k++) {
                result[k][i] = (here[k] - read[k]) / DIFFERENCE;
            }
        }
        return result;
    }

    /** Step of the differences in θ: 3 % of a stiffness. */
    double DIFFERENCE = 0.03;
}
