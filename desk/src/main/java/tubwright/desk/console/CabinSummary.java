// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.CabinAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.cabin.Cabin;

/** Who and what goes into a tub, in one screenful. */
public final class CabinSummary {
    private static final int WIDTH = 78;

    /** What the answer rests on, as long as it is. */
    public static final String CAUTION =
            "A template is no driver: sit the driver in a mock-up. Elbows, helmet and the way out are not judged, nor what"
                    + " the sanctioning body asks of a cockpit.";

    private CabinSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, CabinAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  what goes into it"
                + (answer.variant().name().equals("as designed")
                        ? ""
                        : ", " + answer.variant().name()));
        lines.add("");
        for (String words : answer.words()) {
            lines.addAll(Wrap.lines(words, "  ", WIDTH));
        }
        lines.add("");
        TextTable table = new TextTable(true, false, false, false, false);
        table.row("", "to the skin", "x", "y", "z");
        for (Cabin.Nearest n : answer.fit().nearest()) {
            table.row(
                    n.what(),
                    CabinAnswer.millimetres(n.distance()),
                    CabinAnswer.millimetres(n.at()[0]),
                    CabinAnswer.millimetres(Math.abs(n.at()[1])),
                    CabinAnswer.millimetres(n.at()[2]));
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(CAUTION, "  ", WIDTH));
        return lines;
    }
}
