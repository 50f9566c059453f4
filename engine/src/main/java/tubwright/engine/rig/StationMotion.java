// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.rig.statistics.IllPosedException;
import tubwright.engine.rig.statistics.LinearFit;

/**
 * How a section moves as a rigid body at every load step: its rotation about x, and the bodily motion that the gauges of
 * the section share and that must not be taken for rotation.
 *
 * <p>A vertical gauge at (y, z) reads w + θ y, a lateral one v − θ z, an angle gauge θ. With two gauges of a sense at
 * different places, or an angle gauge, θ is known; more than that are balanced by least squares.
 *
 * @param station x, m
 * @param gauges indices of the gauges used
 * @param angles rad, one a load step; NaN where a reading is missing
 * @param bodily greatest bodily displacement, m, one a load step; 0 where only angles are read
 * @param spacing distance between the outermost gauges of a pair, m; infinite for an angle gauge
 */
record StationMotion(double station, List<Integer> gauges, double[] angles, double[] bodily, double spacing) {
    private static final double SAME_STATION = 1e-3;

    /** Gauges by station, those within a millimetre together. */
    static List<List<Integer>> groups(List<Gauge> gauges) {
        Map<Long, List<Integer>> result = new TreeMap<>();
        for (int g = 0; g < gauges.size(); g++) {
            result.computeIfAbsent(Math.round(gauges.get(g).station() / SAME_STATION), _ -> new ArrayList<>())
                    .add(g);
        }
        return List.copyOf(result.values());
    }

    /** Whether these gauges can tell rotation from bodily motion. */
    static boolean tellsAngle(List<Gauge> gauges, List<Integer> group) {
        for (int a : group) {
            Gauge first = gauges.get(a);
            if (first.sense() == Gauge.Sense.ANGLE) {
                return true;
            }
            for (int b : group) {
                Gauge other = gauges.get(b);
                if (first.sense() == other.sense() && Math.abs(first.lever() - other.lever()) > 1e-3) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The motion of a section whose gauges tell its angle. */
    static StationMotion of(Readings readings, List<Integer> group) {
        List<Gauge> gauges = readings.gauges();
        int n = readings.steps().size();
        double[] angles = new double[n];
        double[] bodily = new double[n];
        for (int i = 0; i < n; i++) {
            double[] values = readings.steps().get(i).readings();
            List<Integer> read =
                    group.stream().filter(g -> Double.isFinite(values[g])).toList();
            if (tellsAngle(gauges, read)) {
                double[] motion = solve(gauges, read, values);
                angles[i] = motion[0];
                bodily[i] = motion[1];
            } else {
                angles[i] = Double.NaN;
            }
        }
        double spacing = 0;
        for (int a : group) {
            for (int b : group) {
                if (gauges.get(a).sense() == gauges.get(b).sense()) {
                    spacing = Math.max(
                            spacing,
                            Math.abs(gauges.get(a).lever() - gauges.get(b).lever()));
                }
            }
            if (gauges.get(a).sense() == Gauge.Sense.ANGLE) {
                return new StationMotion(
                        gauges.get(group.getFirst()).station(), group, angles, bodily, Double.POSITIVE_INFINITY);
            }
        }
        return new StationMotion(gauges.get(group.getFirst()).station(), group, angles, bodily, spacing);
    }

    /** Rotation and the larger of the bodily displacements. */
    private static double[] solve(List<Gauge> gauges, List<Integer> read, double[] values) {
        boolean y = read.stream().anyMatch(g -> gauges.get(g).sense() == Gauge.Sense.Y);
        boolean z = read.stream().anyMatch(g -> gauges.get(g).sense() == Gauge.Sense.Z);
        int unknowns = 1 + (y ? 1 : 0) + (z ? 1 : 0);
        // A row of zeros to spare: the fit wants more rows than unknowns, and a zero row says nothing.
        double[][] design = new double[read.size() + unknowns][unknowns];
        double[] right = new double[design.length];
        for (int r = 0; r < read.size(); r++) {
            Gauge gauge = gauges.get(read.get(r));
            design[r][0] = gauge.lever();
            if (gauge.sense() == Gauge.Sense.Y) {
                design[r][1] = 1;
            } else if (gauge.sense() == Gauge.Sense.Z) {
                design[r][unknowns - 1] = 1;
            }
            right[r] = values[read.get(r)];
        }
        try {
            double[] x = LinearFit.of(design, right).coefficients();
            double most = 0;
            for (int j = 1; j < unknowns; j++) {
                most = Math.abs(x[j]) > Math.abs(most) ? x[j] : most;
            }
            return new double[] {x[0], most};
        } catch (IllPosedException e) {
            return new double[] {Double.NaN, 0};
        }
    }
}
