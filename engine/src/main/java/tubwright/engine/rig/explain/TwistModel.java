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
        double[][] result = new double[0][logarithms.length];
        for (int i = 0; i < logarithms.length; i++) {
            double[] change = change(logarithms, i, -DIFFERENCE);
            if (i == 0) {
                result = new double[change.length][logarithms.length];
            }
            for (int k = 0; k < change.length; k++) {
                result[k][i] = -change[k] / DIFFERENCE;
            }
        }
        return result;
    }

    /**
     * By how much the readings change when one doubt does.
     *
     * @param logarithms θ where it starts
     * @param doubt which one
     * @param step added to its θ
     * @return rad/(N·m), one a station
     */
    default double[] change(double[] logarithms, int doubt, double step) {
        double[] here = read(logarithms);
        double[] aside = logarithms.clone();
        aside[doubt] += step;
        double[] read = read(aside);
        for (int k = 0; k < here.length; k++) {
            read[k] -= here[k];
        }
        return read;
    }

    /** Step of the differences in θ: 3 % of a stiffness. */
    double DIFFERENCE = 0.03;
}
