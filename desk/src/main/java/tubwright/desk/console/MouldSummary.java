// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.MouldAnswer;
import tubwright.desk.answer.MouldWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.text.Figures;

/** Pieces and moulds in lines for a terminal. */
public final class MouldSummary {
    private static final int WIDTH = 78;

    private MouldSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, MouldAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  pieces and moulds, draft asked for "
                + Figures.fixed(Math.toDegrees(answer.wanted()), 1, "") + "°");
        lines.add("");
        TextTable pieces = new TextTable(true, true, false, false, false, false, false, false);
        pieces.row(MouldWords.PIECE_HEAD.toArray(String[]::new));
        MouldWords.pieces(answer, "").forEach(r -> pieces.row(r.toArray(String[]::new)));
        lines.addAll(pieces.lines(terminal));
        lines.add("");
        answer.pieces().stream()
                .map(MouldWords::edges)
                .filter(e -> !e.isEmpty())
                .forEach(e -> lines.addAll(Wrap.lines(e, "  ", WIDTH)));
        List<String> advice = MouldWords.advice(answer);
        lines.add("");
        lines.add(advice.isEmpty() ? "Every piece comes out of its mould as one." : "What would help");
        advice.forEach(a -> lines.addAll(Wrap.lines(a, "  ", WIDTH)));
        lines.add("");
        lines.add("Bends");
        TextTable bends = new TextTable(true, true, true, true, false, false, false, false);
        bends.row(MouldWords.BEND_HEAD.toArray(String[]::new));
        MouldWords.bends(answer, "").forEach(r -> bends.row(r.toArray(String[]::new)));
        lines.addAll(bends.lines(terminal));
        lines.add("");
        lines.add("Cold sizes, from the room to where parts freeze " + Figures.fixed(answer.change(), 0, "") + " K");
        TextTable factors = new TextTable(true, false, false, false);
        factors.row(MouldWords.FACTOR_HEAD.toArray(String[]::new));
        MouldWords.factors(answer, "").forEach(r -> factors.row(r.toArray(String[]::new)));
        lines.addAll(factors.lines(terminal));
        lines.add("");
        lines.add("Tooling");
        MouldWords.tooling(answer, "")
                .forEach(t -> lines.addAll(Wrap.lines(
                        t.get(0) + ", " + t.get(1) + ": " + t.get(2) + " mm"
                                + (t.get(3).isEmpty() ? "" : ", about " + t.get(3) + " kg") + "; " + t.get(4),
                        "  ",
                        WIDTH)));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }
}
