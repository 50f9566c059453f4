// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StudyAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.findings.LayupDraws;
import tubwright.fleet.plan.Variation;

/** A study in a few lines. */
public final class StudySummary {
    private static final int WIDTH = 78;
    private static final int MOST_ROWS = 16;
    private static final int MOST_COLUMNS = 5;
    private static final int MOST_REASONS = 6;
    private static final String GAP = " ";

    private StudySummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, StudyAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  study "
                + answer.plan().name());
        answer.plan().text().about().ifPresent(a -> lines.addAll(Wrap.lines(a, "  ", WIDTH)));
        List<StudyAnswer.Column> columns = answer.columns();
        List<StudyAnswer.Column> shown = columns.subList(0, Math.min(MOST_COLUMNS, columns.size()));
        for (int v = 0; v < answer.findings().variants().size(); v++) {
            Findings.OfVariant variant = answer.findings().variants().get(v);
            lines.add("");
            lines.add(variant.variant());
            variant.layups().ifPresent(l -> lines.addAll(layups(l)));
            if (variant.points().isEmpty()) {
                continue;
            }
            table(terminal, answer, variant, v, shown, lines);
            told(answer, variant, lines);
        }
        Map<String, Integer> reasons = answer.reasons();
        if (!reasons.isEmpty()) {
            lines.add("");
            lines.add(reasons.values().stream().mapToInt(Integer::intValue).sum() + " designs are no tub:");
            reasons.entrySet().stream()
                    .limit(MOST_REASONS)
                    .forEach(e -> lines.addAll(Wrap.lines(times(e.getValue()) + ": " + e.getKey(), "  ", WIDTH)));
        }
        if (!answer.findings().complete()) {
            lines.add("");
            lines.add("Stopped before the end; the same command goes on where it left off.");
        }
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static void table(
            Terminal terminal,
            StudyAnswer answer,
            Findings.OfVariant variant,
            int v,
            List<StudyAnswer.Column> shown,
            List<String> lines) {
        List<Variation> variations = answer.plan().variations();
        boolean[] left = new boolean[variations.size() + shown.size()];
        TextTable table = new TextTable(left);
        List<String> head = new ArrayList<>();
        variations.forEach(each -> head.add(StudyAnswer.heading(each)));
        shown.forEach(c -> head.add(c.heading()));
        table.row(head.toArray(String[]::new));
        for (int p = 0; p < Math.min(MOST_ROWS, variant.points().size()); p++) {
            List<String> cells = new ArrayList<>();
            for (int d = 0; d < variations.size(); d++) {
                Variation each = variations.get(d);
                double share = variant.points().get(p).shares()[d];
                cells.add(each.words().isPresent() ? each.text(share) : significant(each.number(share), 4, GAP));
            }
            for (StudyAnswer.Column column : shown) {
                double value = column.byVariant().get(v)[p];
                cells.add(Double.isFinite(value) ? significant(value, 4, GAP) : "-");
            }
            table.row(cells.toArray(String[]::new));
        }
        lines.addAll(table.lines(terminal));
        if (variant.points().size() > MOST_ROWS) {
            lines.add("  and " + (variant.points().size() - MOST_ROWS) + " more in rows.csv");
        }
    }

    private static List<String> layups(LayupDraws draws) {
        double unit = Math.PI / 180e3;
        StringBuilder words = new StringBuilder(draws.draws() + " layups drawn: stiffness "
                + significant(unit * draws.quantiles()[1], 3, GAP) + " to "
                + significant(unit * draws.quantiles()[3], 3, GAP)
                + " kN·m/deg in nine of ten, " + significant(unit * draws.nominal(), 3, GAP) + " as designed");
        draws.stiffness()
                .ifPresent(p -> words.append("; its target is met with a probability between ")
                        .append(StudyAnswer.chance(p.low()))
                        .append(" and ")
                        .append(StudyAnswer.chance(p.high())));
        draws.mass()
                .ifPresent(p -> words.append("; that of the mass between ")
                        .append(StudyAnswer.chance(p.low()))
                        .append(" and ")
                        .append(StudyAnswer.chance(p.high())));
        return Wrap.lines(words.toString(), "  ", WIDTH);
    }

    private static void told(StudyAnswer answer, Findings.OfVariant variant, List<String> lines) {
        for (Findings.Chance chance : variant.chances()) {
            lines.addAll(Wrap.lines(
                    chance.reading() + " meets its target in "
                            + percent(chance.met().share()) + " of "
                            + chance.met().all() + " designs: between "
                            + percent(chance.met().low()) + " and "
                            + percent(chance.met().high()),
                    "  ",
                    WIDTH));
        }
        List<Variation> variations = answer.plan().variations();
        for (Findings.Indices indices : variant.indices()) {
            StringBuilder words = new StringBuilder("what matters for " + indices.reading() + ":");
            for (int d = 0; d < variations.size(); d++) {
                words.append(d == 0 ? " " : ", ")
                        .append(variations.get(d).name())
                        .append(' ')
                        .append(percent(Math.max(0, indices.of().total()[d])));
            }
            lines.addAll(Wrap.lines(words.toString(), "  ", WIDTH));
        }
        if (!variant.front().isEmpty()) {
            lines.add("  " + variant.front().size() + " designs that nothing beats, all computed whole");
        }
    }

    private static String times(int count) {
        return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
    }
}
