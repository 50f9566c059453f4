// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.CalibratedWords;
import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.trim.ExchangeCurve;

/** Mass against stiffness as one page of HTML, and its drawing by itself. */
public final class ExchangePage {
    private static final double WIDTH = 860;
    private static final double HEIGHT = 470;
    private static final double LEFT = 70;
    private static final double RIGHT = 830;
    private static final double TOP = 30;
    private static final double BOTTOM = 410;

    private ExchangePage() {}

    /** The whole page. */
    public static String write(ExchangeAnswer answer) {
        return Note.page(
                answer.tub() + ": mass against stiffness",
                head(answer),
                List.of(
                        new Section(
                                "The curve",
                                "Each dot is the lightest layup found for a stiffness; the thin line below is the mass under"
                                        + " which no layup of the candidates has it. Left of and below the thin line there is"
                                        + " nothing.",
                                draw(answer).done()),
                        new Section(
                                "For a stiffness",
                                "What the least mass is, and how sure that is.",
                                byStiffness(answer)),
                        new Section(
                                "For a mass",
                                "The stiffest point of the curve that is no heavier, and the stiffness nothing of that mass"
                                        + " reaches.",
                                byMass(answer)),
                        new Section("What there is", "The tubs marked on the curve, as they are.", marks(answer))),
                "");
    }

    /** The drawing as a file of its own. */
    public static String picture(ExchangeAnswer answer) {
        String style = "<style>" + Note.style() + "svg{background:var(--paper)}</style>";
        String drawing = draw(answer).raw(style).done();
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + drawing.replaceFirst("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ") + "\n";
    }

