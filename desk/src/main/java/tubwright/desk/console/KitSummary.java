// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.KitAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.make.kit.Hours;

/** What a tub takes to make, in a few lines. */
public final class KitSummary {
    private static final int WIDTH = 78;
    private static final int MOST_LEFT = 6;

    private KitSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, KitAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  kit: "
                + answer.mass().plies().size() + " cut pieces, "
                + fixed(answer.mass().total(), 2, "") + " kg of plies, films and cores");
        lines.add("");
        TextTable table = new TextTable(true, false, false, false, false, false);
        table.row("material", "in tub, kg", "cut, kg", "bought, kg", "roll, m", "used");
        answer.materials()
                .forEach((name, b) -> table.row(
                        name,
                        fixed(b.inTub(), 2, ""),
                        fixed(b.used(), 2, ""),
                        fixed(b.bought(), 2, ""),
                        fixed(b.length(), 1, ""),
                        percent(b.utilisation())));
        lines.addAll(table.lines(terminal));
        List<String> left = answer.left();
        if (!left.isEmpty()) {
            lines.add("");
            lines.add("  not nested: " + left.size() + " patterns");
            left.stream().limit(MOST_LEFT).forEach(l -> lines.addAll(Wrap.lines(l, "    ", WIDTH)));
        }
        lines.add("");
        TextTable hours = new TextTable(true, false);
        for (Hours.Step step : answer.hours().steps()) {
            hours.row(step.name(), fixed(step.seconds() / 3600, 1, "") + " h");
        }
        lines.addAll(hours.lines(terminal));
        StringBuilder learned = new StringBuilder("Work without the autoclave: ");
        for (int number : KitAnswer.NUMBERS) {
            learned.append("tub ").append(number).append(' ');
            learned.append(fixed(answer.hours().work(number) / 3600, 0, "")).append(" h; ");
        }
        lines.addAll(
                Wrap.lines(learned + "rates from memory or common practice: put your own in shop.yaml.", "  ", WIDTH));
        lines.add("");
        lines.addAll(BuildSummary.lines(terminal, answer.build()));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }
}
