// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.BuildAnswer;
import tubwright.desk.answer.BuildLanes;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.make.build.Activity.Clock;
import tubwright.engine.make.build.BuildPlan;
import tubwright.engine.make.build.Costs;
import tubwright.engine.make.build.Schedule.Placed;

/** From pattern to delivery, drawn with letters. */
final class BuildSummary {
    private static final int WIDTH = 78;
    private static final int NAMES = 16;
    private static final int TIME = 60;
    private static final int TICK = 9;

    private BuildSummary() {}

    /** Lines to print. */
    static List<String> lines(Terminal terminal, BuildAnswer answer) {
        BuildPlan plan = answer.plan();
        List<String> lines = new ArrayList<>();
        lines.add(terminal.look(Look.STRONG, plan.tubs() == 1 ? "One tub" : "A run of " + plan.tubs() + " tubs")
                + " from " + BuildLanes.dayOfYear(plan.schedule().begin()) + ", delivered "
                + BuildLanes.dayOfYear(plan.schedule().end()));
        lines.addAll(Wrap.lines(answer.works() + ".", "  ", WIDTH));
        lines.add("");
        lines.addAll(picture(terminal, plan));
        lines.add("");
        lines.add("  longest path:");
        TextTable path = new TextTable(true, true, true);
        for (String[] row : BuildLanes.path(plan)) {
            path.row("  " + row[0], row[2], row[3]);
        }
        lines.addAll(path.lines(terminal));
        lines.add("");
        lines.addAll(money(terminal, answer));
        lines.addAll(Wrap.lines(BuildAnswer.RESTS, "  ", WIDTH));
        return lines;
    }

    private static List<String> picture(Terminal terminal, BuildPlan plan) {
        BuildLanes lanes = BuildLanes.of(plan);
        List<String> lines = new ArrayList<>();
        StringBuilder head = new StringBuilder(" ".repeat(NAMES));
        for (int d : lanes.ruled((TICK - 1.0) / TIME)) {
            int at = NAMES + (int) (TIME * lanes.down()[d]);
            String day = BuildLanes.day(lanes.begin().plusDays(d).toLocalDate());
            if (at + day.length() <= NAMES + TIME) {
                head.append(" ".repeat(Math.max(0, at - head.length()))).append(day);
            }
        }
        lines.add(head.toString());
        boolean unicode = terminal.unicode();
        for (BuildLanes.Lane lane : lanes.lanes()) {
            char[] row = " ".repeat(TIME).toCharArray();
            for (Placed p : lane.placed()) {
                boolean longest = plan.schedule().chain().contains(p);
                char mark = longest
                        ? unicode ? '━' : '#'
                        : p.activity().clock() == Clock.WAITING ? '.' : unicode ? '─' : '-';
                int from = (int) (TIME * lanes.place(p.start()));
                int to = Math.max(from + 1, (int) Math.ceil(TIME * lanes.place(p.finish())));
                for (int i = from; i < Math.min(to, TIME); i++) {
                    row[i] = row[i] == '━' || row[i] == '#' ? row[i] : mark;
                }
            }
            String name = lane.name().length() > NAMES - 4 ? lane.name().substring(0, NAMES - 4) : lane.name();
            lines.add(("  " + String.format("%-" + (NAMES - 2) + "s", name) + new String(row)).stripTrailing());
        }
        lines.add("  "
                + (unicode
                        ? "━ longest path   ─ work and cures   . waiting"
                        : "# longest path   - work and cures" + "   . waiting"));
        return lines;
    }

    private static List<String> money(Terminal terminal, BuildAnswer answer) {
        Costs costs = answer.costs();
        String money = costs.currency();
        TextTable table = new TextTable(true, false, false, false);
        table.row("costs", "work, h", "autoclave, h", money);
        row(table, "once: moulds, test panels", costs.once());
        for (int n : answer.numbers()) {
            row(table, "tub " + n, costs.tubs().get(n - 1));
        }
        List<String> lines = new ArrayList<>(table.lines(terminal));
        lines.add("  all together " + fixed(Math.rint(costs.whole() / 100) * 100, 0, " ") + " " + money
                + (answer.plan().tubs() > 1
                        ? ", " + fixed(Math.rint(costs.whole() / answer.plan().tubs() / 100) * 100, 0, " ") + " a tub"
                        : ""));
        return lines;
    }

    private static void row(TextTable table, String name, List<Costs.Line> lines) {
        table.row(
                name,
                fixed(lines.stream().mapToDouble(Costs.Line::work).sum() / 3600, 0, " "),
                fixed(lines.stream().mapToDouble(Costs.Line::oven).sum() / 3600, 0, " "),
                fixed(Costs.sum(lines), 0, " "));
    }
}
