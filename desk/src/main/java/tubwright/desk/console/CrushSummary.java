// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.CrushAnswer;
import tubwright.desk.answer.CrushWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.safety.crush.CrushVerdicts;

/** Impacts in a few lines. */
public final class CrushSummary {
    private static final int WIDTH = 78;

    private CrushSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, CrushAnswer answer) {
        List<String> lines = new ArrayList<>();
        for (CrushAnswer.Each each : answer.structures()) {
            lines.add("");
            lines.add(terminal.look(Look.STRONG, each.structure().name()) + "  " + CrushWords.impact(each.structure()));
            each.whole().ifPresent(a -> {
                lines.addAll(Wrap.lines(CrushWords.outcome(a) + ".", "  ", WIDTH));
                a.notes().forEach(n -> lines.addAll(Wrap.lines(n + ".", "  ! ", WIDTH)));
            });
            lines.addAll(limits(terminal, each.lines()));
            each.apart().ifPresent(a -> {
                lines.add("  If parts break off");
                CrushWords.apart(each.structure(), a).forEach(w -> lines.addAll(Wrap.lines(w, "    ", WIDTH)));
            });
        }
        lines.add("");
        lines.addAll(Wrap.lines(CrushAnswer.ASIDE, "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static List<String> limits(Terminal terminal, List<CrushVerdicts.Line> all) {
        List<String> lines = new ArrayList<>();
        TextTable table = new TextTable(true, true, false, true);
        all.forEach(l -> table.row(
                l.limit(),
                l.found(),
                Double.isFinite(l.reserve()) ? String.format(Locale.ROOT, "%.2f", l.reserve()) : "–",
                l.verdict().words()));
        lines.addAll(table.lines(terminal));
        all.stream()
                .flatMap(l -> l.needs().stream())
                .distinct()
                .forEach(n -> lines.addAll(Wrap.lines("needs " + n, "  ! ", WIDTH)));
        return lines;
    }
}
