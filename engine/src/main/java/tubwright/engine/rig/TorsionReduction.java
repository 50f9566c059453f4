// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityFormat;
import tubwright.engine.rig.TorsionReading.StationAngle;
import tubwright.engine.rig.statistics.IllPosedException;
import tubwright.engine.rig.statistics.Uncertainty;
import tubwright.engine.rig.statistics.Uncertainty.Contribution;

/**
 * From readings to stiffness: gauges to angles, bodily motion and held-end rotation removed, torque fitted against
 * angle, the uncertainty put together after the GUM. The theory is in docs/theory/rig.md.
 */
public final class TorsionReduction {
    /** A gauge station counts as the held or loaded one within this distance, m. */
    private static final double AT = 0.02;

    private static final double LEVEL = 0.95;

    private final Readings readings;
    private final List<Finding> findings = new ArrayList<>();
    private final double[] torque;
    private final int[] cycle;
    private double[] angles;
    private Optional<StationMotion> held = Optional.empty();
    private StationMotion loaded;

    private TorsionReduction(Readings readings) {
        this.readings = readings;
        this.torque = readings.steps().stream().mapToDouble(Step::torque).toArray();
        this.cycle = readings.steps().stream().mapToInt(Step::cycle).toArray();
    }

    /**
     * Reduces a test.
     *
     * @param dropBedIn whether the first of several cycles is left out
     * @throws ReadingsException if the readings cannot give an angle or a slope
     */
    public static TorsionReading of(Readings readings, boolean dropBedIn) {
        boolean several = readings.cycles().size() > 1;
        Readings kept = dropBedIn && several ? readings.withoutBedIn() : readings;
        TorsionReduction reduction = new TorsionReduction(kept);
        if (dropBedIn && !several) {
            reduction.setUp("there is only one cycle, so none was dropped as bed-in");
        }
        try {
            return reduction.reduce(readings.steps().size() - kept.steps().size());
        } catch (IllPosedException e) {
            throw new ReadingsException(readings.source() + ": " + e.getMessage());
        }
    }

    private TorsionReading reduce(int dropped) {
        if (readings.steps().stream().allMatch(s -> Arrays.stream(s.readings()).allMatch(Double::isNaN))) {
            throw new ReadingsException(readings.source() + ":"
                    + readings.steps().getFirst().line()
                    + ": no gauge has a reading in any of the "
                    + readings.steps().size()
                    + " load steps; fill in the columns of the gauges");
        }
        GaugeStations stations = GaugeStations.of(readings);
        List<StationMotion> motions = stations.motions();
        findings.addAll(stations.findings());
        findings.addAll(GaugeDoubts.oneSided(readings, stations.alone(), motions));
        checkAnyTwist(motions);
        held = held(motions);
        double[] ground = held.map(StationMotion::angles).orElse(new double[torque.length]);
        List<double[]> relative =
                motions.stream().map(m -> minus(m.angles(), ground)).toList();
        int end = loadedEnd(motions, relative);
        loaded = motions.get(end);
        angles = relative.get(end);
        String span = held.map(h -> millimetres(loaded.station()) + " against " + millimetres(h.station()))
                .orElse(
                        loaded.spacing() < Double.POSITIVE_INFINITY
                                ? millimetres(loaded.station()) + " against the ground"
                                : "the loaded end, as read");
        findings.addAll(GaugeOrder.of(readings, motions, torque, cycle));
        checkRead();
        if (motions.size() < 3) {
            GaugeDoubts.movingTogether(readings, loaded, torque, cycle).ifPresent(findings::add);
        }
        CycleFit whole = CycleFit.of(angles, torque, cycle);
        double sign = Math.signum(whole.slope());
        if (sign < 0 && findings.stream().noneMatch(f -> f.kind() == Finding.Kind.DOUBTFUL_GAUGE)) {
            findings.add(new Finding(
                    Finding.Kind.DOUBTFUL_GAUGE,
                    readings.source(),
                    "the loaded end turns against the torque: the sign of the torque, or of every gauge there, is"
                            + " flipped, or held and loaded end are exchanged; the stiffness below is its size"));
        }
        zeros();
        checkFollows(whole);
        Stiffness stiffness = new Stiffness(readings, angles, new PairErrors(loaded, held, torque, cycle), sign);
        Estimate all = stiffness.of(whole);
        Plausibility.of(readings, angles, all.stiffness()).ifPresent(findings::add);
        List<Finding> outliers = Outliers.of(readings);
        findings.addAll(outliers);
        Optional<Estimate> cleaned = outliers.isEmpty()
                ? Optional.empty()
                : stiffness.over(i -> outliers.stream()
                        .noneMatch(o -> o.place()
                                .equals(readings.source() + ":"
                                        + readings.steps().get(i).line())));
        Optional<Estimate> withoutRig = readings.setup().rig().map(rig -> rigOut(all, rig, held.isPresent()));
        return new TorsionReading(
                readings,
                dropped,
                span,
                angles,
                all,
                stiffness.over(i -> !readings.steps().get(i).unloading()),
                stiffness.over(this::falling),
                stiffness.cycles(),
                withoutRig,
                cleaned,
                loops(),
                Bends.of(readings, angles, sign),
                twist(motions, relative),
                findings);
    }

