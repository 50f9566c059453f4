// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.export.KeptPrediction;
import tubwright.desk.export.ScoredPrediction;

/** Predictions against tests, and how good the predictions have been. */
public final class RigRecordSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    /** Fewer scores than this say little about the intervals. */
    private static final int FEW = 5;

    private RigRecordSummary() {}

    /**
     * Lines to print.
     *
     * @param kept predictions on record
     * @param scored those held against a test
     */
    public static List<String> lines(Terminal terminal, List<KeptPrediction> kept, List<ScoredPrediction> scored) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, "Predictions and tests"));
        lines.add("");
        TextTable table = new TextTable(true, false, false, false, true, true);
        table.row("prediction", "foretold, N·m/deg", "measured", "off by", "", "mass");
        for (ScoredPrediction each : scored) {
            table.row(
                    each.name() + " (" + each.readings() + ")",
                    interval(each.foretold(), each.spread()),
                    interval(each.measured(), each.measuredSpread()),
                    fixed(each.score(), 1, GAP) + " s",
                    each.held() ? "held" : "missed",
                    mass(each));
        }
        for (KeptPrediction each : kept) {
            if (scored.stream().noneMatch(s -> s.name().equals(each.name()))) {
                table.row(each.name(), interval(each.stiffness(), each.spread()), "", "", "not tested yet", "");
            }
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(tally(scored), "  ", WIDTH));
        return lines;
    }

    /** How good they have been, in words. */
    public static String tally(List<ScoredPrediction> scored) {
        if (scored.isEmpty()) {
            return "No prediction has been held against a test yet: tubwright rig explain DIR READINGS does it.";
        }
        long held = scored.stream().filter(ScoredPrediction::held).count();
        double square = scored.stream()
                .mapToDouble(s -> s.score() * s.score())
                .average()
                .orElseThrow();
        double mean =
                scored.stream().mapToDouble(ScoredPrediction::score).average().orElseThrow();
        return held + " of " + scored.size() + " held; of intervals that are right 95 % do. Root mean square of s, the"
                + " standard deviations by which tests lie off: " + fixed(Math.sqrt(square), 1, GAP)
                + " (1 is right, more means intervals too narrow, less too wide); mean " + fixed(mean, 1, GAP)
                + (scored.size() < FEW ? ". So few say little." : ".");
    }

    private static String interval(double stiffness, double spread) {
        return plusMinus(perDegree(stiffness), perDegree(1.96 * spread * stiffness), GAP);
    }

    private static String mass(ScoredPrediction each) {
        if (!Double.isFinite(each.weighed()) || !Double.isFinite(each.foretoldMass())) {
            return "";
        }
        double away = each.weighed() / each.foretoldMass() - 1;
        return fixed(each.weighed(), 2, GAP) + " kg weighed, " + (away < 0 ? "−" : "+")
                + fixed(100 * Math.abs(away), 1, GAP) + " %";
    }
}
