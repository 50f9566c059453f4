// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Conversions.poundFeetPerDegree;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.EnoughAnswer;
import tubwright.desk.answer.EnoughWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.load.RollBalance;

/** How stiff is enough, in a few lines. */
public final class EnoughSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private EnoughSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, EnoughAnswer answer) {
        RollBalance balance = answer.balance();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  how stiff is enough");
        lines.add("");
        lines.addAll(Wrap.lines(
                "Both axles resist roll by " + stiffness(balance.rollStiffness()) + ", "
                        + percent(balance.frontStiffnessShare())
                        + " of it in front; the body leans on the front axle with "
                        + percent(balance.frontMomentShare()) + " of its roll moment.",
                "  ",
                WIDTH));
        lines.add("");
        lines.add("What of a change of balance arrives at the tyres");
        TextTable table = new TextTable(false, true, true, true);
        for (double share : EnoughAnswer.SHARES) {
            double k = balance.needed(share);
            table.row(
                    percent(share),
                    "needs " + stiffness(k),
                    significant(poundFeetPerDegree(k), 3, GAP) + " lbf·ft/deg",
                    significant(k / balance.rollStiffness(), 2, GAP) + " times the axles");
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(
                percent(answer.share()) + " asked: the spring between the axles must be " + stiffness(answer.needed())
                        + ". It is tub, inserts, hoops and engine in series.",
                "  ",
                WIDTH));
        lines.addAll(Wrap.lines(EnoughWords.now(answer, GAP), "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static String stiffness(double k) {
        return significant(perDegree(k), 3, GAP) + " N·m/deg";
    }
}