    /** Whether a step belongs to an unloading branch; the turning point, where it begins, does. */
    private boolean falling(int i) {
        List<Step> steps = readings.steps();
        return steps.get(i).unloading()
                || i + 1 < steps.size()
                        && steps.get(i + 1).unloading()
                        && steps.get(i + 1).cycle() == steps.get(i).cycle();
    }

    /** Refuses a test in which no pair tells an angle, or that of the held end alone. */
    private void checkAnyTwist(List<StationMotion> motions) {
        OptionalDouble end = readings.setup().heldStation();
        boolean heldOnly =
                end.isPresent() && nearest(motions, end.getAsDouble()).isPresent() && motions.size() == 1;
        if (heldOnly) {
            setUp("only the pair at the held end, " + millimetres(end.getAsDouble())
                    + ", tells an angle, and a tub does not twist there: read a pair at the loaded end as well, or correct"
                    + " \"held station\"");
        }
        if (motions.isEmpty() || heldOnly) {
            throw new ReadingsException(findings.stream().map(Finding::toString).toList());
        }
    }

    /** Refuses gauges that were not read, or that stood still. */
    private void checkRead() {
        double[] read = Arrays.stream(angles).filter(Double::isFinite).toArray();
        int needed = Math.max(4, GaugeStations.needed(readings, angles));
        if (read.length < needed) {
            throw new ReadingsException(readings.source() + ": only " + read.length
                    + " steps have readings of both gauges of a pair at the loaded and the held end; at least " + needed
                    + " are needed");
        }
        if (Arrays.stream(read).allMatch(a -> a == read[0])) {
            throw new ReadingsException(readings.source() + ": the loaded end does not turn at all: were the gauges on"
                    + " the tub, and free to move?");
        }
    }

    /** Refuses an angle that does not follow the torque: no stiffness, not even its sign, can be read from it. */
    private void checkFollows(CycleFit torqueOnAngle) {
        CycleFit angleOnTorque = CycleFit.of(torque, angles, cycle);
        if (Math.abs(angleOnTorque.slope()) < 3 * angleOnTorque.standardError()) {
            throw new ReadingsException(readings.source() + ":"
                    + readings.steps().getFirst().line()
                    + ": the angle of the loaded end does not follow the torque (R² "
                    + QuantityFormat.significant(torqueOnAngle.rSquared(), 2)
                    + "): no stiffness can be read from it; were load and gauges on the tub, and do their columns belong"
                    + " together?");
        }
    }

    private Estimate rigOut(Estimate all, RigStiffness rig, boolean heldMeasured) {
        if (heldMeasured) {
            setUp("the held end's rotation is measured and subtracted, and a rig stiffness is given as well: it is"
                    + " taken out on top, which is right only for flexibility between the two gauge stations");
        }
        if (rig.stiffness() < 10 * all.stiffness()) {
            setUp("the rig is only "
                    + QuantityFormat.significant(rig.stiffness() / all.stiffness(), 2)
                    + " times as stiff as what was measured; with less than ten times its correction, and its error, are"
                    + " more than a tenth of the answer");
        }
        if (rig.stiffness() <= all.stiffness()) {
            throw new ReadingsException(readings.source() + ": the rig is said to be "
                    + new Quantity(rig.stiffness(), Dimension.TORSIONAL_STIFFNESS).format("N·m/deg", 4)
                    + ", but tub and rig together were measured at "
                    + new Quantity(all.stiffness(), Dimension.TORSIONAL_STIFFNESS).format("N·m/deg", 4)
                    + ": a rig in series cannot be the softer; check its unit");
        }
        return all.without(rig);
    }

