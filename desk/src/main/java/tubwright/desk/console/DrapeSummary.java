// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.answer.DrapeAnswer.degrees;
import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.make.lay.DrapedPly;

/** Laid plies in lines for a terminal. */
public final class DrapeSummary {
    private static final int WIDTH = 78;

    private DrapeSummary() {}

    /**
     * Lines to print.
     *
     * @param all whether to list every ply, or only those that pass a limit
     */
    public static List<String> lines(Terminal terminal, DrapeAnswer answer, boolean all) {
        List<String> lines = new ArrayList<>();
        List<DrapedPly> plies = answer.laid().plies();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  " + plies.size() + " plies, films and cores laid in "
                + fixed(answer.seconds(), 1, "") + " s");
        lines.add("");
        TextTable pieces = new TextTable(true, false, false, false, false, false);
        pieces.row("piece", "plies", "area m²", "flat m²", "largest shear", "pass a limit");
        byPiece(plies)
                .forEach((piece, of) -> pieces.row(
                        piece,
                        Integer.toString(of.size()),
                        fixed(of.stream().mapToDouble(p -> p.figures().area()).sum(), 2, ""),
                        fixed(of.stream().mapToDouble(p -> p.flat().area()).sum(), 2, ""),
                        degrees(of.stream()
                                .mapToDouble(p -> p.figures().largestShear())
                                .max()
                                .orElse(0)),
                        Long.toString(
                                of.stream().filter(p -> !p.advice().isEmpty()).count())));
        lines.addAll(pieces.lines(terminal));
        List<DrapedPly> listed = all ? plies : answer.passing();
        lines.add("");
        lines.add(
                listed.isEmpty()
                        ? "No ply passes a limit of its material."
                        : all ? "Every ply" : "Plies that pass a limit; --all lists every ply");
        if (!listed.isEmpty()) {
            lines.addAll(table(listed).lines(terminal));
        }
        if (!answer.advice().isEmpty()) {
            lines.add("");
            lines.add("What would help");
            answer.advice().forEach(advice -> lines.addAll(Wrap.lines(advice, "  ", WIDTH)));
        }
        lines.add("");
        lines.addAll(Wrap.lines(answer.cost(" "), "  ", WIDTH));
        answer.limits().forEach(limit -> lines.addAll(Wrap.lines(limit, "  ", WIDTH)));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static Map<String, List<DrapedPly>> byPiece(List<DrapedPly> plies) {
        Map<String, List<DrapedPly>> byPiece = new LinkedHashMap<>();
        plies.forEach(p ->
                byPiece.computeIfAbsent(p.ply().piece(), k -> new ArrayList<>()).add(p));
        return byPiece;
    }

    private static TextTable table(List<DrapedPly> plies) {
        TextTable table = new TextTable(true, true, false, false, false, false, false, false);
        table.row("ply", "of", "m²", "shear", "care cm²", "locked cm²", "turn", "flat mm");
        for (DrapedPly each : plies) {
            DrapedPly.Figures f = each.figures();
            table.row(
                    each.ply().name(),
                    DrapeAnswer.words(each.ply()),
                    fixed(f.area(), 3, ""),
                    each.ply().cloth() ? degrees(f.largestShear()) : "–",
                    each.ply().cloth() ? fixed(1e4 * f.warned(), 0, "") : "–",
                    each.ply().cloth() ? fixed(1e4 * (f.locked() + f.bare()), 0, "") : "–",
                    degrees(f.largestTurn()),
                    fixed(1e3 * each.flat().length(), 0, "") + " x "
                            + fixed(1e3 * each.flat().width(), 0, ""));
        }
        return table;
    }
}
