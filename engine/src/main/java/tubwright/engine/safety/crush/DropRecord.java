// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.Arrays;

/**
 * A record of an instrumented drop, tared and integrated anew: instruments integrate what they read, offset included.
 * Double integration by the trapezoidal rule, gravity acting on.
 *
 * @param time s
 * @param force N, tared
 * @param speed m/s, downward
 * @param travel m from the first sample
 * @param energy J given to the specimen since the first sample
 */
public record DropRecord(double[] time, double[] force, double[] speed, double[] travel, double[] energy) {
    /**
     * Reads a record.
     *
     * @param time s, rising
     * @param raw N, as read
     * @param quiet number of samples at the start that are known to lie before the touch; their median is taken off
     * @param mass that falls, kg
     * @param impactSpeed at the first sample, m/s
     * @throws IllegalArgumentException where the record is too short, time does not rise, or mass or speed are not positive
     */
    public static DropRecord of(double[] time, double[] raw, int quiet, double mass, double impactSpeed) {
        int n = time.length;
        if (raw.length != n || quiet < 1 || quiet >= n) {
            throw new IllegalArgumentException(
                    "a record needs as many forces as times, and quiet samples before the touch");
        }
        if (!(mass > 0) || !(impactSpeed > 0)) {
            throw new IllegalArgumentException("mass and speed of a drop are greater than zero");
        }
        double[] before = Arrays.copyOf(raw, quiet);
        Arrays.sort(before);
        double tare = quiet % 2 == 1 ? before[quiet / 2] : 0.5 * (before[quiet / 2 - 1] + before[quiet / 2]);
        double[] force = Arrays.stream(raw).map(f -> f - tare).toArray();
        double[] speed = new double[n];
        double[] travel = new double[n];
        double[] energy = new double[n];
        speed[0] = impactSpeed;
        for (int i = 1; i < n; i++) {
            double dt = time[i] - time[i - 1];
            if (!(dt > 0)) {
                throw new IllegalArgumentException("time does not rise at sample " + (i + 1));
            }
            double mean = 0.5 * (force[i] + force[i - 1]);
            speed[i] = speed[i - 1] + (CrushRun.GRAVITY - mean / mass) * dt;
            double dx = 0.5 * (speed[i] + speed[i - 1]) * dt;
            travel[i] = travel[i - 1] + dx;
            energy[i] = energy[i - 1] + mean * dx;
        }
        return new DropRecord(time.clone(), force, speed, travel, energy);
    }

    /** Highest force, N. */
    public double peak() {
        return Arrays.stream(force).max().orElse(0);
    }

    /** Energy that does not come back, J. */
    public double absorbed() {
        return energy[energy.length - 1];
    }
}
