// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.engine.rig.TorsionReading.Straightness;
import tubwright.engine.rig.statistics.IllPosedException;
import tubwright.engine.rig.statistics.LinearFit;

/** Slop and curvature of angle against torque. */
final class Bends {
    private Bends() {}

    static Straightness of(Readings readings, double[] angles, double sign) {
        double most = readings.greatestTorque();
        double range = Arrays.stream(angles).filter(Double::isFinite).max().orElse(0)
                - Arrays.stream(angles).filter(Double::isFinite).min().orElse(0);
        double[] curve = curvature(readings, angles, sign, most, range);
        double[] slop = slop(readings, angles, sign, most);
        return new Straightness(slop[0], slop[1], curve[0], curve[1]);
    }

    /** Angle = zero of the cycle + T/K + q T |T|: greatest departure from the chord, and q over its error. */
    private static double[] curvature(Readings readings, double[] angles, double sign, double most, double range) {
        List<Integer> cycles = readings.cycles();
        List<double[]> design = new ArrayList<>();
        List<Double> right = new ArrayList<>();
        for (int i = 0; i < angles.length; i++) {
            if (Double.isFinite(angles[i])) {
                double[] row = new double[2 + cycles.size()];
                double t = readings.steps().get(i).torque() / most;
                row[0] = t * Math.abs(t);
                row[1] = t;
                row[2 + cycles.indexOf(readings.steps().get(i).cycle())] = 1;
                design.add(row);
                right.add(sign * angles[i]);
            }
        }
        try {
            LinearFit fit = LinearFit.of(
                    design.toArray(double[][]::new),
                    right.stream().mapToDouble(Double::doubleValue).toArray());
            double q = fit.coefficients()[0];
            return new double[] {q / 4 / range, q / fit.standardErrors()[0]};
        } catch (IllPosedException e) {
            return new double[] {Double.NaN, 0};
        }
    }

    /**
     * Where the load goes both ways, the gap between the lines of the two ends at zero torque; where it goes one way,
     * how far the line through the upper half of the rising branch misses the zero reading.
     */
    private static double[] slop(Readings readings, double[] angles, double sign, double most) {
        List<double[]> right = new ArrayList<>();
        List<double[]> left = new ArrayList<>();
        List<Double> zeros = new ArrayList<>();
        int first = readings.cycles().getFirst();
        double zero = Double.NaN;
        int seen = first - 1;
        for (int i = 0; i < angles.length; i++) {
            Step step = readings.steps().get(i);
            if (step.cycle() != seen) {
                seen = step.cycle();
                zero = Math.abs(step.torque()) < 0.02 * most ? angles[i] : Double.NaN;
                if (Double.isFinite(zero)) {
                    zeros.add(zero);
                }
            }
            if (step.unloading() || !Double.isFinite(angles[i]) || !Double.isFinite(zero)) {
                continue;
            }
            if (step.torque() > 0.45 * most) {
                right.add(new double[] {step.torque(), sign * (angles[i] - zero)});
            } else if (step.torque() < -0.45 * most) {
                left.add(new double[] {step.torque(), sign * (angles[i] - zero)});
            }
        }
        if (right.size() < 3 || zeros.isEmpty()) {
            return new double[] {Double.NaN, Double.NaN};
        }
        LinearFit upper = line(right);
        double slop = upper.coefficients()[0];
        double error = Math.hypot(upper.standardErrors()[0], upper.residualDeviation());
        if (left.size() >= 3) {
            LinearFit lower = line(left);
            slop -= lower.coefficients()[0];
            error = Math.hypot(upper.standardErrors()[0], lower.standardErrors()[0]);
        }
        return new double[] {slop, error};
    }

    private static LinearFit line(List<double[]> points) {
        return LinearFit.line(
                points.stream().mapToDouble(p -> p[0]).toArray(),
                points.stream().mapToDouble(p -> p[1]).toArray());
    }
}
