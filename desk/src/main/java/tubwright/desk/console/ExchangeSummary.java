// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.CalibratedWords;
import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.trim.ExchangeCurve;

/** The curve of mass against stiffness on the console. */
public final class ExchangeSummary {
    private static final int WIDTH = 78;

    private ExchangeSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, ExchangeAnswer answer) {
        StiffnessUnit unit = answer.unit();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  " + answer.variant() + ", case " + answer.loading());
        lines.add("");
        TextTable table = new TextTable(false, false, false, false, false, true);
        boolean asBuilt = !answer.foretold().isEmpty();
        table.row(
                "at least " + unit.text(),
                "lightest, kg",
                "nothing below, kg",
                "gap, %",
                asBuilt ? "between sections, N·m/deg" : "",
                "");
        List<ExchangeCurve.Point> points = answer.curve().points();
        Optional<Integer> chosen = answer.chosen();
        for (int k = 0; k < points.size(); k++) {
            ExchangeCurve.Point point = points.get(k);
            table.row(
                    significant(unit.of(point.asked()), 5, " "),
                    fixed(point.found().mass(), 3, " "),
                    fixed(point.found().bound(), 3, " "),
                    fixed(100 * point.found().gap(), 2, " "),
                    asBuilt ? interval(answer.foretold().get(k)) : "",
                    chosen.equals(Optional.of(k)) ? "chosen" : "");
        }
        add(terminal, table, lines);
        lines.add("");
        table = new TextTable(false, false, false);
        table.row("at most kg", "stiffest found, " + unit.text(), "none reaches, " + unit.text());
        for (ExchangeCurve.Reading reading : answer.readings()) {
            table.row(
                    fixed(reading.mass(), 3, " "),
                    reading.stiffest()
                            .map(p -> significant(unit.of(p.reached().low()), 5, " "))
                            .orElse(""),
                    Double.isFinite(reading.atMost()) ? significant(unit.of(reading.atMost()), 5, " ") : "");
        }
        add(terminal, table, lines);
        lines.add("");
        table = new TextTable(true, false, false);
        table.row("there is", "kg", unit.text());
        for (ExchangeAnswer.Mark mark : answer.marks()) {
            table.row(mark.name(), fixed(mark.mass(), 3, " "), significant(unit.of(mark.stiffness()), 5, " "));
        }
        add(terminal, table, lines);
        lines.add("");
        answer.calibrated().ifPresent(c -> {
            lines.addAll(Wrap.lines(
                    CalibratedWords.of(c) + " ± between sections holds the built tub's stiffness with 95 % chance.",
                    "  ",
                    WIDTH));
            lines.add("");
        });
        lines.addAll(Wrap.lines(
                "Stiffness is between loaded and held hardpoints. \"Nothing below\" is proved for this mesh ("
                        + fixed(answer.unknowns(), 0, " ")
                        + " unknowns) and the candidates the rules allow; strength, buckling and vibration are not looked at.",
                "  ",
                WIDTH));
        return lines;
    }

    private static String interval(LayupForecast.Foretold foretold) {
        return plusMinus(perDegree(foretold.stiffness()), perDegree(foretold.expanded()), " ");
    }

    private static void add(Terminal terminal, TextTable table, List<String> lines) {
        List<String> rows = table.lines(terminal);
        for (int i = 0; i < rows.size(); i++) {
            lines.add(i == 0 ? terminal.look(Look.QUIET, rows.get(i)) : rows.get(i));
        }
    }
}
