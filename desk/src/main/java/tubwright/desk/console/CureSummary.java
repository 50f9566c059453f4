// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.answer.CureWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.make.cure.CureCheck;
import tubwright.engine.make.cure.LaminateCure;

/** Cures in a few lines. */
public final class CureSummary {
    private static final int WIDTH = 78;
    private static final int LONGEST_NAME = 44;

    private CureSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, CureAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  cure");
        lines.add("");
        lines.addAll(Wrap.lines(CureWords.shop(answer.shop()), "  ", WIDTH));
        lines.add("");
        TextTable table = new TextTable(true, false, true, false, false, false);
        table.row("laminate", "mm", "cures", "peak", "degree", "missed");
        for (CureAnswer.Place place : answer.places()) {
            List<LaminateCure.Stage> stages = place.cure().stages();
            long missed = checks(place)
                    .filter(c -> c.verdict() == CureCheck.Verdict.MISSED)
                    .count();
            table.row(
                    name(place),
                    fixed(1e3 * place.cure().thickness(), 1, ""),
                    stages.isEmpty() ? "data missing" : Integer.toString(stages.size()),
                    extreme(place, CureCheck.Subject.PEAK, true),
                    extreme(place, CureCheck.Subject.DEGREE, false),
                    missed == 0 ? "" : Long.toString(missed));
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.add("  checks met " + answer.count(CureCheck.Verdict.MET) + ", missed "
                + answer.count(CureCheck.Verdict.MISSED) + ", not checked "
                + answer.count(CureCheck.Verdict.NOT_CHECKED));
        told(answer, CureCheck.Verdict.MISSED).forEach(l -> lines.addAll(Wrap.lines(l, "    ", WIDTH)));
        told(answer, CureCheck.Verdict.NOT_CHECKED).forEach(l -> lines.addAll(Wrap.lines(l, "    ", WIDTH)));
        answer.places().stream()
                .flatMap(p -> p.cure().missing().stream())
                .distinct()
                .forEach(m -> lines.addAll(Wrap.lines("not checked: needs " + m, "    ", WIDTH)));
        lines.add("");
        double most = answer.bends().stream()
                .mapToDouble(CureAnswer.Bend::mostClosing)
                .filter(Double::isFinite)
                .max()
                .orElse(Double.NaN);
        if (Double.isFinite(most)) {
            lines.addAll(Wrap.lines(
                    "Bends close by up to " + CureWords.degrees(most)
                            + "; the page has each of them, and moulds' cold sizes.",
                    "  ",
                    WIDTH));
            lines.add("");
        }
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    /** What checks of a verdict say, each once, with the subject before it. */
    private static List<String> told(CureAnswer answer, CureCheck.Verdict verdict) {
        return answer.places().stream()
                .flatMap(p -> p.cure().stages().stream())
                .flatMap(s -> s.checks().stream())
                .filter(c -> c.verdict() == verdict)
                .map(c ->
                        c.subject().title() + " " + verdict.word() + (c.words().isEmpty() ? "" : ": " + c.words()))
                .distinct()
                .toList();
    }

    private static Stream<CureCheck> checks(CureAnswer.Place place) {
        return place.cure().stages().stream().flatMap(s -> s.checks().stream());
    }

    private static String name(CureAnswer.Place place) {
        String first = place.where().getFirst();
        String name = first.length() > LONGEST_NAME ? first.substring(0, LONGEST_NAME - 2) + " …" : first;
        return place.where().size() > 1 ? name + " +" + (place.where().size() - 1) : name;
    }

    /** The highest or least value over the cures of a place; in brackets where it proves nothing. */
    private static String extreme(CureAnswer.Place place, CureCheck.Subject subject, boolean highest) {
        Comparator<CureCheck> byValue =
                Comparator.comparingDouble(c -> c.value().orElse(0));
        return checks(place)
                .filter(c -> c.subject() == subject && c.value().isPresent())
                .max(highest ? byValue : byValue.reversed())
                .map(CureWords::told)
                .orElse("");
    }
}
