// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.List;
import tubwright.desk.answer.EnoughAnswer;
import tubwright.desk.answer.EnoughWords;
import tubwright.engine.load.RollBalance;

/** How stiff is enough, as one page with its curve. */
public final class EnoughPage {
    private static final double WIDTH = 860;
    private static final double HEIGHT = 430;
    private static final double LEFT = 60;
    private static final double RIGHT = 830;
    private static final double TOP = 30;
    private static final double BOTTOM = 370;
    private static final int STEPS = 240;

    private EnoughPage() {}

    /** The whole page. */
    public static String write(EnoughAnswer answer) {
        String head = "<header><div class=\"name\"><p class=\"kicker\">How stiff is enough</p><h1>"
                + Html.escape(answer.tub()) + "</h1><p>"
                + Html.escape("Two axles that resist roll, the chassis between them as a spring in torsion; steady"
                        + " cornering, small angles, dampers and roll centres left out.")
                + "</p></div></header>\n";
        return Note.page(
                answer.tub() + ": how stiff is enough",
                head,
                List.of(
                        new Section(
                                "What arrives",
                                "Springs and bars are set to move load transfer from axle to axle. A soft chassis keeps"
                                        + " part of it for itself.",
                                draw(answer).done()),
                        new Section(
                                "What it takes",
                                "Stiffness between the axles.",
                                table(answer) + "<p>" + Html.escape(EnoughWords.now(answer, NARROW_SPACE)) + "</p>")),
                "");
    }

    private static Svg draw(EnoughAnswer answer) {
        RollBalance balance = answer.balance();
        double most = 1.3 * Math.max(perDegree(answer.needed()), perDegree(balance.needed(0.95)));
        if (answer.now().isPresent()) {
            most = Math.max(most, 1.1 * perDegree(answer.now().get().between()));
        }
        Axis across = Axis.round(0, most, LEFT, RIGHT, 8);
        Axis up = Axis.exact(0, 1, BOTTOM, TOP);
        Svg svg = new Svg(
                WIDTH, HEIGHT, "Share of a change of balance that arrives, against stiffness between the axles");
        for (int tenth = 0; tenth <= 10; tenth += 2) {
            svg.line("grid", LEFT, up.at(tenth / 10.0), RIGHT, up.at(tenth / 10.0));
            svg.text("figure end", LEFT - 8, up.at(tenth / 10.0) + 4, 10 * tenth + " %");
        }
        for (double tick : across.ticks(8)) {
            svg.line("tick", across.at(tick), BOTTOM, across.at(tick), BOTTOM + 5);
            svg.text("figure middle", across.at(tick), BOTTOM + 19, fixed(tick, across.decimals(8), NARROW_SPACE));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 42, "stiffness between the axles, N·m/deg");
        double[] x = new double[STEPS + 1];
        double[] y = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            double k = across.high() * i / STEPS;
            x[i] = across.at(k);
            y[i] = up.at(balance.arriving(k * 180 / Math.PI));
        }
        svg.path("curve s0", x, y);
        mark(svg, across, up, answer.needed(), answer.share(), "asked");
        answer.now()
                .ifPresent(now -> mark(svg, across, up, now.between(), balance.arriving(now.between()), "last run"));
        return svg;
    }

    private static void mark(Svg svg, Axis across, Axis up, double stiffness, double share, String name) {
        double x = across.at(perDegree(stiffness));
        svg.line("zero", x, up.at(share), x, BOTTOM);
        svg.circle("ring", x, up.at(share), 5);
        boolean end = x > 0.8 * RIGHT;
        svg.text(end ? "name end" : "name", end ? x - 10 : x + 10, up.at(share) + 20, name);
    }

    private static String table(EnoughAnswer answer) {
        StringBuilder rows =
                new StringBuilder("<table class=\"tight\"><thead><tr><th>arrives</th><th class=\"n\">N·m/deg"
                        + "</th><th class=\"n\">times the axles</th></tr></thead><tbody>");
        for (double share : EnoughAnswer.SHARES) {
            double k = answer.balance().needed(share);
            rows.append("<tr><td>")
                    .append(percent(share))
                    .append("</td><td class=\"n\">")
                    .append(significant(perDegree(k), 3, NARROW_SPACE))
                    .append("</td><td class=\"n\">")
                    .append(significant(k / answer.balance().rollStiffness(), 2, NARROW_SPACE))
                    .append("</td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }
}
