// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.design.Design;
import tubwright.engine.design.Targets;
import tubwright.engine.design.text.Limit;
import tubwright.fleet.Campaign;
import tubwright.fleet.Point;
import tubwright.fleet.Reading;
import tubwright.fleet.Row;
import tubwright.fleet.RowStore;
import tubwright.fleet.StudyRunner;
import tubwright.fleet.plan.Aim;
import tubwright.fleet.plan.StudyPlan;
import tubwright.fleet.plan.StudyText;
import tubwright.fleet.sample.UnitCube;
import tubwright.fleet.statistics.Front;
import tubwright.fleet.statistics.Probability;
import tubwright.fleet.statistics.SobolIndices;
import tubwright.fleet.statistics.Suffices;
import tubwright.fleet.statistics.Surrogate;

/** Runs a study through a store and says what its rows tell. */
public final class StudyRun {
    /** Points at which a surrogate is asked for what promises most. */
    private static final int ASKED = 4096;

    /** More points than this make a surrogate slow and hardly better. */
    private static final int MOST_POINTS = 600;

    private final Design design;
    private final StudyPlan plan;
    private final Campaign campaign;
    private final Listener listener;

    /** Hears how it goes, and may stop it. */
    public interface Listener {
        /** A variant has come so far. */
        default void progress(String variant, Campaign.Count count) {}

        /** What is being done, in words. */
        default void stage(String words) {}

        /** Whether to stop. */
        default boolean stop() {
            return false;
        }
    }

    private StudyRun(Design design, StudyPlan plan, RowStore store, StudyRunner runner, Listener listener) {
        this.design = design;
        this.plan = plan;
        this.campaign = new Campaign(store, runner);
        this.listener = listener;
    }

    /**
     * Runs a study.
     *
     * @param design the plan is of
     * @throws tubwright.fleet.FleetException where store or runner cannot go on; finished rows are kept
     */
    public static Findings run(Design design, StudyPlan plan, RowStore store, StudyRunner runner, Listener listener) {
        StudyRun run = new StudyRun(design, plan, store, runner, listener);
        List<Findings.OfVariant> variants = new ArrayList<>();
        for (StudyPlan.Part part : plan.parts()) {
            variants.add(run.of(part));
        }
        boolean complete = variants.stream()
                .flatMap(v -> v.points().stream())
                .allMatch(p -> p.row().isPresent());
        return new Findings(plan, variants, complete);
    }

    private List<Optional<Row>> rows(StudyPlan.Part part, List<Point> points) {
        return campaign.run(part.job(), points, new Campaign.Listener() {
                    @Override
                    public void progress(Campaign.Count count) {
                        listener.progress(part.variant(), count);
                    }

                    @Override
                    public boolean stop() {
                        return listener.stop();
                    }
                })
                .rows();
    }

    private Findings.OfVariant of(StudyPlan.Part part) {
        Optional<LayupDraws> layups = plan.text().layupScatter().map(t -> {
            listener.stage(part.variant() + ": drawing layups");
            return LayupDraws.of(
                    design.variant(part.variant()).orElseThrow(), part.job().meshSize(), t, plan, listener::stop);
        });
        if (plan.variations().isEmpty()) {
            return new Findings.OfVariant(
                    part.variant(), List.of(), Optional.empty(), List.of(), List.of(), List.of(), List.of(), layups);
        }
        double[] middle = new double[plan.variations().size()];
        Arrays.fill(middle, 0.5);
        List<Point> asked = new ArrayList<>(part.points());
        if (plan.scatters()) {
            asked.add(part.point(middle));
        }
        List<Optional<Row>> rows = rows(part, asked);
        Optional<Row> nominal = plan.scatters() ? rows.getLast() : Optional.empty();
        List<Findings.OfPoint> points = new ArrayList<>();
        for (int i = 0; i < plan.shares().size(); i++) {
            points.add(new Findings.OfPoint(plan.shares().get(i), rows.get(i), new double[0]));
        }
        boolean whole = rows.stream().allMatch(Optional::isPresent);
        List<Findings.Between> between = new ArrayList<>();
        Map<String, Surrogate> surrogates = whole ? surrogates(points) : Map.of();
        surrogates.forEach(
                (reading, s) -> between.add(new Findings.Between(reading, s.error(), s.explained(), s.slope(middle))));
        if (whole && !plan.aims().isEmpty()) {
            points.addAll(promising(part, points, surrogates));
        }
        List<Integer> front = plan.aims().isEmpty() ? List.of() : Front.of(costs(points));
        return new Findings.OfVariant(
                part.variant(),
                points,
                nominal,
                nominal.map(n -> chances(part, points, n)).orElse(List.of()),
                whole ? indices(points) : List.of(),
                between,
                front,
                layups);
    }

    private static double[] values(List<Findings.OfPoint> points, String reading) {
        return points.stream().mapToDouble(p -> p.value(reading)).toArray();
    }

