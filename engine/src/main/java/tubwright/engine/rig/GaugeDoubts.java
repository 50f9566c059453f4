// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.engine.quantity.QuantityFormat;

/** Gauges that cannot be, or should not be, believed as they stand. */
final class GaugeDoubts {
    private GaugeDoubts() {}

    /** Stations whose gauges cannot tell rotation from bodily motion, and by how much they could lie. */
    static List<Finding> oneSided(Readings readings, List<List<Integer>> alone, List<StationMotion> motions) {
        List<Finding> result = new ArrayList<>();
        double bodily = motions.stream()
                .flatMapToDouble(m -> Arrays.stream(m.bodily()).map(b -> Math.abs(b - m.bodily()[0])))
                .max()
                .orElse(0);
        for (List<Integer> group : alone) {
            for (int g : group) {
                Gauge gauge = readings.gauges().get(g);
                double range = range(readings, g);
                String apart = Math.abs(gauge.lever()) < 1e-3
                        ? "stands on the axis and sees no rotation at all"
                        : could(gauge, range, bodily, motions.isEmpty());
                result.add(new Finding(
                        Finding.Kind.ONE_SIDED,
                        readings.source() + ":" + gauge.line(),
                        "gauge \"" + gauge.name() + "\" is alone at "
                                + TorsionReduction.millimetres(gauge.station())
                                + " and cannot tell rotation from bodily motion: it " + apart
                                + ". It is left out of the twist line; set a second one on the other side"));
            }
        }
        return result;
    }

    private static String could(Gauge gauge, double range, double bodily, boolean nothingElse) {
        double lever = Math.abs(gauge.lever());
        String reads = "reads " + QuantityFormat.significant(range * 1000, 3) + " mm, which would be "
                + degrees(range / lever) + " if the body only turned";
        if (nothingElse) {
            return reads + ", and is wrong by " + degrees(0.001 / lever) + " ("
                    + Math.round(100 * 0.001 / Math.max(range, 1e-9)) + " %) for every millimetre the body moves";
        }
        return reads + ", but the body moves bodily by up to " + QuantityFormat.significant(bodily * 1000, 3)
                + " mm at the paired stations, so it could lie by " + degrees(bodily / lever) + " ("
                + Math.round(100 * bodily / Math.max(range, 1e-9)) + " %)";
    }

    /**
     * Pairs exchanged or with one sign flipped. The true twist line is smooth and rises towards the loaded end; if
     * exchanging one pair, or turning the sign of one gauge, makes a ragged line smooth, that is named.
     */
    static List<Finding> exchanged(Readings readings, List<StationMotion> motions, double[] torque, int[] cycle) {
        List<Finding> result = new ArrayList<>();
        int n = motions.size();
        if (n < 3) {
            return result;
        }
        double[] x = motions.stream().mapToDouble(StationMotion::station).toArray();
        double[] slope = motions.stream()
                .mapToDouble(m -> CycleFit.of(torque, m.angles(), cycle).slope())
                .toArray();
        for (int round = 0; round < 2; round++) {
            double asIs = raggedness(x, slope);
            double best = asIs;
            int station = -1;
            double angle = 0;
            String words = "";
            for (int m = 0; m < n; m++) {
                List<Integer> pair = motions.get(m).gauges();
                if (pair.size() != 2 || !Double.isFinite(motions.get(m).spacing())) {
                    continue;
                }
                Gauge a = readings.gauges().get(pair.get(0));
                Gauge b = readings.gauges().get(pair.get(1));
                double ga = slope(readings, pair.get(0), torque, cycle);
                double gb = slope(readings, pair.get(1), torque, cycle);
                double apart = a.lever() - b.lever();
                double[] tries = {(gb - ga) / apart, (-ga - gb) / apart, (ga + gb) / apart};
                String[] says = {
                    "gauges \"" + a.name() + "\" and \"" + b.name() + "\" seem to be exchanged",
                    "the sign of gauge \"" + a.name() + "\" seems to be flipped",
                    "the sign of gauge \"" + b.name() + "\" seems to be flipped"
                };
                for (int t = 0; t < tries.length; t++) {
                    double[] changed = slope.clone();
                    changed[m] = tries[t];
                    double ragged = raggedness(x, changed);
                    if (ragged < best - 1e-12) {
                        best = ragged;
                        station = m;
                        angle = tries[t];
                        words = says[t];
                    }
                }
            }
            if (station < 0 || asIs < 0.3 || best > 0.4 * asIs) {
                return result;
            }
            slope[station] = angle;
            result.add(new Finding(
                    Finding.Kind.DOUBTFUL_GAUGE,
                    readings.source() + ":"
                            + readings.gauges()
                                    .get(motions.get(station).gauges().getFirst())
                                    .line(),
                    words + ": so read, the twist line runs smoothly through "
                            + TorsionReduction.millimetres(x[station])
                            + ", and not as written. Nothing was changed: check the rig, correct the file"));
        }
        return result;
    }

    /** Departures of inner stations from the line between their neighbours, over the largest angle; more if turning back. */
    private static double raggedness(double[] x, double[] slope) {
        double most = Arrays.stream(slope).map(Math::abs).max().orElse(0);
        if (most == 0) {
            return 0;
        }
        double sum = 0;
        for (int i = 1; i + 1 < x.length; i++) {
            double between = slope[i - 1] + (x[i] - x[i - 1]) / (x[i + 1] - x[i - 1]) * (slope[i + 1] - slope[i - 1]);
            sum += Math.abs(slope[i] - between) / most;
        }
        double back = Arrays.stream(slope).map(s -> Math.max(0, -s)).max().orElse(0);
        return sum + 0.1 * back / most;
    }

    private static double slope(Readings readings, int gauge, double[] torque, int[] cycle) {
        double[] values =
                readings.steps().stream().mapToDouble(s -> s.readings()[gauge]).toArray();
        return CycleFit.of(torque, values, cycle).slope();
    }

    private static double range(Readings readings, int gauge) {
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (Step step : readings.steps()) {
            double value = step.readings()[gauge];
            if (Double.isFinite(value)) {
                least = Math.min(least, value);
                most = Math.max(most, value);
            }
        }
        return Math.max(0, most - least);
    }

    private static String degrees(double radians) {
        return QuantityFormat.significant(Math.toDegrees(radians), 3) + " deg";
    }
}
