// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.Setup;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReading.StationAngle;

/**
 * Readings as the update takes them.
 *
 * @param stations of gauge pairs other than the held one, rising, m
 * @param angles over torque, rad/(N·m), positive when turning with the torque
 * @param deviations standard uncertainty of each angle without what all share by the torque's scale, rad/(N·m)
 * @param shared the part of every deviation that comes from the held pair and that all angles have in common,
 *     rad/(N·m); 0 where the held end was not read
 * @param held station whose reading was subtracted, m; empty where the held end was not read
 * @param scale standard uncertainty of the torque's scale, as a share
 */
public record Measured(
        double[] stations, double[] angles, double[] deviations, double shared, OptionalDouble held, double scale) {
    /** Most of an angle's deviation that may be common to all, so that two angles never count as one. */
    private static final double COMMON = 0.95;

    private static final double AT = 0.02;

    /**
     * From a reduced test. Its twist line is taken as it is; the sign of the torque is turned where the readings turn
     * against it, as the reduction has told.
     *
     * @param reading the test
     * @param discrepancy standard uncertainty of the model at each station by itself, as a share of the largest angle: no
     *     reading says more of the model's stiffnesses than the model follows a tub; 0 for a model that is the tub
     * @throws ReadingsException if fewer than one gauge pair beside the held one was read
     */
    public static Measured of(TorsionReading reading, double discrepancy) {
        Setup setup = reading.readings().setup();
        OptionalDouble held = OptionalDouble.empty();
        List<StationAngle> kept = new ArrayList<>();
        for (StationAngle each : reading.twist()) {
            if (setup.heldStation().isPresent()
                    && Math.abs(each.station() - setup.heldStation().getAsDouble()) <= AT
                    && reading.twist().size() > 1) {
                held = OptionalDouble.of(each.station());
            } else {
                kept.add(each);
            }
        }
        if (kept.isEmpty()) {
            throw new ReadingsException(reading.readings().source()
                    + ": no gauge pair beside the held end was read, so there is nothing to explain");
        }
        StationAngle most = kept.stream()
                .max(java.util.Comparator.comparingDouble(a -> Math.abs(a.perTorque())))
                .orElseThrow();
        double sign = Math.signum(most.perTorque());
        int n = kept.size();
        double[] stations = new double[n];
        double[] angles = new double[n];
        double[] deviations = new double[n];
        for (int k = 0; k < n; k++) {
            StationAngle each = kept.get(k);
            stations[k] = each.station();
            angles[k] = sign * each.perTorque();
            deviations[k] = Math.hypot(each.deviation(), discrepancy * Math.abs(most.perTorque()));
        }
        double shared = held.isPresent() ? kept.getFirst().shared() : 0;
        return new Measured(stations, angles, deviations, shared, held, setup.torqueUncertainty());
    }

    /**
     * Covariance of the angles: what is read against one held pair has the held pair's variance in common. Where a rig
     * gives unsteadily that variance may be greater than an angle's own, whose scatter it drops out of; what is common
     * to two is never taken as more than {@link #COMMON} of the better of them.
     */
    double[][] covariance() {
        int n = angles.length;
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double least = COMMON * Math.min(deviations[i], deviations[j]);
                double common = Math.min(shared, least);
                result[i][j] = i == j ? deviations[i] * deviations[i] : common * common;
            }
        }
        return result;
    }
}
