// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tubwright.desk.answer.RigAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.Estimate;
import tubwright.engine.rig.Finding;
import tubwright.engine.rig.Loop;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.Series;
import tubwright.engine.rig.Setup;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReading.StationAngle;

/** Torsion tests in one screenful. */
public final class RigSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private final Terminal terminal;
    private final RigAnswer answer;
    private final List<String> lines = new ArrayList<>();

    private RigSummary(Terminal terminal, RigAnswer answer) {
        this.terminal = terminal;
        this.answer = answer;
    }

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, RigAnswer answer) {
        RigSummary summary = new RigSummary(terminal, answer);
        answer.tests().forEach(summary::test);
        summary.split();
        summary.lines.add("");
        summary.lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return summary.lines;
    }

    /** A test in a line for the logbook. */
    public static String line(TorsionReading test) {
        Estimate best = test.best();
        return test.readings().setup().test() + ", " + test.readings().source() + ": "
                + plusMinus(perDegree(best.stiffness()), perDegree(best.expanded()), GAP) + " N·m/deg (95 %)"
                + (test.withoutRig().isPresent() ? ", rig taken out" : "")
                + (test.readings().setup().mass().isPresent()
                        ? ", weighed "
                                + significant(test.readings().setup().mass().getAsDouble(), 4, GAP)
                                + " kg"
                        : "")
                + (test.findings().isEmpty() ? "" : "; " + test.findings().size() + " words of doubt");
    }

    private void test(TorsionReading test) {
        lines.add("");
        lines.add(terminal.look(Look.STRONG, test.readings().setup().test()) + "  "
                + test.readings().source() + ", " + test.readings().steps().size() + " load steps up to "
                + significant(test.readings().greatestTorque(), 4, GAP) + " N·m"
                + (test.dropped() > 0 ? ", " + test.dropped() + " of the bed-in cycle dropped" : ""));
        lines.add("  angle of " + test.span());
        lines.add("");
        TextTable table = new TextTable(true, true, false, true);
        stiffness(table, "torsional stiffness", test.all());
        test.withoutRig().ifPresent(e -> stiffness(table, "rig taken out", e));
        test.loading().ifPresent(e -> stiffness(table, "loading only", e));
        test.unloading().ifPresent(e -> stiffness(table, "unloading only", e));
        test.withoutOutliers().ifPresent(e -> stiffness(table, "without the outliers", e));
        test.readings().setup().mass().ifPresent(m -> table.row("weighed", significant(m, 4, GAP) + " kg", "", ""));
        lines.addAll(table.lines(terminal));
        lines.add("  ± holds the true value with 95 % chance; it is made of:");
        TextTable parts = new TextTable(true, false);
        double whole = test.best().stiffness();
        test.best()
                .uncertainty()
                .contributions()
                .forEach(c -> parts.row("  " + c.name(), percent(c.standard() / whole) + " (standard)"));
        lines.addAll(parts.lines(terminal));
        loops(test);
        twist(test);
        for (Finding finding : test.findings()) {
            lines.add("");
            lines.addAll(Wrap.lines(finding.toString(), "  ! ", WIDTH));
        }
    }

    private static void stiffness(TextTable table, String name, Estimate estimate) {
        table.row(
                name,
                plusMinus(perDegree(estimate.stiffness()), perDegree(estimate.expanded()), GAP) + " N·m/deg",
                percent(estimate.expanded() / estimate.stiffness()),
                "R² " + fixed(estimate.rSquared(), 4, "") + ", " + estimate.steps() + " steps");
    }

    private void loops(TorsionReading test) {
        for (Loop loop : test.loops()) {
            lines.add("  cycle " + loop.cycle() + ": loop " + degrees(loop.width()) + " wide ("
                    + percent(loop.share()) + " of " + degrees(loop.range()) + "), "
                    + significant(loop.area(), 2, GAP) + " J lost"
                    + (Double.isFinite(loop.residual()) ? ", " + degrees(loop.residual()) + " left at the end" : ""));
        }
        var straight = test.straightness();
        if (Double.isFinite(straight.slop())) {
            lines.add("  slop: " + (straight.slack() ? degrees(straight.slop()) : "none that stands out of the scatter")
                    + " (± " + degrees(2 * straight.slopError()) + ")");
        }
        if (Double.isFinite(straight.curvature())) {
            lines.add("  bend of the line: "
                    + (straight.curved()
                            ? percent(Math.abs(straight.curvature())) + " of the angle, "
                                    + (straight.curvature() > 0 ? "softening" : "stiffening")
                            : "none that stands out of the scatter"));
        }
    }

    private void twist(TorsionReading test) {
        if (test.twist().size() < 2) {
            return;
        }
        lines.add("");
        TextTable table = new TextTable(true, false, false, false);
        boolean predicted = answer.predicted().isPresent();
        table.row("station", "deg per kN·m", predicted ? "predicted" : "", "bodily motion");
        for (StationAngle each : test.twist()) {
            table.row(
                    "x = " + fixed(1000 * each.station(), 0, GAP) + " mm",
                    plusMinus(Math.toDegrees(1000 * each.perTorque()), Math.toDegrees(1000 * each.expanded()), GAP),
                    predictedAt(test, each.station()).isPresent()
                            ? fixed(
                                    Math.toDegrees(1000
                                            * predictedAt(test, each.station()).getAsDouble()),
                                    4,
                                    GAP)
                            : "",
                    significant(1000 * each.bodily(), 2, GAP) + " mm");
        }
        lines.addAll(table.lines(terminal));
    }

    private OptionalDouble predictedAt(TorsionReading test, double x) {
        OptionalDouble held = test.readings().setup().heldStation();
        return answer.predicted().isPresent() && held.isPresent()
                ? OptionalDouble.of(answer.predicted().get().against(x, held.getAsDouble()))
                : OptionalDouble.empty();
    }

    private void split() {
        answer.notSplit().ifPresent(words -> {
            lines.add("");
            lines.addAll(Wrap.lines(words, "  ! ", WIDTH));
        });
        answer.split().ifPresent(s -> {
            lines.add("");
            lines.add("  between hub and tub: "
                    + plusMinus(perDegree(s.suspension()), perDegree(s.expanded()), GAP) + " N·m/deg in series; "
                    + percent(s.tubShare()) + " of the hub-to-hub flexibility is the tub's");
            Setup setup = answer.tub().orElseThrow().readings().setup();
            if (setup.wheels().isPresent()) {
                double wheels = setup.wheels().getAsDouble();
                double tub = answer.tub().orElseThrow().best().stiffness();
                lines.add("  share of a shift of roll stiffness that arrives: "
                        + fixed(Series.shareArriving(wheels, s.suspension(), tub), 3, ""));
                setup.share().ifPresent(share -> lines.add(target(share, wheels, s.suspension())));
            }
        });
    }

    private static String target(double share, double wheels, double suspension) {
        try {
            return "  for " + fixed(share, 2, "") + " the tub needs "
                    + significant(perDegree(Series.tubFor(share, wheels, suspension)), 4, GAP) + " N·m/deg";
        } catch (ReadingsException e) {
            return "  for " + fixed(share, 2, "") + ": " + e.getMessage();
        }
    }

    private static String degrees(double radians) {
        return significant(Math.toDegrees(radians), 2, GAP) + "°";
    }
}
