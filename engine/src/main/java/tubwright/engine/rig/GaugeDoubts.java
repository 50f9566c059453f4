// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.engine.quantity.QuantityFormat;

/** Gauges that cannot be, or should not be, believed as they stand. */
final class GaugeDoubts {
    /** A pair that moves bodily so many times as far as it turns is asked about. */
    private static final double TOGETHER = 5;

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
                        "gauge \"" + gauge.name() + "\""
                                + (group.stream()
                                                .anyMatch(other -> other != g
                                                        && readings.gauges()
                                                                        .get(other)
                                                                        .sense()
                                                                == gauge.sense())
                                        ? " stands at the same place as another at "
                                        : " is alone at ")
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
     * The loaded pair where it moves bodily far more than it turns. With fewer than three stations nothing else tells
     * whether one of its signs is flipped.
     */
    static Optional<Finding> movingTogether(Readings readings, StationMotion pair, double[] torque, int[] cycle) {
        if (pair.gauges().size() != 2 || !Double.isFinite(pair.spacing())) {
            return Optional.empty();
        }
        double turning = Math.abs(CycleFit.of(torque, pair.angles(), cycle).slope()) * pair.spacing() / 2;
        double bodily = Math.abs(CycleFit.of(torque, pair.bodily(), cycle).slope());
        if (bodily < TOGETHER * turning) {
            return Optional.empty();
        }
        Gauge one = readings.gauges().get(pair.gauges().get(0));
        Gauge other = readings.gauges().get(pair.gauges().get(1));
        return Optional.of(new Finding(
                Finding.Kind.DOUBTFUL_GAUGE,
                readings.source() + ":" + one.line(),
                "gauges \"" + one.name() + "\" and \"" + other.name() + "\" move together: "
                        + QuantityFormat.significant(bodily / turning, 2)
                        + " times as far as they move apart by turning. Does the whole rig move so, or is the sign of one"
                        + " flipped? A third pair would tell"));
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