    /** Gauges at the held end, if they were set there; says so where they were not. */
    private Optional<StationMotion> held(List<StationMotion> motions) {
        if (readings.setup().heldStation().isEmpty()) {
            if (motions.size() > 1) {
                setUp("the file does not say which end is held (\"held station, 2400 mm\"): no rotation is subtracted");
            }
            return Optional.empty();
        }
        double x = readings.setup().heldStation().getAsDouble();
        Optional<StationMotion> nearest = nearest(motions, x);
        if (nearest.isEmpty()) {
            setUp("the rotation of the held end at " + millimetres(x)
                    + " was not measured: whatever it gives is counted as twist of the tub");
            return Optional.empty();
        }
        return nearest;
    }

    private static Optional<StationMotion> nearest(List<StationMotion> motions, double x) {
        return motions.stream()
                .filter(m -> Math.abs(m.station() - x) <= AT)
                .min(Comparator.comparingDouble(m -> Math.abs(m.station() - x)));
    }

    /** Whether a station lies on the far side of the held end, away from the load. */
    private boolean behindHeld(StationMotion motion) {
        OptionalDouble fixed = readings.setup().heldStation();
        OptionalDouble end = readings.setup().loadedStation();
        if (fixed.isEmpty() || end.isEmpty()) {
            return false;
        }
        double from = motion.station() - fixed.getAsDouble();
        return Math.abs(from) > AT && from * (end.getAsDouble() - fixed.getAsDouble()) < 0;
    }

    private int loadedEnd(List<StationMotion> motions, List<double[]> relative) {
        OptionalDouble end = readings.setup().loadedStation();
        List<StationMotion> behind = motions.stream().filter(this::behindHeld).toList();
        for (StationMotion each : behind) {
            setUp("the pair at " + millimetres(each.station())
                    + " stands behind the held end: it is in the twist line, but no part of the stiffness");
        }
        if (end.isPresent()) {
            Optional<StationMotion> there = nearest(motions, end.getAsDouble());
            if (there.isPresent() && there.get() != held.orElse(null)) {
                return motions.indexOf(there.get());
            }
            if (behind.size() + held.map(_ -> 1).orElse(0) == motions.size()) {
                setUp("no pair tells the angle between the held end and the loaded one, "
                        + millimetres(end.getAsDouble()) + ": there is no twist to take a stiffness from");
                throw new ReadingsException(
                        findings.stream().map(Finding::toString).toList());
            }
            setUp("no pair tells the angle at the loaded station " + millimetres(end.getAsDouble())
                    + ": the stiffness is that up to the gauges that turn most");
        }
        int best = -1;
        double most = -1;
        for (int m = 0; m < motions.size(); m++) {
            if (held.isPresent() && held.get() == motions.get(m) || behind.contains(motions.get(m))) {
                continue;
            }
            if (Arrays.stream(relative.get(m)).filter(Double::isFinite).count() < 4) {
                best = best < 0 ? m : best;
                continue;
            }
            double slope = Math.abs(CycleFit.of(torque, relative.get(m), cycle).slope());
            if (slope > most) {
                most = slope;
                best = m;
            }
        }
        return best;
    }

    private List<Loop> loops() {
        List<Loop> result = new ArrayList<>();
        for (int number : readings.cycles()) {
            int[] mine = IntStream.range(0, cycle.length)
                    .filter(i -> cycle[i] == number && Double.isFinite(angles[i]))
                    .toArray();
            Loop.of(
                            number,
                            IntStream.of(mine)
                                    .mapToObj(i -> readings.steps().get(i))
                                    .toList(),
                            IntStream.of(mine).mapToDouble(i -> angles[i]).toArray())
                    .ifPresent(result::add);
        }
        return result;
    }

