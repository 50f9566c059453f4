// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.console.Terminal.Look;

/** A pack in lines for a terminal. */
public final class PackSummary {
    private static final int WIDTH = 78;

    private PackSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, PackAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  issue " + answer.issue() + " of " + answer.date()
                + ", design " + answer.fingerprint());
        lines.add("");
        TextTable table = new TextTable(true, false, false, false, false, false);
        table.row("material", "cut", "laid m²", "laid kg", "roll m", "used");
        for (PackAnswer.OfMaterial each : answer.materials()) {
            table.row(
                    each.material().name(),
                    Integer.toString(each.pieces()),
                    fixed(each.areaLaid(), 2, ""),
                    fixed(each.massLaid(), 2, ""),
                    fixed(each.roll(), 2, ""),
                    fixed(100 * each.used(), 0, "") + " %");
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(
                "Plies, film and core weigh " + fixed(answer.massLaid(), 3, "") + " kg as laid, "
                        + fixed(answer.structuralMass(), 3, "")
                        + " kg in the structural model; joints and inserts are not in"
                        + " either. " + splices(answer),
                "  ",
                WIDTH));
        answer.left()
                .forEach(l ->
                        Wrap.lines(l, "  ! ", WIDTH).forEach(line -> lines.add(terminal.look(Look.CAREFUL, line))));
        return lines;
    }

    private static String splices(PackAnswer answer) {
        return answer.splices() == 0
                ? "No ply needs a splice on these rolls."
                : answer.splices() + " splices along the warp where a ply is wider than its roll.";
    }
}
