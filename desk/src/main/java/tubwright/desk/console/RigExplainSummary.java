// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.explain.Segment;
import tubwright.engine.rig.explain.Update;

/** An explained torsion test in one screenful. */
public final class RigExplainSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private static final String AFTER_WEIGHING =
            " Factors below are on top of that; \"designed\" stands for the tub as weighed.";

    private RigExplainSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, RigExplainAnswer answer) {
        Explanation told = answer.explanation();
        Update update = told.update();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  "
                + answer.reading().readings().source() + " explained by the model"
                + (answer.variant().equals("as designed") ? "" : ", " + answer.variant()));
        lines.add("");
        TextTable table = new TextTable(true, true, true);
        table.row(
                answer.weighed().isPresent() ? "as weighed" : "as designed",
                fixed(perDegree(told.predicted()), 0, GAP) + " N·m/deg",
                "before the test");
        table.row(
                "measured",
                plusMinus(
                                perDegree(answer.reading().best().stiffness()),
                                perDegree(answer.reading().best().expanded()),
                                GAP)
                        + " N·m/deg",
                answer.reading().span());
        table.row(
                "as built",
                plusMinus(perDegree(told.calibrated()), perDegree(told.expanded()), GAP) + " N·m/deg",
                "the model after the test, between the case's own stations");
        lines.addAll(table.lines(terminal));
        answer.weighed().ifPresent(w -> lines.addAll(Wrap.lines(w.words() + AFTER_WEIGHING, "  ", WIDTH)));
        for (String finding :
                RigExplainWords.verdict(told, answer.reading().readings().greatestTorque())) {
            lines.add("");
            lines.addAll(Wrap.lines(finding, "  ", WIDTH));
        }
        lines.add("");
        TextTable segments = new TextTable(true, false, false, false, false);
        segments.row("between", "measured", "designed", "built", "off by");
        for (Segment each : told.segments()) {
            segments.row(
                    fixed(1000 * each.from(), 0, GAP) + " and " + fixed(1000 * each.to(), 0, GAP) + " mm",
                    RigExplainWords.milli(each.measured()),
                    RigExplainWords.milli(each.predicted()),
                    RigExplainWords.milli(each.explained()),
                    fixed(each.significance(), 1, GAP) + " u");
        }
        lines.addAll(segments.lines(terminal));
        lines.addAll(Wrap.lines(
                "twist gained, degrees for each kN·m; u is the standard uncertainty of the difference", "  ", WIDTH));
        lines.add("");
        TextTable doubts = new TextTable(true, false, false, true);
        doubts.row("factor on", "before", "after (95 %)", "what the test says of it");
        for (int i = 0; i < update.doubts().size(); i++) {
            Doubt doubt = update.doubts().get(i);
            doubts.row(
                    doubt.name(),
                    RigExplainWords.before(doubt),
                    RigExplainWords.after(update, i),
                    RigExplainWords.learnt(update, i));
        }
        lines.addAll(doubts.lines(terminal));
        for (String pair : RigExplainWords.alike(told)) {
            lines.addAll(Wrap.lines(pair, "  ", WIDTH));
        }
        for (RigExplainAnswer.Foretold each : answer.foretold()) {
            lines.add("");
            lines.addAll(Wrap.lines(RigExplainWords.foretold(each), "  ", WIDTH));
        }
        answer.keptAt().ifPresent(file -> {
            lines.add("");
            lines.add("  kept for later runs: " + file);
        });
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        lines.add("  " + told.solutions() + " solutions; mesh " + fixed(1000 * answer.meshSize(), 0, GAP)
                + " mm; left over "
                + fixed(told.leftOver(), 1, GAP) + " u" + (told.update().converged() ? "" : "; NOT SETTLED")
                + "; share known of the whole " + percent(told.spread()));
        return lines;
    }
}
