// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.response.Reserve;
import tubwright.engine.safety.damage.Aftermath;
import tubwright.engine.safety.damage.DamageMap;
import tubwright.engine.safety.damage.PatchAnswer;

/** What hits cost, in a few lines. */
public final class DamageSummary {
    private static final int WIDTH = 78;
    private static final int SHOWN = 8;

    private DamageSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, DamageAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  "
                + (answer.at().isPresent()
                        ? "hit at " + answer.at().get()
                        : "a " + answer.degree().words() + " of "
                                + String.format(Locale.ROOT, "%.0f", 1e3 * answer.size())
                                + " mm moved over the whole tub"));
        for (DamageAnswer.PerVariant variant : answer.variants()) {
            lines.add("");
            lines.add(terminal.look(Look.STRONG, variant.name()) + "  " + variant.construction());
            if (answer.at().isPresent()) {
                variant.patches().forEach(p -> lines.addAll(one(terminal, p)));
                variant.aftermath().ifPresent(a -> lines.addAll(aftermath(terminal, a)));
            } else {
                lines.addAll(scan(terminal, variant));
            }
        }
        lines.add("");
        lines.addAll(Wrap.lines(DamageAnswer.ASIDE, "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static List<String> scan(Terminal terminal, DamageAnswer.PerVariant variant) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.addAll(Wrap.lines(
                variant.patches().size() + " positions. Half of them cost no more than "
                        + significant(100 * variant.usualLoss(), 2, " ") + " % of the torsional stiffness."
                        + (Double.isNaN(variant.spreading())
                                ? ""
                                : " Of those with reserve beside them, " + percent(variant.spreading())
                                        + " lose it by the hit: there the damage would spread."),
                "  ",
                WIDTH));
        lines.add("");
        lines.add("  Dearest in torsional stiffness");
        TextTable dear = new TextTable(true, true, false);
        List<String> asides = new ArrayList<>();
        variant.dearest().stream().limit(SHOWN).forEach(p -> {
            dear.row("  " + p.patch().name(), p.patch().region(), DamageAnswer.lost(p));
            asides.add(DamageAnswer.aside(p));
        });
        lines.addAll(folded(terminal, dear, asides));
        if (variant.patches().stream().anyMatch(p -> !p.loads().isEmpty())) {
            lines.add("");
            lines.add("  Least reserve with the damage");
            TextTable weak = new TextTable(true, true, false);
            List<String> words = new ArrayList<>();
            variant.weakest().stream().limit(SHOWN).forEach(p -> words.add(weak(weak, p)));
            lines.addAll(folded(terminal, weak, words));
        }
        variant.hotSpots().forEach(spot -> {
            lines.add("");
            lines.add("  Beyond the hole at " + spot.patch().patch().name() + ", "
                    + spot.patch().patch().region());
            lines.addAll(aftermath(terminal, spot.aftermath()));
        });
        return lines;
    }

    /** A table with words behind each row, or below it where they do not fit. */
    private static List<String> folded(Terminal terminal, TextTable table, List<String> words) {
        List<String> lines = new ArrayList<>();
        List<String> rows = table.lines(terminal);
        for (int i = 0; i < rows.size(); i++) {
            String both = rows.get(i) + (words.get(i).isEmpty() ? "" : "  " + terminal.shown(words.get(i)));
            if (both.length() <= WIDTH) {
                lines.add(both);
            } else {
                lines.add(rows.get(i));
                lines.addAll(Wrap.lines(words.get(i), "        ", WIDTH));
            }
        }
        return lines;
    }

    private static List<String> aftermath(Terminal terminal, Aftermath after) {
        List<String> lines = new ArrayList<>();
        if (!after.buckling().isEmpty()) {
            lines.add("");
            lines.add("  Lowest buckling factor with the hole, before -> after");
            TextTable table = new TextTable(true, false);
            after.buckling().forEach(b -> table.row("  " + b.name(), factor(b.before()) + " -> " + factor(b.after())));
            lines.addAll(table.lines(terminal));
        }
        if (!after.rows().isEmpty()) {
            lines.add("");
            lines.add("  Joints, inserts and sheet that are left, lowest first, before -> after");
            TextTable table = new TextTable(true, false);
            List<String> words = new ArrayList<>();
            after.rows().stream().limit(SHOWN).forEach(r -> {
                table.row(
                        "  " + r.after().load(),
                        factor(r.before()) + " -> " + factor(r.after().value()));
                words.add(r.after().zone() + ": " + r.after().check());
            });
            lines.addAll(folded(terminal, table, words));
        }
        return lines;
    }

    private static String factor(double value) {
        if (Double.isNaN(value)) {
            return "not found";
        }
        return value > 100 ? "> 100" : String.format(Locale.ROOT, "%.2f", value);
    }

    private static String weak(TextTable table, PatchAnswer p) {
        String words = p.worst()
                .map(w -> w.name() + ", " + w.after().map(ReserveWords::what).orElse(""))
                .orElse(DamageAnswer.aside(p));
        String factor = String.format(Locale.ROOT, "%.2f", DamageAnswer.before(p)) + " -> "
                + String.format(Locale.ROOT, "%.2f", DamageMap.reserve(p));
        table.row("  " + p.patch().name(), p.patch().region(), factor);
        return words;
    }

    private static List<String> one(Terminal terminal, PatchAnswer p) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add("  " + p.degree().words()
                + String.format(Locale.ROOT, ", %.0f cm²", 1e4 * p.patch().area()));
        TextTable table = new TextTable(true, false, false);
        List<String> words = new ArrayList<>();
        for (PatchAnswer.Stiffness each : p.stiffness()) {
            table.row("  " + each.name() + " stiffness lost", "", DamageAnswer.lost(each.share()));
            words.add("");
        }
        for (PatchAnswer.UnderLoad each : p.loads()) {
            table.row(
                    "  " + each.name(),
                    each.before().map(ReserveWords::value).orElse("–"),
                    each.loose()
                            ? "not carried"
                            : each.after().map(ReserveWords::value).orElse("–"));
            words.add(each.after().map(DamageSummary::what).orElse(""));
        }
        lines.addAll(folded(terminal, table, words));
        String aside = DamageAnswer.aside(p);
        if (!aside.isEmpty()) {
            lines.addAll(Wrap.lines(aside, "    ", WIDTH));
        }
        return lines;
    }

    private static String what(Reserve row) {
        return row.zone() + ": " + ReserveWords.what(row);
    }
}
