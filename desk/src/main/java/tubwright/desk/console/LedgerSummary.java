// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.LedgerAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.trim.Ledger;
import tubwright.engine.trim.LedgerEntry;

/** A ledger on the console: what is cheapest to give up and what is dearest. */
public final class LedgerSummary {
    private static final int CHEAPEST = 16;
    private static final int DEAREST = 6;
    private static final int WIDTH = 78;

    private LedgerSummary() {}

    /**
     * Lines to print.
     *
     * @param all whether to list every entry
     */
    public static List<String> lines(Terminal terminal, LedgerAnswer answer, boolean all) {
        Ledger ledger = answer.ledger();
        StiffnessUnit unit = answer.unit();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  " + answer.variant() + ", case " + answer.loading());
        lines.add("");
        TextTable facts = new TextTable(true, false, true);
        facts.row(unit.adjective() + " stiffness", significant(unit.of(ledger.stiffness()), 5, " "), unit.text());
        facts.row("  between sections", significant(unit.of(ledger.sectionStiffness()), 5, " "), unit.text());
        facts.row("mass", significant(ledger.mass(), 4, " "), "kg");
        lines.addAll(facts.lines(terminal));
        lines.addAll(Wrap.lines(
                "The ledger counts stiffness between loaded and held hardpoints, inserts included; read between skin"
                        + " sections the tub is stiffer. Layers count from the outer face. Each row is solved anew; the"
                        + " bracket is what the nominal solution alone proves.",
                "  ",
                WIDTH));
        lines.add("");
        List<LedgerEntry> weighing =
                ledger.entries().stream().filter(e -> e.mass() > 0).toList();
        boolean cut = !all && weighing.size() > CHEAPEST + DEAREST + 4;
        boolean watched = !ledger.watched().isEmpty();
        TextTable table = watched
                ? new TextTable(true, true, false, false, false, false, false, true)
                : new TextTable(true, true, false, false, false, true);
        row(table, watched, "give up", "", "g", "lose " + unit.text(), "per kg", "reserve", "buckling", "bracket");
        for (int i = 0; i < weighing.size(); i++) {
            if (cut && i == CHEAPEST) {
                row(table, watched, "…", (weighing.size() - CHEAPEST - DEAREST) + " more", "", "", "", "", "", "");
            }
            if (!cut || i < CHEAPEST || i >= weighing.size() - DEAREST) {
                row(table, answer, weighing.get(i));
            }
        }
        ledger.entries().stream().filter(e -> !(e.mass() > 0)).forEach(e -> row(table, answer, e));
        List<String> rows = table.lines(terminal);
        String guards = watched
                ? "Reserve and buckling are the lowest factors of "
                        + ledger.watched().size()
                        + " load cases, before → after: of the zone's own plies and sandwich away from inserts, solved anew;"
                        + " of the whole tub's first mode to first order, which tells large changes too small."
                : answer.hasLoads()
                        ? "Load cases were left out: reserve and buckling factors are not told."
                        : "The design has no load cases: which reserve and buckling factors a ply protects cannot be told.";
        for (int i = 0; i < rows.size(); i++) {
            lines.add(i == 0 ? terminal.look(Look.QUIET, rows.get(i)) : rows.get(i));
        }
        lines.add("");
        lines.addAll(Wrap.lines(guards, "  ", WIDTH));
        return lines;
    }

    /** Leaves the two columns of factors out where none are told. */
    private static void row(TextTable table, boolean watched, String... cells) {
        if (watched) {
            table.row(cells);
        } else {
            table.row(cells[0], cells[1], cells[2], cells[3], cells[4], cells[7]);
        }
    }

    private static void row(TextTable table, LedgerAnswer answer, LedgerEntry e) {
        StiffnessUnit unit = answer.unit();
        double stiffness = answer.ledger().stiffness();
        row(
                table,
                !answer.ledger().watched().isEmpty(),
                LedgerAnswer.place(e),
                LedgerAnswer.words(e),
                e.mass() > 0 ? significant(1000 * e.mass(), 3, " ") : "",
                significant(unit.of(e.lost()), 3, " "),
                e.mass() > 0 ? fixed(unit.of(e.lostPerKilogram()), 0, " ") : "",
                LedgerAnswer.factors(e.lowestReserve()),
                LedgerAnswer.factors(e.lowestBuckling()),
                significant(unit.of(stiffness - e.firstOrder().high()), 3, " ") + " … "
                        + significant(unit.of(stiffness - e.firstOrder().low()), 3, " "));
    }
}