    private static Svg draw(ExchangeAnswer answer) {
        StiffnessUnit unit = answer.unit();
        List<ExchangeCurve.Point> points = answer.curve().points();
        double[] x = points.stream().mapToDouble(p -> unit.of(p.asked())).toArray();
        double[] mass = points.stream().mapToDouble(p -> p.found().mass()).toArray();
        double[] bound = points.stream().mapToDouble(p -> p.found().bound()).toArray();
        double left = x[0];
        double right = x[x.length - 1];
        double low = bound[0];
        double high = mass[mass.length - 1];
        for (ExchangeAnswer.Mark mark : answer.marks()) {
            left = Math.min(left, unit.of(mark.stiffness()));
            right = Math.max(right, unit.of(mark.stiffness()));
            low = Math.min(low, mark.mass());
            high = Math.max(high, mark.mass());
        }
        double airX = 0.06 * (right - left);
        double airY = 0.08 * Math.max(high - low, 1e-3 * high);
        Axis across = Axis.exact(left - airX, right + airX, LEFT, RIGHT);
        Axis up = Axis.exact(low - airY, high + airY, BOTTOM, TOP);
        Svg svg = new Svg(WIDTH, HEIGHT, "Least mass against stiffness, with its bound");
        for (double tick : up.ticks(6)) {
            svg.line("grid", LEFT, up.at(tick), RIGHT, up.at(tick));
            svg.text("figure end", LEFT - 8, up.at(tick) + 4, fixed(tick, up.decimals(6), NARROW_SPACE));
        }
        for (double tick : across.ticks(7)) {
            svg.line("tick", across.at(tick), BOTTOM, across.at(tick), BOTTOM + 5);
            svg.text("figure middle", across.at(tick), BOTTOM + 19, fixed(tick, across.decimals(7), NARROW_SPACE));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 42, "stiffness between hardpoints, " + unit.text());
        svg.text("axis", 6, TOP - 12, "mass, kg");
        double[] px = new double[x.length];
        double[] found = new double[x.length];
        double[] proved = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            px[k] = across.at(x[k]);
            found[k] = up.at(mass[k]);
            proved[k] = up.at(bound[k]);
        }
        svg.path("curve thin s3", px, proved);
        svg.path("curve s0", px, found);
        for (int k = 0; k < x.length; k++) {
            svg.line("zero", px[k], found[k], px[k], proved[k]);
            svg.circle("dot", px[k], found[k], 3.6);
        }
        svg.text("name s3", px[0] + 8, proved[0] + 18, "nothing is lighter");
        for (ExchangeAnswer.Mark mark : answer.marks()) {
            double mx = across.at(unit.of(mark.stiffness()));
            double my = up.at(mark.mass());
            boolean end = mx > 0.75 * RIGHT;
            svg.circle("ring", mx, my, 5);
            svg.text(end ? "name s0 end" : "name s0", end ? mx - 10 : mx + 10, my - 8, mark.name());
        }
        return svg;
    }

    private static String head(ExchangeAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "variant", answer.variant());
        Note.cell(cells, "case", answer.loading());
        Note.cell(cells, "unknowns", fixed(answer.unknowns(), 0, NARROW_SPACE));
        return "<header><div class=\"name\"><p class=\"kicker\">Mass against stiffness</p><h1>" + escape(answer.tub())
                + "</h1><p>Stiffness is counted between loaded and held hardpoints. Strength, buckling and vibration are"
                + " not looked at.</p>"
                + answer.calibrated()
                        .map(c -> "<p>" + escape(CalibratedWords.of(c)) + "</p>")
                        .orElse("")
                + "</div><dl class=\"block\">" + cells + "</dl></header>\n";
    }

    private static String byStiffness(ExchangeAnswer answer) {
        boolean asBuilt = !answer.foretold().isEmpty();
        List<String> heads = new ArrayList<>(
                List.of("at least, " + answer.unit().text(), "lightest, kg", "nothing below, kg", "gap, %"));
        if (asBuilt) {
            heads.add("as built, between sections, N·m/deg (95 %)");
        }
        StringBuilder rows = table(heads.toArray(String[]::new));
        List<ExchangeCurve.Point> points = answer.curve().points();
        for (int k = 0; k < points.size(); k++) {
            ExchangeCurve.Point point = points.get(k);
            List<String> cells = new ArrayList<>(List.of(
                    stiffness(answer, point.asked()),
                    fixed(point.found().mass(), 3, NARROW_SPACE)
                            + (answer.chosen().equals(Optional.of(k)) ? " (chosen)" : ""),
                    fixed(point.found().bound(), 3, NARROW_SPACE),
                    fixed(100 * point.found().gap(), 2, NARROW_SPACE)));
            if (asBuilt) {
                LayupForecast.Foretold foretold = answer.foretold().get(k);
                cells.add(plusMinus(perDegree(foretold.stiffness()), perDegree(foretold.expanded()), NARROW_SPACE));
            }
            row(rows, cells.toArray(String[]::new));
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String byMass(ExchangeAnswer answer) {
        String unit = answer.unit().text();
        StringBuilder rows = table("at most, kg", "stiffest found, " + unit, "none reaches, " + unit);
        for (ExchangeCurve.Reading reading : answer.readings()) {
            row(
                    rows,
                    fixed(reading.mass(), 3, NARROW_SPACE),
                    reading.stiffest()
                            .map(p -> stiffness(answer, p.reached().low()))
                            .orElse("–"),
                    Double.isFinite(reading.atMost()) ? stiffness(answer, reading.atMost()) : "–");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String marks(ExchangeAnswer answer) {
        StringBuilder rows = table("tub", "kg", answer.unit().text());
        for (ExchangeAnswer.Mark mark : answer.marks()) {
            row(rows, mark.name(), fixed(mark.mass(), 3, NARROW_SPACE), stiffness(answer, mark.stiffness()));
        }
        return rows.append("</tbody></table>").toString();
    }

    private static StringBuilder table(String... heads) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr>");
        for (String head : heads) {
            rows.append("<th class=\"n\">").append(escape(head)).append("</th>");
        }
        return rows.append("</tr></thead><tbody>");
    }

    private static void row(StringBuilder rows, String... cells) {
        rows.append("<tr>");
        for (String cell : cells) {
            rows.append("<td class=\"n\">").append(escape(cell)).append("</td>");
        }
        rows.append("</tr>");
    }

    private static String stiffness(ExchangeAnswer answer, double si) {
        return significant(answer.unit().of(si), 5, NARROW_SPACE);
    }
}
