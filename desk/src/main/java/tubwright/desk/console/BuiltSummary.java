// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.BuiltAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.make.built.BuiltComparison;
import tubwright.engine.make.built.BuiltTub;

/** A tub as built, in a screenful. */
public final class BuiltSummary {
    private static final int WIDTH = 78;
    private static final int MOST = 12;

    private BuiltSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, BuiltAnswer answer) {
        BuiltComparison c = answer.comparison();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub() + ", tub " + answer.number()) + "  as built, "
                + answer.built().source());
        lines.add("");
        TextTable pieces = new TextTable(true, false, false, true);
        pieces.row("weighed", "planned, g", "built, g", "");
        c.pieces().forEach(w -> weighed(pieces, w));
        c.tub().ifPresent(w -> weighed(pieces, w));
        if (!c.plies().isEmpty()) {
            weighed(
                    pieces,
                    new BuiltComparison.Weighed(
                            c.plies().size() + " patterns",
                            "",
                            "",
                            c.plies().stream()
                                    .mapToDouble(BuiltComparison.Weighed::planned)
                                    .sum(),
                            c.plies().stream()
                                    .mapToDouble(BuiltComparison.Weighed::mass)
                                    .sum()));
        }
        lines.addAll(pieces.lines(terminal));
        lines.add("");
        TextTable materials = new TextTable(true, false, true);
        materials.row("material", "mass per area", "of it weighed");
        c.materials()
                .forEach((name, f) ->
                        materials.row(name, "× " + fixed(f.factor(), 3, ""), Math.round(100 * f.known()) + " %"));
        lines.addAll(materials.lines(terminal));
        lines.add("");
        TextTable batches = new TextTable(true, true, false);
        batches.row("batch", "material", "patterns");
        c.batches()
                .values()
                .forEach(b -> batches.row(
                        b.name(), b.material(), Integer.toString(b.plies().size())));
        lines.addAll(batches.lines(terminal));
        if (!c.without().isEmpty()) {
            lines.addAll(Wrap.lines(
                    "No batch is known of " + c.without().size() + " patterns: "
                            + String.join(", ", c.without().stream().limit(MOST).toList())
                            + (c.without().size() > MOST ? ", ..." : "") + ".",
                    "  ",
                    WIDTH));
        }
        lines.add("");
        c.beyond()
                .forEach(b -> Wrap.lines(b + ".", "  ! ", WIDTH)
                        .forEach(line -> lines.add(terminal.look(Look.CAREFUL, line))));
        answer.warnings()
                .forEach(b ->
                        Wrap.lines(b, "  ! ", WIDTH).forEach(line -> lines.add(terminal.look(Look.CAREFUL, line))));
        for (BuiltTub.Kind kind : List.of(BuiltTub.Kind.DEVIATION, BuiltTub.Kind.CONCESSION)) {
            answer.said(kind).forEach(l -> lines.addAll(Wrap.lines(said(l), "  ", WIDTH)));
        }
        lines.add("");
        lines.addAll(Wrap.lines(
                "Limits: " + Math.round(100 * BuiltComparison.LIMIT) + " % in mass, "
                        + Math.round(100 * BuiltComparison.THICKNESS)
                        + " % in thickness (common practice, no source). " + RunAnswer.CAUTION,
                "  ",
                WIDTH));
        return lines;
    }

    /** A deviation or concession in a line. */
    public static String said(BuiltTub.Line line) {
        return line.kind().word() + (line.pattern().isEmpty() ? "" : ", " + line.pattern())
                + (line.piece().isEmpty() ? "" : ", " + line.piece()) + ": " + line.words()
                + (line.released().isEmpty() ? "" : " (released by " + line.released() + ")");
    }

    /** The record in a line for the logbook. */
    public static String line(BuiltAnswer answer) {
        BuiltComparison c = answer.comparison();
        return "Tub " + answer.number() + " as built: pieces "
                + BuiltAnswer.over(c.massFactor() - 1) + ", " + c.batches().size() + " batches, "
                + c.beyond().size() + " beyond a limit, "
                + answer.said(BuiltTub.Kind.DEVIATION).size() + " deviations, "
                + answer.said(BuiltTub.Kind.CONCESSION).size() + " concessions";
    }

    private static void weighed(TextTable table, BuiltComparison.Weighed w) {
        boolean planned = Double.isFinite(w.planned());
        table.row(
                w.name(),
                planned ? fixed(1e3 * w.planned(), 0, " ") : "",
                fixed(1e3 * w.mass(), 0, " "),
                planned ? BuiltAnswer.over(w.over()) : "");
    }
}