    private List<StationAngle> twist(List<StationMotion> all, List<double[]> relative) {
        List<StationMotion> motions = new ArrayList<>();
        List<CycleFit> lines = new ArrayList<>();
        for (int m = 0; m < all.size(); m++) {
            double[] angle = relative.get(m);
            if (GaugeStations.count(angle) < GaugeStations.needed(readings, angle)) {
                findings.add(
                        new Finding(
                                Finding.Kind.UNREAD,
                                readings.source(),
                                "the pair at " + millimetres(all.get(m).station())
                                        + " was hardly ever read together with the held end; it is left out of the twist line"));
            } else {
                motions.add(all.get(m));
                lines.add(CycleFit.of(torque, angle, cycle));
            }
        }
        Optional<GaugeScatter> scatter = GaugeScatter.of(motions, lines, held);
        double placed = readings.setup().spacingUncertainty();
        List<StationAngle> result = new ArrayList<>();
        for (int m = 0; m < motions.size(); m++) {
            StationMotion motion = motions.get(m);
            CycleFit line = lines.get(m);
            boolean isHeld = motion == held.orElse(null);
            PairErrors errors = new PairErrors(motion, held, torque, cycle);
            double place = errors.place(placed);
            double fit = isHeld
                    ? 0
                    : scatter.map(s -> s.standardError(motion, line, held)).orElse(line.standardError());
            double ofHeld = held.isEmpty() || isHeld
                    ? 0
                    : scatter.map(s -> s.standardErrorOfHeld(line, held.get())).orElseGet(errors::scatterOfHeld);
            int freedom = scatter.map(GaugeScatter::freedom).orElse(line.fit().degreesOfFreedom());
            // What goes on as normal must be as wide as Student's t made it at 95 %.
            double widened = Uncertainty.studentFactor(LEVEL, freedom)
                    / Uncertainty.studentFactor(LEVEL, Double.POSITIVE_INFINITY);
            Uncertainty uncertainty = new Uncertainty(List.of(
                    new Contribution("fit", fit, freedom),
                    Contribution.known("spacing", place),
                    Contribution.known(
                            "torque", Math.abs(line.slope()) * readings.setup().torqueUncertainty())));
            double bodily = Arrays.stream(motion.bodily())
                    .map(b -> Math.abs(b - motion.bodily()[0]))
                    .max()
                    .orElse(0);
            result.add(new StationAngle(
                    motion.station(),
                    line.slope(),
                    uncertainty.expanded(LEVEL),
                    Math.hypot(widened * fit, place),
                    Math.hypot(widened * ofHeld, errors.placeOfHeld(placed)),
                    motion.gauges().stream()
                            .map(g -> readings.gauges().get(g).name())
                            .toList(),
                    bodily));
        }
        return result;
    }

    /** Cycles whose load never comes back to zero. */
    private void zeros() {
        double most = readings.greatestTorque();
        List<Integer> open = new ArrayList<>();
        for (int number : readings.cycles()) {
            List<Step> steps =
                    readings.steps().stream().filter(s -> s.cycle() == number).toList();
            if (Math.abs(steps.getLast().torque()) > 0.02 * most) {
                open.add(number);
            }
        }
        if (open.isEmpty()) {
            return;
        }
        List<Step> steps = readings.steps().stream()
                .filter(s -> s.cycle() == open.getFirst())
                .toList();
        Step last = steps.getLast();
        boolean rises = steps.stream().anyMatch(Step::unloading);
        String others = open.stream().skip(1).map(String::valueOf).collect(Collectors.joining(", "));
        findings.add(new Finding(
                Finding.Kind.NO_ZERO,
                readings.source() + ":" + last.line(),
                "cycle " + open.getFirst()
                        + (rises ? " ends at " : " is only loaded, never unloaded: it ends at ")
                        + new Quantity(last.torque(), Dimension.MOMENT).format("N·m", 4)
                        + " and never returns to zero"
                        + (others.isEmpty() ? "" : ", nor does cycle " + others)
                        + ": what stayed behind cannot be told from a gauge that moved"));
    }

    private void setUp(String words) {
        findings.add(new Finding(Finding.Kind.SET_UP, readings.source(), words));
    }

    private static double[] minus(double[] a, double[] b) {
        double[] result = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            result[i] = a[i] - b[i];
        }
        return result;
    }

    static String millimetres(double x) {
        return "x = " + Math.round(x * 1000) + " mm";
    }
}
