// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Conversions.poundFeetPerDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import tubwright.desk.answer.InstalledWords;
import tubwright.engine.response.InstalledAnswer;

/** The tub with what is bolted to it, in a few lines. */
final class InstalledSummary {
    private static final int PICK_UPS = 3;
    private static final int LOST = 4;
    private static final String GAP = " ";

    private InstalledSummary() {}

    /**
     * Adds them.
     *
     * @param lines to add to
     * @param quiet takes small print
     */
    static void add(Terminal terminal, InstalledAnswer answer, List<String> lines, Consumer<String> quiet) {
        if (answer.torsion().isEmpty() && answer.hubToHub().isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("With what is bolted on (torsional stiffness)");
        TextTable table = new TextTable(true, true, true);
        answer.torsion().ifPresent(t -> {
            row(table, "tub alone", t.hardpoints());
            row(table, "all bolted on, held alike", t.hardpointsWith());
        });
        answer.hubToHub().ifPresent(h -> {
            row(table, "axle to axle, links rigid", h.withoutLinks());
            row(table, "hub to hub", h.stiffness());
        });
        lines.addAll(table.lines(terminal));
        answer.torsion()
                .ifPresent(t ->
                        quiet.accept("The first two as in the case \"" + t.name() + "\", between its hardpoints."
                                + (t.fitted().isEmpty() ? "" : " Bolted on: " + String.join(", ", t.fitted()) + ".")));
        answer.hubToHub().ifPresent(h -> {
            TextTable springs = new TextTable(true, false, true);
            for (InstalledAnswer.Spring each : h.springsThatCount()) {
                springs.row(
                        each.name(),
                        percent(each.share()),
                        "alone " + significant(perDegree(each.stiffness()), 3, GAP) + " N·m/deg");
            }
            lines.add("  Springs in series from hub to hub (share of the twist)");
            lines.addAll(springs.lines(terminal));
        });
        pickUps(terminal, answer, lines);
        InstalledWords.massGap(answer).ifPresent(quiet);
    }

    private static void row(TextTable table, String what, double stiffness) {
        table.row(
                what,
                significant(perDegree(stiffness), 3, GAP) + " N·m/deg",
                significant(poundFeetPerDegree(stiffness), 3, GAP) + " lbf·ft/deg");
    }

    private static void pickUps(Terminal terminal, InstalledAnswer answer, List<String> lines) {
        if (!answer.pickUps().isEmpty()) {
            lines.add("  Softest pick-ups, along their links");
            List<InstalledAnswer.PickUp> softest = new ArrayList<>(answer.pickUps());
            softest.sort(Comparator.comparingDouble(InstalledAnswer.PickUp::stiffness));
            TextTable table = new TextTable(true, true);
            for (InstalledAnswer.PickUp each : softest.subList(0, Math.min(PICK_UPS, softest.size()))) {
                table.row(each.name(), significant(each.stiffness() / 1e3, 3, GAP) + " N/mm");
            }
            lines.addAll(table.lines(terminal));
        }
        List<InstalledAnswer.Lost> worst = InstalledWords.worst(answer);
        if (!worst.isEmpty()) {
            lines.add("  Most the wheels lose in a case");
            TextTable table = new TextTable(true, true, true, true);
            for (InstalledAnswer.Lost each : worst.subList(0, Math.min(LOST, worst.size()))) {
                table.row(each.wheel(), each.load(), "camber " + angle(each.camber()), "toe " + angle(each.toe()));
            }
            lines.addAll(table.lines(terminal));
        }
    }

    private static String angle(double radians) {
        return fixed(Math.toDegrees(radians), 3, GAP) + " deg";
    }
}