    /** Of numbers only, where there are points enough to leave one out. */
    private Map<String, Surrogate> surrogates(List<Findings.OfPoint> points) {
        Map<String, Surrogate> surrogates = new LinkedHashMap<>();
        int d = plan.variations().size();
        if (points.size() > MOST_POINTS
                || points.size() < 2 * d + 3
                || plan.variations().stream().anyMatch(v -> v.words().isPresent())) {
            return surrogates;
        }
        List<double[]> shares = points.stream().map(Findings.OfPoint::shares).toList();
        for (Reading reading : plan.readings()) {
            double[] values = values(points, reading.text());
            if (Arrays.stream(values).filter(Double::isFinite).count() >= 2 * d + 3) {
                surrogates.put(reading.text(), Surrogate.of(shares, values));
            }
        }
        return surrogates;
    }

    private List<double[]> costs(List<Findings.OfPoint> points) {
        return points.stream()
                .map(p -> plan.aims().stream()
                        .mapToDouble(a -> a.cost(p.value(a.reading())))
                        .toArray())
                .toList();
    }

    /** The front of what the surrogates guess, computed whole. */
    private List<Findings.OfPoint> promising(
            StudyPlan.Part part, List<Findings.OfPoint> points, Map<String, Surrogate> surrogates) {
        List<Aim> aims = plan.aims();
        if (aims.stream().anyMatch(a -> !surrogates.containsKey(a.reading()))) {
            return List.of();
        }
        List<double[]> asked =
                UnitCube.latin(ASKED, plan.variations().size(), plan.text().seed());
        List<double[]> guesses = asked.stream()
                .map(x -> aims.stream()
                        .mapToDouble(a -> surrogates.get(a.reading()).at(x).value())
                        .toArray())
                .toList();
        List<double[]> costs = new ArrayList<>();
        for (double[] guess : guesses) {
            double[] cost = new double[guess.length];
            for (int k = 0; k < cost.length; k++) {
                cost[k] = aims.get(k).cost(guess[k]);
            }
            costs.add(cost);
        }
        List<Integer> chosen =
                Front.some(Front.of(costs), Math.max(0, plan.text().verify()));
        List<Optional<Row>> rows =
                rows(part, chosen.stream().map(i -> part.point(asked.get(i))).toList());
        List<Findings.OfPoint> added = new ArrayList<>();
        for (int k = 0; k < chosen.size(); k++) {
            added.add(new Findings.OfPoint(asked.get(chosen.get(k)), rows.get(k), guesses.get(chosen.get(k))));
        }
        return added;
    }

    private List<Findings.Indices> indices(List<Findings.OfPoint> points) {
        List<Findings.Indices> indices = new ArrayList<>();
        if (plan.text().layout() == StudyText.Layout.INDICES) {
            int d = plan.variations().size();
            List<Findings.OfPoint> planned =
                    points.stream().filter(p -> !p.added()).toList();
            for (Reading reading : plan.readings()) {
                double[] values = values(planned, reading.text());
                if (Arrays.stream(values).filter(Double::isFinite).distinct().count() > 1) {
                    indices.add(new Findings.Indices(
                            reading.text(),
                            SobolIndices.of(values, d, plan.text().seed())));
                }
            }
        }
        return indices;
    }

    private List<Findings.Chance> chances(StudyPlan.Part part, List<Findings.OfPoint> points, Row nominal) {
        Targets targets = design.variant(part.variant()).orElseThrow().targets();
        List<Findings.Chance> chances = new ArrayList<>();
        for (Reading reading : plan.readings()) {
            limit(targets, reading).ifPresent(limit -> {
                double[] values = values(drawn(points), reading.text());
                int there = (int) Arrays.stream(values).filter(Double::isFinite).count();
                int met = (int) Arrays.stream(values)
                        .filter(v -> Double.isFinite(v) && Targets.met(limit, v))
                        .count();
                if (there > 0) {
                    chances.add(new Findings.Chance(
                            reading.text(),
                            limit.si(),
                            limit.atLeast(),
                            Probability.of(met, there),
                            Suffices.factor(
                                    nominal.value(reading.text()),
                                    values,
                                    limit.si(),
                                    limit.atLeast(),
                                    plan.text().share())));
                }
            });
        }
        return chances;
    }

    /** Of the points for indices the first two samples alone are independent. */
    private List<Findings.OfPoint> drawn(List<Findings.OfPoint> points) {
        List<Findings.OfPoint> planned = points.stream().filter(p -> !p.added()).toList();
        return plan.text().layout() == StudyText.Layout.INDICES
                ? planned.subList(0, 2 * planned.size() / (plan.variations().size() + 2))
                : planned;
    }

    private static Optional<Limit> limit(Targets targets, Reading reading) {
        if (reading.of().isPresent()) {
            return Optional.empty();
        }
        return switch (reading.kind()) {
            case TORSION -> targets.torsionalStiffness();
            case MASS -> targets.mass();
            case BENDING -> targets.bendingStiffness();
            case BUCKLING -> targets.bucklingFactor();
            case RESERVE -> targets.reserveFactor();
            case FREQUENCY -> targets.firstTorsionFrequency();
            default -> Optional.empty();
        };
    }
}
