// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.KitAnswer;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.PlyMass;
import tubwright.engine.make.nest.Nest;
import tubwright.engine.make.nest.Outline;

/** What a tub takes to make, as one page: material, nests drawn, hours, plies. */
public final class KitPage {
    private static final double WIDTH = 860;

    private KitPage() {}

    /** The whole page. */
    public static String write(KitAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "plies, films, cores", fixed(answer.mass().total(), 2, NARROW_SPACE) + " kg");
        String head = "<header><div class=\"name\"><p class=\"kicker\">Kit</p><h1>" + Html.escape(answer.tub())
                + "</h1><p>" + Html.escape(answer.mass().plies().size() + " cut pieces; patterns as draped.")
                + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "Material", "Bought is the roll taken by the nests; cut-outs and gaps are waste.", materials(answer)));
        for (KitNest kit : answer.kits()) {
            sections.add(new Section(
                    kit.piece() + ": " + kit.material().name(),
                    kit.nest()
                            .map(n -> fixed(n.length(), 2, NARROW_SPACE) + " m of roll, "
                                    + percent(kit.used() / kit.bought()) + " used")
                            .orElse("not nested"),
                    kit(kit)));
        }
        sections.add(new Section(
                "Hours",
                "Of the first tub, from stated rates; put your own stopwatch in their place (shop.yaml).",
                hours(answer)));
        sections.addAll(BuildSection.of(answer.build()));
        sections.add(new Section("Plies", "Mass on the mould surface, without overlaps.", plies(answer)));
        return Note.page(answer.tub() + ": kit", head, sections, "");
    }

    private static String materials(KitAnswer answer) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr><th>material</th>"
                + "<th class=\"n\">in tub, kg</th><th class=\"n\">cut, kg</th><th class=\"n\">bought, kg</th>"
                + "<th class=\"n\">roll, m</th><th class=\"n\">used</th></tr></thead><tbody>");
        answer.materials()
                .forEach((name, b) -> row(
                        rows,
                        name,
                        fixed(b.inTub(), 2, NARROW_SPACE),
                        fixed(b.used(), 2, NARROW_SPACE),
                        fixed(b.bought(), 2, NARROW_SPACE),
                        fixed(b.length(), 1, NARROW_SPACE),
                        percent(b.utilisation())));
        return rows.append("</tbody></table>").toString();
    }

    private static void row(StringBuilder rows, String first, String... others) {
        rows.append("<tr>").append(Html.tag("td", "", Html.escape(first)));
        for (String each : others) {
            rows.append(Html.tag("td", "n", Html.escape(each)));
        }
        rows.append("</tr>");
    }

    private static String kit(KitNest kit) {
        StringBuilder body = new StringBuilder();
        kit.nest()
                .ifPresent(n ->
                        body.append("<div class=\"chart\">").append(draw(n)).append("</div>"));
        kit.left()
                .forEach(l -> body.append("<p>")
                        .append(Html.escape("Not nested: " + l))
                        .append("</p>"));
        return body.toString();
    }

    /** The roll from above, its length across the page. */
    private static String draw(Nest nest) {
        double scale = Math.min(WIDTH / nest.length(), 260 / nest.roll().width());
        double height = nest.roll().width() * scale;
        Svg svg = new Svg(WIDTH, height + 2, "Patterns on the roll");
        svg.line("zero", 0, 1, nest.length() * scale, 1);
        svg.line("zero", 0, height + 1, nest.length() * scale, height + 1);
        for (Nest.Placement placement : nest.placements()) {
            Outline outline = nest.outline(placement);
            int n = outline.corners();
            double[] x = new double[n + 1];
            double[] y = new double[n + 1];
            double middleX = 0;
            double middleY = 0;
            for (int i = 0; i <= n; i++) {
                x[i] = outline.x()[i % n] * scale;
                y[i] = 1 + height - outline.y()[i % n] * scale;
                middleX += i < n ? x[i] / n : 0;
                middleY += i < n ? y[i] / n : 0;
            }
            svg.path("curve thin s0", x, y);
            if (outline.length() * scale > 60 && outline.width() * scale > 12) {
                svg.text(
                        "note middle",
                        middleX,
                        middleY + 4,
                        nest.pieces().get(placement.piece()).label());
            }
        }
        return svg.done();
    }

    private static String hours(KitAnswer answer) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr><th>step</th><th class=\"n\">h</th>"
                + "<th>source</th></tr></thead><tbody>");
        for (Hours.Step step : answer.hours().steps()) {
            rows.append("<tr>")
                    .append(Html.tag("td", "", Html.escape(step.name())))
                    .append(Html.tag("td", "n", fixed(step.seconds() / 3600, 1, NARROW_SPACE)))
                    .append(Html.tag("td", "", Html.escape(step.source())))
                    .append("</tr>");
        }
        rows.append("</tbody></table><ul>");
        for (int number : KitAnswer.NUMBERS) {
            rows.append("<li>")
                    .append(Html.escape(
                            "Tub " + number + ": " + fixed(answer.hours().work(number) / 3600, 0, NARROW_SPACE)
                                    + " h of work without the autoclave"))
                    .append("</li>");
        }
        return rows.append("</ul>").toString();
    }

    private static String plies(KitAnswer answer) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr><th>ply</th><th class=\"n\">m²</th>"
                + "<th class=\"n\">g</th><th class=\"n\">material</th></tr></thead><tbody>");
        for (PlyMass.Entry entry : answer.mass().plies()) {
            row(
                    rows,
                    entry.ply().name(),
                    fixed(entry.area(), 3, NARROW_SPACE),
                    fixed(1e3 * entry.mass(), 0, NARROW_SPACE),
                    entry.ply().material().name());
        }
        return rows.append("</tbody></table>").toString();
    }
}
