// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.CalibratedWords;
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
                "was " + significant(answer.massBefore(), 5, " ")
                        + (found.mass() > answer.massBefore() ? " (+" : " (−")
                        + percent(Math.abs(answer.massBefore() - found.mass()) / answer.massBefore()) + ")");
        table.row(
                "nothing is lighter than",
                significant(found.bound(), 5, " "),
                "kg",
                found.ended() == Lightened.End.PROVED
                        ? "no gap"
                        : "gap " + significant(100 * found.gap(), 2, " ") + " % of the mass"
                                + (found.removable() > 0
                                        ? ", "
                                                + significant(
                                                        100 * (found.mass() - found.bound()) / found.removable(),
                                                        2,
                                                        " ")
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
        answer.foretold().ifPresent(f -> {
            lines.addAll(Wrap.lines("As built: " + f.words(" ") + ".", "  ", WIDTH));
            lines.addAll(Wrap.lines(CalibratedWords.of(f.calibrated()), "  ", WIDTH));
            lines.add("");
        });
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
                answer.ending() + " " + answer.trust() + " " + found.solves()
                        + " layups were solved, " + found.harvests()
                        + " more and mixtures of them to a ten-thousandth, " + found.nodes() + " nodes searched, "
                        + fixed(answer.unknowns(), 0, " ") + " unknowns.",
                "  ",
                WIDTH));
        answer.massTarget().ifPresent(most -> {
            String words = found.bound() > most
                    ? "No layup among the candidates meets both the stiffness and the mass target of "
                            + significant(most, 4, " ") + " kg."
                    : found.mass() > most
                            ? "The mass target of " + significant(most, 4, " ")
                                    + " kg is not met, and not proved out of reach."
                            : "The mass target of " + significant(most, 4, " ") + " kg is met.";
            lines.addAll(Wrap.lines(words, "  ", WIDTH));
        });
        answer.scatter()
                .ifPresent(s -> lines.addAll(Wrap.lines(
                        "With material " + significant(100 * s.share(), 2, " ") + " % softer the lightest would weigh "
                                + significant(s.lowMass(), 5, " ") + " kg, stiffer by as much "
                                + significant(s.highMass(), 5, " ") + " kg. "
                                + (s.loose().isEmpty()
                                        ? "No choice hangs on it."
                                        : "Choices that hang on it: " + String.join(", ", s.loose()) + "."),
                        "  ",
                        WIDTH)));
        answer.scatter().stream()
                .flatMap(s -> s.byMaterial().stream())
                .forEach(m -> lines.addAll(Wrap.lines(
                        "Only the " + m.what() + " so much lower: "
                                + (m.mass().isEmpty()
                                        ? "the targets cannot be met"
                                        : significant(m.mass().getAsDouble(), 5, " ") + " kg")
                                + (m.changed().isEmpty()
                                        ? ", nothing else chosen."
                                        : "; chosen otherwise: " + String.join(", ", m.changed()) + "."),
                        "  ",
                        WIDTH)));
        String careful = answer.notLookedAt().isEmpty()
                ? ""
                : String.join(", ", answer.notLookedAt())
                        + ": no target, so not looked at; check the new layup before you build it.";
        for (String line : careful.isEmpty() ? List.<String>of() : Wrap.lines(careful, "  ! ", WIDTH)) {
            lines.add(terminal.look(Look.CAREFUL, line));
        }
        return lines;
    }
}
