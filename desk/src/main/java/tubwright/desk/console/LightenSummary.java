// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.trim.Lightened;

/** The lightest layup on the console. */
public final class LightenSummary {
    private static final int WIDTH = 78;
    private static final int STEPS = 12;

    private LightenSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, LightenAnswer answer) {
        Lightened found = answer.found();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  " + answer.variant());
        lines.add("");
        TextTable table = new TextTable(true, false, true, true);
        table.row(
                "mass",
                significant(found.mass(), 5, " "),
                "kg",
                "was " + significant(answer.massBefore(), 5, " ") + " (−"
                        + percent((answer.massBefore() - found.mass()) / answer.massBefore()) + ")");
        table.row(
                "nothing is lighter than",
                significant(found.bound(), 5, " "),
                "kg",
                "gap " + significant(100 * found.gap(), 2, " ") + " % of the mass"
                        + (found.removable() > 0
                                ? ", " + significant(100 * (found.mass() - found.bound()) / found.removable(), 2, " ")
                                        + " % of what the rules let go"
                                : ""));
        for (int g = 0; g < answer.goals().size(); g++) {
            LightenAnswer.Goal goal = answer.goals().get(g);
            StiffnessUnit unit = goal.unit();
            table.row(
                    goal.loading() + ", hardpoints",
                    significant(unit.of(found.stiffness().get(g).low()), 5, " "),
                    unit.text(),
                    "target " + significant(unit.of(goal.least()), 5, " ") + ", was "
                            + significant(unit.of(goal.before()), 5, " "));
            table.row(
                    goal.loading() + ", sections",
                    significant(unit.of(goal.sectionAfter()), 5, " "),
                    unit.text(),
                    "was " + significant(unit.of(goal.sectionBefore()), 5, " "));
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        if (answer.changes().isEmpty()) {
            lines.add("  Nothing can go.");
        }
        for (LightenAnswer.Change change : answer.changes()) {
            lines.addAll(Wrap.lines(
                    change.zone() + ": " + change.words() + " (" + fixed(1000 * change.mass(), 0, " ") + " g)",
                    "  · ",
                    WIDTH));
            lines.add(terminal.look(Look.QUIET, "      " + change.after()));
        }
        lines.add("");
        TextTable history = new TextTable(false, false, false);
        history.row("s", "best kg", "bound kg");
        List<Lightened.Step> steps = found.history();
        int every = Math.max(1, (steps.size() + STEPS - 1) / STEPS);
        for (int i = 0; i < steps.size(); i++) {
            if (i % every == 0 || i == steps.size() - 1) {
                Lightened.Step step = steps.get(i);
                history.row(fixed(step.seconds(), 1, " "), fixed(step.mass(), 3, " "), fixed(step.bound(), 3, " "));
            }
        }
        lines.addAll(history.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(
                "Proved for this mesh (" + fixed(answer.unknowns(), 0, " ") + " unknowns): the stiffness between"
                        + " hardpoints, and that no choice among the candidates is lighter than the bound. Solved anew but"
                        + " not proved: stiffness between sections. " + found.solves() + " layups and "
                        + found.harvests() + " mixtures were solved.",
                "  ",
                WIDTH));
        for (String line : Wrap.lines(
                "Strength, buckling and vibration were not looked at, nor ply drop-offs between neighbours: check the new"
                        + " layup before you build it.",
                "  ! ",
                WIDTH)) {
            lines.add(terminal.look(Look.CAREFUL, line));
        }
        return lines;
    }
}
