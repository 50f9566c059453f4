// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.answer.WhatIfAnswer;
import tubwright.desk.console.Terminal.Look;

/** A what-if answer on the console. */
public final class WhatIfSummary {
    private static final int WIDTH = 78;

    private WhatIfSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, WhatIfAnswer answer) {
        StiffnessUnit unit = answer.unit();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  " + answer.variant() + ", case " + answer.loading());
        answer.changes().forEach(c -> lines.addAll(Wrap.lines(c, "  · ", WIDTH)));
        lines.add("");
        double after = answer.after().middle();
        double half = 0.5 * (answer.after().high() - answer.after().low());
        TextTable table = new TextTable(true, false, true, true);
        table.row(
                unit.adjective() + " stiffness",
                significant(unit.of(after), 6, " ") + " ± " + significant(unit.of(half), 2, " "),
                unit.text(),
                "was " + significant(unit.of(answer.before()), 5, " ") + " (" + signed(after / answer.before() - 1)
                        + ")");
        for (WhatIfAnswer.Other other : answer.others()) {
            double middle = other.after().middle();
            table.row(
                    "stiffness, case " + other.loading(),
                    significant(other.unit().of(middle), 6, " ") + " ± "
                            + significant(
                                    other.unit()
                                            .of(0.5
                                                    * (other.after().high()
                                                            - other.after().low())),
                                    2,
                                    " "),
                    other.unit().text(),
                    "was " + significant(other.unit().of(other.before()), 5, " ") + " ("
                            + signed(middle / other.before() - 1) + ")");
        }
        table.row(
                "mass",
                significant(answer.massAfter(), 5, " "),
                "kg",
                "was " + significant(answer.massBefore(), 5, " ") + " ("
                        + signed(answer.massAfter() / answer.massBefore() - 1) + ")");
        for (WhatIfAnswer.Piece piece : answer.pieces()) {
            if (Math.abs(piece.after() - piece.before()) > 1e-6) {
                table.row(
                        "  " + piece.name(),
                        significant(piece.after(), 5, " "),
                        "kg",
                        "was " + significant(piece.before(), 5, " ") + " (" + signed(piece.after() / piece.before() - 1)
                                + ")");
            }
        }
        double saved = answer.massBefore() - answer.massAfter();
        if (Math.abs(saved) > 1e-6) {
            table.row(
                    "given up per kilogram",
                    fixed(unit.of((answer.before() - after) / saved), 0, " "),
                    unit.text() + "/kg",
                    "");
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(
                "± is proved for this mesh (" + fixed(answer.unknowns(), 0, " ") + " unknowns), "
                        + significant(100 * answer.after().relativeWidth(), 2, " ") + " % wide; "
                        + (answer.instant() ? "answered by the reduced model." : "solved on the nominal factor.")
                        + " Stiffness is between loaded and held hardpoints; read between skin sections the tub as"
                        + " designed has "
                        + significant(unit.of(answer.sectionBefore()), 5, " ") + " " + unit.text() + ".",
                "  ",
                WIDTH));
        return lines;
    }

    private static String signed(double share) {
        return (share >= 0 ? "+" : "") + percent(share);
    }
}
