// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RigPlanAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.plan.GaugePair;
import tubwright.engine.rig.plan.TestPlan;

/** A planned torsion test in one screenful. */
public final class RigPlanSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private RigPlanSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, RigPlanAnswer answer) {
        TestPlan plan = answer.plan();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, plan.tub()) + "  torsion test, case "
                + plan.loading().name() + (answer.variant().equals("as designed") ? "" : ", " + answer.variant()));
        lines.add("");
        TextTable table = new TextTable(true, true, true);
        table.row(
                "load up to",
                significant(plan.torque(), 3, GAP) + " N·m",
                plan.means().steps() + " steps, " + plan.means().cycles()
                        + (plan.means().cycles() == 1 ? " cycle" : " cycles") + " after a bed-in cycle");
        table.row(
                "twist then",
                fixed(Math.toDegrees(plan.twist()), 3, GAP) + "°",
                "for " + significant(perDegree(plan.stiffness()), 4, GAP) + " N·m/deg");
        table.row(
                "expected to be known",
                "± " + percent(plan.expanded() / plan.stiffness()),
                "± " + significant(perDegree(plan.expanded()), 2, GAP) + " N·m/deg, 95 %");
        table.row(
                "the rig needs",
                significant(perDegree(plan.rigNeeded()), 2, GAP) + " N·m/deg",
                "or read the held end, as planned here");
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(RigPlanWords.strength(plan), "  ", WIDTH));
        lines.addAll(Wrap.lines(RigPlanWords.restraint(plan.restraint()), "  ", WIDTH));
        lines.add("");
        TextTable gauges = new TextTable(true, false, false, false, false, true);
        gauges.row("gauge pair at", "apart", "moves", "tells", "leaves", "");
        for (GaugePair pair : plan.pairs()) {
            gauges.row(
                    "x = " + fixed(1000 * pair.station(), 0, GAP) + " mm",
                    fixed(1000 * pair.spacing(), 0, GAP) + " mm",
                    pair.angle() == 0 ? "little" : fixed(1000 * pair.movement(), 2, GAP) + " mm",
                    pair.angle() == 0 ? "" : fixed(pair.gain(), 1, GAP) + " bit",
                    "± " + percent(1.96 * pair.spread()),
                    pair.reason());
        }
        lines.addAll(gauges.lines(terminal));
        lines.addAll(Wrap.lines(
                "moves: each gauge by turning alone, at the greatest torque. leaves: what is still unknown of the tub's"
                        + " stiffness through its materials and joints, 95 %.",
                "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(told(plan), "  ", WIDTH));
        lines.add("");
        lines.add("  what the ± will be made of (standard uncertainties):");
        TextTable parts = new TextTable(true, false);
        plan.budget()
                .contributions()
                .forEach(c -> parts.row("  " + c.name(), percent(c.standard() / plan.stiffness())));
        lines.addAll(parts.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(RigPlanWords.CAUTION, "  ", WIDTH));
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static String told(TestPlan plan) {
        List<String> settled = new ArrayList<>();
        List<String> silent = new ArrayList<>();
        for (int d = 0; d < plan.doubts().size(); d++) {
            double learnt = 1 - plan.left()[d];
            if (plan.doubts().get(d).ofTheTest()) {
                continue;
            }
            if (learnt >= Explanation.SETTLED) {
                settled.add(plan.doubts().get(d).name());
            } else if (learnt < Explanation.SILENT) {
                silent.add(plan.doubts().get(d).name());
            }
        }
        return (settled.isEmpty()
                        ? "No single stiffness will be settled by this test; their sum will."
                        : "The test will settle: " + String.join("; ", settled) + ".")
                + (silent.isEmpty()
                        ? ""
                        : " It will say next to nothing of "
                                + (silent.size() <= 5
                                        ? String.join("; ", silent)
                                        : silent.size() + " others, each taken by itself")
                                + ".");
    }
}
