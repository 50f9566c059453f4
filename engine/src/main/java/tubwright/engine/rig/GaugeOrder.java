// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import tubwright.engine.quantity.QuantityFormat;

/**
 * Gauges that seem to be exchanged, flipped or written in another unit than their column says.
 *
 * <p>A true twist line is smooth and rises towards the loaded end, and a body that moves as a whole moves by an amount
 * that runs straight along x. A slip of the pen bends one or both. Every single slip is tried backwards; the one that
 * takes most of the raggedness away is named, and nothing is changed.
 */
final class GaugeOrder {
    /**
     * A slip taken back must take away this much of the raggedness, a tub's own line being ragged too, and ...
     *
     * <p>Both limits are from trials on random twist lines with steps at joints, 3 to 7 stations and give of the rig (see
     * GaugeOrderTest): of 150 sound files one is doubted; of slips, 83 % (exchanged in a pair), 79 % (a sign), 68 % (a
     * unit) and 55 % (across stations) are named rightly.
     */
    private static final double TAKEN = 0.3;

    /** ... leave no more than this share of it. */
    private static final double LEFT = 0.65;

    /** Slips that hands make less often must explain more: their raggedness counts so many times. */
    private static final double SELDOM = 1.25;

    /** Other slips that leave hardly more raggedness than the best one are named beside it. */
    private static final double ALIKE = 0.05;

    /** Slips named in one file at most, each with as many others beside it. */
    private static final int MOST = 2;

    /** What a reading may be too great or too small by if it is in another unit than its column says. */
    private static final double[] UNITS = {25.4, 1 / 25.4, 1000, 1e-3, 100, 1e-2};

    private final Readings readings;
    private final List<StationMotion> motions;
    private final double[] x;
    /** Slope of each station's angle, rad/(N·m): stands where the station is not a plain pair. */
    private final double[] turning;

    private GaugeOrder(Readings readings, List<StationMotion> motions, double[] torque, int[] cycle) {
        this.readings = readings;
        this.motions = motions;
        this.x = motions.stream().mapToDouble(StationMotion::station).toArray();
        this.turning = motions.stream()
                .mapToDouble(m -> CycleFit.of(torque, m.angles(), cycle).slope())
                .toArray();
    }

    /** A slip, taken back by changing the gauges' slopes. */
    private record Slip(String words, int station, double weight, UnaryOperator<double[]> takenBack) {}

    /** What is named, one finding a slip. */
    static List<Finding> of(Readings readings, List<StationMotion> motions, double[] torque, int[] cycle) {
        if (motions.size() < 3) {
            return List.of();
        }
        GaugeOrder order = new GaugeOrder(readings, motions, torque, cycle);
        double[] slopes = new double[readings.gauges().size()];
        for (StationMotion motion : motions) {
            for (int gauge : motion.gauges()) {
                slopes[gauge] = slope(readings, gauge, torque, cycle);
            }
        }
        return order.search(slopes);
    }

    /** A slip and the raggedness left when it is taken back. */
    private record Tried(Slip slip, double ragged) {}

    private List<Finding> search(double[] slopes) {
        List<Finding> result = new ArrayList<>();
        double[] now = slopes;
        List<Slip> slips = slips();
        while (result.size() < MOST) {
            double asIs = raggedness(now);
            double[] tried = now;
            List<Tried> tries = slips.stream()
                    .map(slip -> new Tried(slip, slip.weight * raggedness(slip.takenBack.apply(tried))))
                    .sorted(Comparator.comparingDouble(Tried::ragged))
                    .toList();
            if (tries.isEmpty() || asIs - tries.getFirst().ragged < TAKEN || tries.getFirst().ragged > LEFT * asIs) {
                break;
            }
            Slip best = tries.getFirst().slip;
            String words = tries.stream()
                    .limit(1 + MOST)
                    .filter(t -> t.ragged <= tries.getFirst().ragged + ALIKE)
                    .map(t -> t.slip.words)
                    .collect(Collectors.joining(", or "));
            now = best.takenBack.apply(now);
            result.add(new Finding(
                    Finding.Kind.DOUBTFUL_GAUGE,
                    readings.source() + ":"
                            + readings.gauges()
                                    .get(motions.get(best.station).gauges().getFirst())
                                    .line(),
                    words + ": so read, twist and bodily motion run smoothly through "
                            + TorsionReduction.millimetres(x[best.station])
                            + ", and not as written. Nothing was changed: check the rig, correct the file"));
        }
        return result;
    }

