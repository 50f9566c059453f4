// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.List;
import tubwright.desk.answer.CalibratedWords;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.trim.Lightened;

/** The lightest layup as one page of HTML: what to leave out, what is proved of it, and how mass and bound came together. */
public final class LightenPage {
    private static final double WIDTH = 620;
    private static final double HEIGHT = 280;
    private static final double LEFT = 66;
    private static final double RIGHT = 604;
    private static final double TOP = 26;
    private static final double BOTTOM = 232;

    private LightenPage() {}

    /** The whole page. */
    public static String write(LightenAnswer answer) {
        Lightened found = answer.found();
        String words = answer.variant() + ": " + significant(answer.massBefore(), 4, NARROW_SPACE) + " kg before, "
                + significant(found.mass(), 4, NARROW_SPACE)
                + " kg after; nothing among the candidates is lighter than "
                + significant(found.bound(), 4, NARROW_SPACE) + " kg, a gap of "
                + significant(100 * found.gap(), 2, NARROW_SPACE) + " %.";
        String head = "<header><div class=\"name\"><p class=\"kicker\">Weight back</p><h1>" + escape(answer.tub())
                + "</h1><p>" + escape(words) + "</p></div></header>\n";
        return Note.page(
                answer.tub() + ": weight back",
                head,
                List.of(
                        new Section("What to lay up otherwise", "", asBuilt(answer) + changes(answer)),
                        new Section("Targets", "", targets(answer)),
                        new Section(
                                "Best mass and bound",
                                "How they came together.",
                                "<figure>" + chart(found.history()) + "</figure>")),
                "");
    }

    /** The tub as its makers build it, where a test has told how they do. */
    private static String asBuilt(LightenAnswer answer) {
        return answer.foretold()
                .map(f -> "<p><strong>" + escape("As built: " + f.words(NARROW_SPACE)) + ".</strong> "
                        + escape(CalibratedWords.of(f.calibrated())) + "</p>\n")
                .orElse("");
    }

    private static String changes(LightenAnswer answer) {
        if (answer.changes().isEmpty()) {
            return "<p>Nothing can go.</p>";
        }
        StringBuilder table = new StringBuilder(
                "<table><thead><tr><th>where</th><th>what</th><th>stack after</th><th>g</th></tr></thead><tbody>\n");
        for (LightenAnswer.Change change : answer.changes()) {
            table.append("<tr><td>")
                    .append(escape(change.zone()))
                    .append("</td><td>")
                    .append(escape(change.words()))
                    .append("</td><td>")
                    .append(escape(change.after()))
                    .append("</td><td>")
                    .append(fixed(1000 * change.mass(), 0, NARROW_SPACE))
                    .append("</td></tr>\n");
        }
        return table.append("</tbody></table>\n").toString();
    }

    private static String targets(LightenAnswer answer) {
        StringBuilder body =
                new StringBuilder("<table><thead><tr><th>target</th><th>asked</th><th>before</th><th>after</th>"
                        + "<th></th></tr></thead><tbody>\n");
        for (int g = 0; g < answer.goals().size(); g++) {
            LightenAnswer.Goal goal = answer.goals().get(g);
            StiffnessUnit unit = goal.unit();
            row(
                    body,
                    goal.loading() + ", between hardpoints, " + unit.text(),
                    significant(unit.of(goal.least()), 5, NARROW_SPACE),
                    significant(unit.of(goal.before()), 5, NARROW_SPACE),
                    significant(unit.of(answer.found().stiffness().get(g).low()), 5, NARROW_SPACE),
                    "proved");
        }
        answer.found()
                .verified()
                .forEach(f -> row(
                        body,
                        f.what() + (f.where().isEmpty() ? "" : ", " + f.where()),
                        significant(f.least(), 3, NARROW_SPACE),
                        "",
                        significant(f.value(), 3, NARROW_SPACE),
                        "verified"));
        body.append("</tbody></table>\n<p>")
                .append(escape(answer.ending() + " " + answer.trust()))
                .append("</p>\n");
        if (!answer.notLookedAt().isEmpty()) {
            body.append("<p>Not looked at: ")
                    .append(escape(String.join(", ", answer.notLookedAt())))
                    .append(".</p>\n");
        }
        return body.toString();
    }

    private static void row(StringBuilder body, String... cells) {
        body.append("<tr>");
        for (String cell : cells) {
            body.append("<td>").append(escape(cell)).append("</td>");
        }
        body.append("</tr>\n");
    }

    /** Steps of the best mass from above and of the bound from below, against time. */
    static String chart(List<Lightened.Step> steps) {
        if (steps.isEmpty()) {
            return "";
        }
        double end = Math.max(1, steps.getLast().seconds());
        double high = steps.getFirst().mass();
        double low = steps.getFirst().bound();
        double air = 0.06 * Math.max(high - low, 1e-3 * high);
        Axis x = Axis.exact(0, end, LEFT + 8, RIGHT);
        Axis y = Axis.exact(low - air, high + air, BOTTOM, TOP);
        Svg svg = new Svg(WIDTH, HEIGHT, "Best mass and bound against time");
        for (double tick : y.ticks(5)) {
            svg.line("grid", LEFT, y.at(tick), RIGHT, y.at(tick));
            svg.text("figure end", LEFT - 8, y.at(tick) + 4, fixed(tick, y.decimals(5), NARROW_SPACE));
        }
        for (double tick : x.ticks(6)) {
            svg.line("tick", x.at(tick), BOTTOM, x.at(tick), BOTTOM + 5);
            svg.text("figure middle", x.at(tick), BOTTOM + 19, fixed(tick, x.decimals(6), NARROW_SPACE));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 40, "time, s");
        svg.text("axis", 6, TOP - 12, "mass, kg");
        int n = steps.size();
        double[] px = new double[2 * n];
        double[] best = new double[2 * n];
        double[] bound = new double[2 * n];
        for (int i = 0; i < n; i++) {
            px[2 * i] = x.at(steps.get(i).seconds());
            px[2 * i + 1] = x.at(i + 1 < n ? steps.get(i + 1).seconds() : end);
            best[2 * i] = y.at(steps.get(i).mass());
            best[2 * i + 1] = best[2 * i];
            bound[2 * i] = y.at(steps.get(i).bound());
            bound[2 * i + 1] = bound[2 * i];
        }
        svg.path("curve s0", px, best);
        svg.path("curve thin s1", px, bound);
        svg.text("figure end", RIGHT - 4, best[2 * n - 1] - 7, "best");
        svg.text("figure end", RIGHT - 4, bound[2 * n - 1] + 15, "bound");
        return svg.done();
    }
}
