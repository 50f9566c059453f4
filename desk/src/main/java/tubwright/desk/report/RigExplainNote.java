// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.console.RigExplainWords;
import tubwright.desk.text.Figures;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.explain.Measured;
import tubwright.engine.rig.explain.Segment;
import tubwright.engine.rig.explain.Update;

/** The page of an explained torsion test: what the readings say, the twist line thrice, the factors before and after. */
public final class RigExplainNote {
    private static final String GAP = Figures.NARROW_SPACE;
    private static final double WIDTH = 860;
    private static final double LEFT = 70;
    private static final double RIGHT = 840;
    private static final double TOP = 30;
    private static final double BOTTOM = 330;

    private RigExplainNote() {}

    /** The whole page. */
    public static String write(RigExplainAnswer answer) {
        Explanation told = answer.explanation();
        StringBuilder verdict = new StringBuilder("<div class=\"heads\">");
        head(
                verdict,
                answer.weighed().isPresent() ? "as weighed" : "as designed",
                told.predicted(),
                Double.NaN,
                "before the test",
                "");
        head(verdict, "as built", told.calibrated(), told.expanded(), "the model after the test, 95 %", " lead");
        head(
                verdict,
                "measured",
                answer.reading().best().stiffness(),
                answer.reading().best().expanded(),
                answer.reading().span(),
                "");
        verdict.append("</div><ul class=\"warnings\">");
        answer.weighed()
                .ifPresent(w -> verdict.append("<li>")
                        .append(Html.escape(
                                w.words() + " Factors below are on top of that; \"as designed\" then stands for the tub"
                                        + " as weighed."))
                        .append("</li>"));
        RigExplainWords.verdict(told, answer.reading().readings().greatestTorque())
                .forEach(w -> verdict.append("<li>").append(Html.escape(w)).append("</li>"));
        answer.foretold()
                .forEach(f -> verdict.append("<li>")
                        .append(Html.escape(RigExplainWords.foretold(f)))
                        .append("</li>"));
        verdict.append("</ul>");
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("What the test says", "", verdict.toString()));
        sections.add(new Section(
                "Twist line",
                "Bars are readings with two standard uncertainties. Broken: as designed. Full: as built.",
                twist(told)));
        sections.add(new Section("Stretch by stretch", "Twist gained between neighbouring gauges.", segments(told)));
        sections.add(new Section(
                "What is in question",
                "Each stiffness of the model carries a factor. The pale bar is what was known of it before the test, the"
                        + " dark one what is known now (95 %), on a scale of halves and doubles.",
                factors(told.update()) + alike(told)));
        String head = "<header><div class=\"name\"><p class=\"kicker\">Torsion test explained</p><h1>"
                + Html.escape(answer.tub()) + "</h1></div></header>\n";
        return Note.page(answer.tub() + ": torsion test explained", head, sections, "");
    }

    private static void head(
            StringBuilder out, String name, double stiffness, double expanded, String foot, String kind) {
        out.append("<div class=\"head")
                .append(kind)
                .append("\"><h3>")
                .append(name)
                .append("</h3><p class=\"value\"><strong>")
                .append(significant(perDegree(stiffness), 4, GAP))
                .append("</strong> ");
        if (Double.isFinite(expanded)) {
            out.append("<span class=\"band\">± ")
                    .append(significant(perDegree(expanded), 2, GAP))
                    .append("</span> ");
        }
        out.append("<span class=\"unit\">N·m/deg</span></p><p class=\"foot\">")
                .append(Html.escape(foot))
                .append("</p></div>");
    }

    private static String twist(Explanation told) {
        Measured measured = told.measured();
        int n = measured.stations().length;
        double low = measured.stations()[0];
        double high = low;
        double most = 0;
        double least = 0;
        Integer[] order = new Integer[n];
        for (int k = 0; k < n; k++) {
            order[k] = k;
            low = Math.min(low, measured.stations()[k]);
            high = Math.max(high, measured.stations()[k]);
            for (double v : new double[] {
                measured.angles()[k] + 2 * measured.deviations()[k],
                measured.angles()[k] - 2 * measured.deviations()[k],
                told.update().before()[k],
                told.update().after()[k]
            }) {
                most = Math.max(most, degrees(v));
                least = Math.min(least, degrees(v));
            }
        }
        if (measured.held().isPresent()) {
            low = Math.min(low, measured.held().getAsDouble());
            high = Math.max(high, measured.held().getAsDouble());
        }
        java.util.Arrays.sort(order, java.util.Comparator.comparingDouble(k -> measured.stations()[k]));
        Axis along = Axis.exact(1000 * low, 1000 * high, LEFT + 12, RIGHT - 12);
        Axis up = Axis.round(least, most, BOTTOM, TOP, 6);
        Svg svg = new Svg(WIDTH, BOTTOM + 46, "Twist measured, as designed and as built");
        svg.text("axis", LEFT - 60, TOP - 12, "twist, degrees per kN·m");
        for (double tick : up.ticks(6)) {
            svg.line(tick == 0 ? "zero" : "grid", LEFT, up.at(tick), RIGHT, up.at(tick));
            svg.text("figure end", LEFT - 8, up.at(tick) + 4, fixed(tick, up.decimals(6), " "));
        }
        for (double tick : along.ticks(8)) {
            svg.line("tick", along.at(tick), BOTTOM, along.at(tick), BOTTOM + 5);
            svg.text("figure middle", along.at(tick), BOTTOM + 19, fixed(tick, along.decimals(8), " "));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 39, "station x, mm aft of the datum");
        line(svg, "curve thin s1", along, up, measured, told.update().before(), order);
        line(svg, "curve s0", along, up, measured, told.update().after(), order);
        for (int k : order) {
            double x = along.at(1000 * measured.stations()[k]);
            double top = up.at(degrees(measured.angles()[k] + 2 * measured.deviations()[k]));
            double bottom = up.at(degrees(measured.angles()[k] - 2 * measured.deviations()[k]));
            svg.line("tick", x, top, x, bottom);
            svg.line("tick", x - 5, top, x + 5, top);
            svg.line("tick", x - 5, bottom, x + 5, bottom);
            svg.circle("dot", x, up.at(degrees(measured.angles()[k])), 4);
        }
        return svg.done();
    }

    private static void line(
            Svg svg, String kind, Axis along, Axis up, Measured measured, double[] angles, Integer[] order) {
        List<double[]> points = new ArrayList<>();
        for (int k : order) {
            points.add(new double[] {measured.stations()[k], angles[k]});
        }
        measured.held().ifPresent(x -> points.add(new double[] {x, 0}));
        points.sort(java.util.Comparator.comparingDouble(p -> p[0]));
        svg.path(
                kind,
                points.stream().mapToDouble(p -> along.at(1000 * p[0])).toArray(),
                points.stream().mapToDouble(p -> up.at(degrees(p[1]))).toArray());
    }

    private static String segments(Explanation told) {
        StringBuilder rows = new StringBuilder();
        for (Segment each : told.segments()) {
            rows.append("<tr><th>x = ")
                    .append(fixed(1000 * each.from(), 0, GAP))
                    .append(" to ")
                    .append(fixed(1000 * each.to(), 0, GAP))
                    .append(" mm</th>");
            for (String cell : List.of(
                    RigExplainWords.milli(each.measured()),
                    RigExplainWords.milli(each.predicted()),
                    RigExplainWords.milli(each.explained()),
                    fixed(each.significance(), 1, GAP))) {
                rows.append("<td class=\"n\">").append(cell).append("</td>");
            }
            rows.append("<td>")
                    .append(
                            each.standsOut()
                                    ? Html.escape(each.guilty().map(Doubt::name).orElse("nothing in question"))
                                    : "")
                    .append("</td></tr>");
        }
        return "<table class=\"tight\"><thead><tr><th>stretch</th><th class=\"n\">measured, deg/kN·m</th>"
                + "<th class=\"n\">as designed</th><th class=\"n\">as built</th>"
                + "<th class=\"n\">off by (standard uncertainties)</th><th>explained by</th></tr></thead><tbody>"
                + rows + "</tbody></table>";
    }

    private static String factors(Update update) {
        int n = update.doubts().size();
        double row = 26;
        double most = 0.5;
        for (int i = 0; i < n; i++) {
            if (!update.doubts().get(i).is(Doubt.Kind.RIG_GIVE)) {
                most = Math.max(most, 1.96 * update.doubts().get(i).spread());
                most = Math.max(most, Math.abs(update.mean()[i]) + 1.96 * update.deviation(i));
            }
        }
        double left = 300;
        Axis axis = Axis.exact(-most, most, left, RIGHT - 90);
        Svg svg = new Svg(WIDTH, row * n + 44, "Factors before and after the test");
        for (double factor : new double[] {0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20}) {
            double x = axis.at(Math.log(factor));
            if (Math.abs(Math.log(factor)) <= most) {
                svg.line(factor == 1 ? "zero" : "grid", x, 8, x, row * n + 14);
                svg.text("figure middle", x, row * n + 30, "×" + significant(factor, 1, ""));
            }
        }
        for (int i = 0; i < n; i++) {
            Doubt doubt = update.doubts().get(i);
            double middle = 12 + row * (i + 0.5);
            svg.text("figure end", left - 14, middle + 4, doubt.name());
            if (doubt.is(Doubt.Kind.RIG_GIVE)) {
                svg.text("figure", left + 8, middle + 4, RigExplainWords.after(update, i));
                continue;
            }
            double before = 1.96 * doubt.spread();
            double after = 1.96 * update.deviation(i);
            svg.rectangle("bar s1", axis.at(-before), middle - 7, axis.at(before) - axis.at(-before), 5);
            svg.rectangle(
                    "bar s0",
                    axis.at(update.mean()[i] - after),
                    middle,
                    Math.max(2, axis.at(update.mean()[i] + after) - axis.at(update.mean()[i] - after)),
                    6);
            svg.text(
                    "figure",
                    RIGHT - 80,
                    middle + 4,
                    RigExplainWords.learnt(update, i).split(":")[0]);
        }
        return svg.done();
    }

    private static String alike(Explanation told) {
        StringBuilder text = new StringBuilder();
        RigExplainWords.alike(told)
                .forEach(w -> text.append("<p>").append(Html.escape(w)).append("</p>"));
        return text.toString();
    }

    private static double degrees(double perTorque) {
        return Math.toDegrees(1000 * perTorque);
    }
}