    private List<Slip> slips() {
        List<Slip> result = new ArrayList<>();
        for (int m = 0; m < motions.size(); m++) {
            if (!plain(m)) {
                continue;
            }
            int a = motions.get(m).gauges().get(0);
            int b = motions.get(m).gauges().get(1);
            result.add(new Slip(
                    "gauges " + name(a) + " and " + name(b) + " seem to be exchanged", m, 1, s -> exchanged(s, a, b)));
            for (int g : List.of(a, b)) {
                result.add(
                        new Slip("the sign of gauge " + name(g) + " seems to be flipped", m, 1, s -> scaled(s, -1, g)));
            }
            for (double unit : UNITS) {
                for (List<Integer> which : List.of(List.of(a), List.of(b), List.of(a, b))) {
                    result.add(new Slip(inAnotherUnit(which, unit), m, SELDOM, s -> {
                        double[] changed = s;
                        for (int g : which) {
                            changed = scaled(changed, 1 / unit, g);
                        }
                        return changed;
                    }));
                }
            }
            for (int n = m + 1; n < motions.size(); n++) {
                if (plain(n)) {
                    across(result, m, n);
                }
            }
        }
        return result;
    }

    /** Gauges exchanged between two stations: one for one, or both. */
    private void across(List<Slip> result, int m, int n) {
        List<Integer> here = motions.get(m).gauges();
        List<Integer> there = motions.get(n).gauges();
        for (int a : here) {
            for (int b : there) {
                if (readings.gauges().get(a).sense() == readings.gauges().get(b).sense()) {
                    result.add(new Slip(
                            "gauges " + name(a) + " and " + name(b) + " seem to be exchanged",
                            m,
                            SELDOM,
                            s -> exchanged(s, a, b)));
                }
            }
        }
        result.add(new Slip(
                "the pairs at " + TorsionReduction.millimetres(x[m]) + " and " + TorsionReduction.millimetres(x[n])
                        + " seem to be exchanged",
                m,
                SELDOM,
                s -> exchanged(exchanged(s, here.get(0), there.get(0)), here.get(1), there.get(1))));
    }

    private String inAnotherUnit(List<Integer> which, double factor) {
        return (which.size() > 1 ? "gauges " : "gauge ")
                + which.stream().map(this::name).collect(Collectors.joining(" and "))
                + (which.size() > 1 ? " seem" : " seems") + " to read in another unit than the column says, "
                + QuantityFormat.significant(Math.max(factor, 1 / factor), 3) + " times too "
                + (factor > 1 ? "great" : "small");
    }

    private boolean plain(int m) {
        return motions.get(m).gauges().size() == 2
                && Double.isFinite(motions.get(m).spacing());
    }

    /**
     * Departures of inner stations from the line between their neighbours: of the angle, and of the bodily motion as the
     * angle it would make of half a pair's spacing; and what the line turns back, against itself and below zero. All over
     * the largest angle.
     */
    private double raggedness(double[] slopes) {
        int n = x.length;
        double[] angle = turning.clone();
        double[] bodily = new double[n];
        Arrays.fill(bodily, Double.NaN);
        for (int m = 0; m < n; m++) {
            if (plain(m)) {
                int a = motions.get(m).gauges().get(0);
                int b = motions.get(m).gauges().get(1);
                double la = readings.gauges().get(a).lever();
                double lb = readings.gauges().get(b).lever();
                angle[m] = (slopes[a] - slopes[b]) / (la - lb);
                bodily[m] = (slopes[a] - la * angle[m]) * 2 / Math.abs(la - lb);
            }
        }
        double most = Arrays.stream(angle).map(Math::abs).max().orElse(0);
        if (most == 0) {
            return 0;
        }
        double back = Arrays.stream(angle).map(s -> Math.max(0, -s)).max().orElse(0);
        double turned = -Math.abs(angle[n - 1] - angle[0]);
        for (int i = 1; i < n; i++) {
            turned += Math.abs(angle[i] - angle[i - 1]);
        }
        return (departures(angle) + departures(bodily) + turned + 0.5 * back) / most;
    }

    private double departures(double[] y) {
        double sum = 0;
        for (int i = 1; i + 1 < y.length; i++) {
            double between = y[i - 1] + (x[i] - x[i - 1]) / (x[i + 1] - x[i - 1]) * (y[i + 1] - y[i - 1]);
            double away = Math.abs(y[i] - between);
            sum += Double.isNaN(away) ? 0 : away;
        }
        return sum;
    }

    private String name(int gauge) {
        return "\"" + readings.gauges().get(gauge).name() + "\"";
    }

    private static double[] exchanged(double[] slopes, int a, int b) {
        double[] changed = slopes.clone();
        changed[a] = slopes[b];
        changed[b] = slopes[a];
        return changed;
    }

    private static double[] scaled(double[] slopes, double factor, int gauge) {
        double[] changed = slopes.clone();
        changed[gauge] *= factor;
        return changed;
    }

    private static double slope(Readings readings, int gauge, double[] torque, int[] cycle) {
        double[] values =
                readings.steps().stream().mapToDouble(s -> s.readings()[gauge]).toArray();
        return CycleFit.of(torque, values, cycle).slope();
    }
}
