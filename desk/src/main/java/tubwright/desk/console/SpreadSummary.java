// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.percent;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.SpreadStory;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.safety.spread.SpreadAnswer;

/** A load followed until little is left, in a few lines. */
public final class SpreadSummary {
    private static final int WIDTH = 78;
    private static final int SHOWN = 14;

    private SpreadSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, SpreadStory story) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, story.tub()) + "  " + story.variant());
        lines.addAll(Wrap.lines(story.what(), "  ", WIDTH));
        lines.add("");
        SpreadAnswer path = story.path();
        TextTable table = new TextTable(true, false, false);
        String factor = story.panel() ? "" : "factor ";
        table.row(
                "first failure",
                path.events().isEmpty() ? "none" : factor + load(story, path.first()),
                path.events().isEmpty()
                        ? ""
                        : movement(story, story.movement(path.events().getFirst())));
        table.row(
                path.goesRound() ? "followed up to" : "most it bears",
                factor + load(story, path.peak().factor()),
                movement(story, story.movement(path.peak())));
        table.row(
                "energy taken",
                String.format(Locale.ROOT, "%.3g J", path.steps().getLast().released()),
                "");
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines("It ends: " + path.ended() + ".", "  ", WIDTH));
        if (!path.events().isEmpty()) {
            lines.add("");
            lines.add("  What failed, in order");
            for (SpreadAnswer.Event each :
                    path.events().subList(0, Math.min(SHOWN, path.events().size()))) {
                String end = "begun in " + percent(each.share()) + ", gone in " + percent(each.gone());
                lines.addAll(Wrap.lines(
                        load(story, each.factor()) + "  " + each.zone() + ": " + each.what() + "; in the end " + end,
                        "    ",
                        WIDTH));
            }
            if (path.events().size() > SHOWN) {
                lines.add("    and " + (path.events().size() - SHOWN) + " more in the page");
            }
        }
        lines.add("");
        lines.addAll(Wrap.lines(story.convergence(), "  ", WIDTH));
        for (String each : path.needs()) {
            lines.addAll(Wrap.lines("not checked: needs " + each, "  ", WIDTH));
        }
        path.lowered().forEach(each -> lines.addAll(Wrap.lines(each, "  ", WIDTH)));
        story.asides().forEach(each -> lines.addAll(Wrap.lines(each, "  ", WIDTH)));
        lines.add("");
        lines.addAll(Wrap.lines(SpreadStory.ASIDE, "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static String load(SpreadStory story, double factor) {
        return story.panel()
                ? String.format(Locale.ROOT, "%.2f kN", 1e-3 * factor)
                : String.format(Locale.ROOT, "%.2f", factor);
    }

    private static String movement(SpreadStory story, double movement) {
        return story.couple()
                ? String.format(Locale.ROOT, "%.3f deg", Math.toDegrees(movement))
                : String.format(Locale.ROOT, "%.2f mm", 1e3 * movement);
    }
}
