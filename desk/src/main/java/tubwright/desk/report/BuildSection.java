// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.List;
import tubwright.desk.answer.BuildAnswer;
import tubwright.desk.answer.BuildLanes;
import tubwright.engine.make.build.BuildPlan;
import tubwright.engine.make.build.Costs;
import tubwright.engine.make.build.Schedule.Placed;

/** From pattern to delivery on a page: time runs down, every place has a line, the longest path is drawn through them. */
final class BuildSection {
    private static final double WIDTH = 860;
    private static final double LEFT = 60;
    private static final double TOP = 34;

    private BuildSection() {}

    /** The sections. */
    static List<Section> of(BuildAnswer answer) {
        BuildPlan plan = answer.plan();
        return List.of(
                new Section(
                        "From pattern to delivery",
                        "Time runs down, days of waiting drawn short: " + answer.works()
                                + ". The dark line is the longest path: what is late there moves the"
                                + " day of delivery.",
                        "<div class=\"chart\">" + draw(plan) + "</div>" + path(plan)),
                new Section("Costs", "In " + answer.costs().currency() + ". " + BuildAnswer.RESTS, costs(answer)));
    }

    /** The picture. */
    static String draw(BuildPlan plan) {
        BuildLanes lanes = BuildLanes.of(plan);
        double tall = Math.max(300, Math.min(1400, 15 / lanes.workingDay()));
        double height = TOP + tall + 12;
        Svg svg = new Svg(WIDTH, height, "Where what is done when");
        for (int d : lanes.ruled(16 / tall)) {
            double y = TOP + tall * lanes.down()[d];
            svg.line("grid", LEFT - 6, y, WIDTH, y);
            svg.text(
                    "axis end",
                    LEFT - 10,
                    y + 4,
                    BuildLanes.day(lanes.begin().plusDays(d).toLocalDate()));
        }
        double column = (WIDTH - LEFT) / lanes.lanes().size();
        for (int i = 0; i < lanes.lanes().size(); i++) {
            double x = LEFT + (i + 0.5) * column;
            svg.text(
                    "note middle",
                    x,
                    TOP - 12 - 12 * (i % 2),
                    lanes.lanes().get(i).name());
            for (Placed p : lanes.lanes().get(i).placed()) {
                double from = TOP + tall * lanes.place(p.start());
                double to = Math.max(from + 1.5, TOP + tall * lanes.place(p.finish()));
                svg.line("lap " + p.activity().clock().name().toLowerCase(java.util.Locale.ROOT), x, from, x, to);
            }
        }
        List<Placed> chain = plan.schedule().chain().stream()
                .filter(p -> p.activity().seconds() > 0)
                .toList();
        double[] x = new double[2 * chain.size()];
        double[] y = new double[2 * chain.size()];
        for (int i = 0; i < chain.size(); i++) {
            x[2 * i] = LEFT + (lanes.lane(chain.get(i)) + 0.5) * column;
            x[2 * i + 1] = x[2 * i];
            y[2 * i] = TOP + tall * lanes.place(chain.get(i).start());
            y[2 * i + 1] = TOP + tall * lanes.place(chain.get(i).finish());
        }
        svg.path("longest", x, y);
        return svg.done();
    }

    private static String path(BuildPlan plan) {
        StringBuilder rows =
                new StringBuilder("<table class=\"tight\"><thead><tr><th>longest path, from</th><th>to</th>"
                        + "<th>what</th><th>takes</th></tr></thead><tbody>");
        for (String[] row : BuildLanes.path(plan)) {
            rows.append("<tr>");
            for (String cell : row) {
                rows.append(Html.tag("td", "", Html.escape(cell)));
            }
            rows.append("</tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String costs(BuildAnswer answer) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr><th></th><th class=\"n\">work, h</th>"
                + "<th class=\"n\">autoclave, h</th><th class=\"n\">"
                + Html.escape(answer.costs().currency())
                + "</th><th>how</th></tr></thead><tbody>");
        part(rows, "Once", answer.costs().once());
        for (int n : answer.numbers()) {
            part(rows, "Tub " + n, answer.costs().tubs().get(n - 1));
        }
        rows.append("</tbody></table><p>")
                .append(Html.escape("All " + answer.plan().tubs() + " with what is done once: "
                        + fixed(Math.rint(answer.costs().whole() / 100) * 100, 0, NARROW_SPACE) + " "
                        + answer.costs().currency() + "."))
                .append("</p>");
        return rows.toString();
    }

    private static void part(StringBuilder rows, String name, List<Costs.Line> lines) {
        for (Costs.Line line : lines) {
            row(rows, "<tr>", name + ": " + line.what(), line.work(), line.oven(), line.money(), line.rule());
        }
        row(
                rows,
                "<tr class=\"sum\">",
                name,
                lines.stream().mapToDouble(Costs.Line::work).sum(),
                lines.stream().mapToDouble(Costs.Line::oven).sum(),
                Costs.sum(lines),
                "");
    }

    private static void row(
            StringBuilder rows, String tag, String name, double work, double oven, double money, String rule) {
        rows.append(tag)
                .append(Html.tag("td", "", Html.escape(name)))
                .append(Html.tag("td", "n", work > 0 ? fixed(work / 3600, 1, NARROW_SPACE) : ""))
                .append(Html.tag("td", "n", oven > 0 ? fixed(oven / 3600, 1, NARROW_SPACE) : ""))
                .append(Html.tag("td", "n", fixed(money, 0, NARROW_SPACE)))
                .append(Html.tag("td", "", Html.escape(rule)))
                .append("</tr>");
    }
}
