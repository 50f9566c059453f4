// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.ForetoldTub;
import tubwright.desk.answer.RigPredictAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.rig.explain.NextTub;

/** The next tub foretold, in a few lines. */
public final class RigPredictSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private RigPredictSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, RigPredictAnswer answer) {
        NextTub next = answer.prediction();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  foretold"
                + (answer.variant().equals("as designed") ? "" : ", " + answer.variant()));
        lines.add("");
        TextTable table = new TextTable(true, true, true);
        table.row(
                "torsional stiffness",
                plusMinus(perDegree(next.stiffness()), perDegree(next.expanded()), GAP) + " N·m/deg",
                answer.calibration().isPresent() ? "95 %, after the test" : "95 %, nothing tested yet");
        if (answer.calibration().isPresent()) {
            table.row(
                    "without the test",
                    plusMinus(perDegree(next.uncalibrated()), perDegree(next.uncalibratedExpanded()), GAP) + " N·m/deg",
                    "95 %");
        }
        table.row("mass", significant(answer.mass(), 4, GAP) + " kg", lighter(answer));
        answer.weighed()
                .filter(w -> w.mass() != 1)
                .ifPresent(w -> table.row(
                        "mass as built",
                        significant(answer.mass() * w.mass(), 4, GAP) + " kg",
                        "if all of it is as much off as the pieces weighed"));
        answer.weakest()
                .ifPresent(w -> table.row(
                        "weakest margin",
                        significant(w.value(), 3, GAP),
                        w.zone() + ", " + w.check() + ", case " + w.load()));
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(
                answer.calibration()
                        .map(RigPredictSummary::rests)
                        .orElse("It rests on the model and the usual scatter of materials and"
                                + " joints alone. A test narrows it: tubwright rig explain DIR READINGS --keep"),
                "  ",
                WIDTH));
        answer.weighed().ifPresent(w -> lines.addAll(Wrap.lines(w.words(), "  ", WIDTH)));
        answer.keptAt().ifPresent(file -> lines.add("  on record: " + file));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        lines.add("  " + next.solutions() + " solutions; mesh " + fixed(1000 * answer.meshSize(), 0, GAP) + " mm");
        return lines;
    }

    /** The prediction in a line for the logbook. */
    public static String line(String name, RigPredictAnswer answer) {
        NextTub next = answer.prediction();
        return "Foretold as \"" + name + "\""
                + (answer.variant().equals("as designed") ? "" : " (" + answer.variant() + ")") + ": "
                + plusMinus(perDegree(next.stiffness()), perDegree(next.expanded()), GAP) + " N·m/deg (95 %), "
                + significant(answer.mass(), 4, GAP) + " kg"
                + answer.weakest()
                        .map(w -> ", weakest margin " + significant(w.value(), 3, GAP) + " (" + w.zone() + ")")
                        .orElse("");
    }

    private static String lighter(RigPredictAnswer answer) {
        double tested = answer.testedMass();
        if (!Double.isFinite(tested)) {
            return "";
        }
        return ForetoldTub.againstTested(answer.mass() / tested - 1);
    }

    private static String rests(Calibration calibration) {
        return "It rests on the test of " + calibration.tested() + " (" + calibration.source() + ", "
                + calibration.stamp() + ").";
    }
}
