// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.console.RigExplainWords;
import tubwright.engine.rig.Estimate;
import tubwright.engine.rig.Finding;
import tubwright.engine.rig.Step;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.explain.Measured;
import tubwright.engine.rig.explain.Update;

/** Torsion tests, as the page is told them. */
final class TestViews {
    private TestViews() {}

    static TestView of(String file, boolean withoutBedIn, TorsionReading reading) {
        List<TestView.EstimateView> estimates = new ArrayList<>();
        reading.withoutRig().ifPresent(e -> estimates.add(estimate("without the rig's give", e)));
        estimates.add(estimate("all steps", reading.all()));
        reading.loading().ifPresent(e -> estimates.add(estimate("loading", e)));
        reading.unloading().ifPresent(e -> estimates.add(estimate("unloading", e)));
        reading.withoutOutliers().ifPresent(e -> estimates.add(estimate("without outliers", e)));
        List<Step> steps = reading.readings().steps();
        TorsionReading.Straightness straight = reading.straightness();
        return new TestView(
                file,
                withoutBedIn,
                reading.readings().setup().test(),
                reading.readings().setup().hubToHub(),
                reading.span(),
                estimates,
                IntStream.range(0, steps.size())
                        .mapToObj(i -> step(steps.get(i), reading.angles()[i]))
                        .toList(),
                reading.loops().stream()
                        .map(l ->
                                new TestView.LoopView(l.cycle(), l.area(), l.width(), l.share(), finite(l.residual())))
                        .toList(),
                straight.slack() ? Optional.of(straight.slop()) : Optional.empty(),
                straight.curved() ? Optional.of(straight.curvature()) : Optional.empty(),
                boxed(reading.readings().setup().heldStation()),
                reading.twist().stream()
                        .map(t -> new TestView.StationView(t.station(), t.perTorque(), t.expanded(), t.gauges()))
                        .toList(),
                reading.findings().stream().map(Finding::toString).toList());
    }

    private static TestView.StepView step(Step step, double angle) {
        return new TestView.StepView(step.cycle(), step.torque(), finite(angle), step.unloading(), step.line());
    }

    private static TestView.EstimateView estimate(String name, Estimate estimate) {
        return new TestView.EstimateView(name, estimate.stiffness(), estimate.expanded());
    }

    static ExplainedView of(String file, String revision, RigExplainAnswer answer) {
        Explanation told = answer.explanation();
        Update update = told.update();
        Measured measured = told.measured();
        List<String> verdict = new ArrayList<>(
                RigExplainWords.verdict(told, answer.reading().readings().greatestTorque()));
        answer.foretold().forEach(f -> verdict.add(RigExplainWords.foretold(f)));
        verdict.addAll(RigExplainWords.alike(told));
        return new ExplainedView(
                file,
                answer.variant(),
                revision,
                told.predicted(),
                told.calibrated(),
                told.expanded(),
                answer.reading().best().stiffness(),
                answer.reading().best().expanded(),
                verdict,
                boxed(measured.held()),
                IntStream.range(0, measured.stations().length)
                        .mapToObj(k -> new ExplainedView.TwistPointView(
                                measured.stations()[k],
                                measured.angles()[k],
                                1.96 * measured.deviations()[k],
                                update.before()[k],
                                update.after()[k]))
                        .sorted(Comparator.comparingDouble(ExplainedView.TwistPointView::station))
                        .toList(),
                told.segments().stream()
                        .map(s -> new ExplainedView.SegmentView(
                                s.from(),
                                s.to(),
                                s.measured(),
                                s.predicted(),
                                s.explained(),
                                s.significance(),
                                s.standsOut() ? s.guilty().map(Doubt::name).orElse("nothing in question") : ""))
                        .toList(),
                IntStream.range(0, update.doubts().size())
                        .mapToObj(i -> factor(update, i))
                        .toList(),
                answer.keptAt());
    }

    private static ExplainedView.FactorView factor(Update update, int i) {
        Doubt doubt = update.doubts().get(i);
        String words = RigExplainWords.after(update, i);
        String learnt = RigExplainWords.learnt(update, i);
        if (doubt.is(Doubt.Kind.RIG_GIVE)) {
            return new ExplainedView.FactorView(doubt.name(), 0, 0, 0, 0, 0, words, learnt);
        }
        double before = 1.96 * doubt.spread();
        double mean = update.mean()[i];
        double two = 1.96 * update.deviation(i);
        return new ExplainedView.FactorView(
                doubt.name(),
                Math.exp(-before),
                Math.exp(before),
                Math.exp(mean),
                Math.exp(mean - two),
                Math.exp(mean + two),
                words,
                learnt);
    }

    private static Optional<Double> finite(double value) {
        return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
    }

    private static Optional<Double> boxed(OptionalDouble value) {
        return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
    }
}
