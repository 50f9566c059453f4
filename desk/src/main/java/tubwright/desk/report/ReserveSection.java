// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.List;
import tubwright.desk.answer.ReserveTwins;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.Colour;
import tubwright.desk.picture.Palette;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveMap;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.strength.Check;

/** What fails first, by how much it is clear, and what was not checked. */
final class ReserveSection {
    /** Elements farther than this from their strength get no mode and no case on the pictures. */
    static final double FAR = 10;

    private static final int ROWS = 40;

    private ReserveSection() {}

    /** Where a reserve factor stands on the ramp, 0 to 1: its inverse, the share of the strength that is used. */
    static double level(double factor) {
        return factor > 0 ? Math.min(1, 1 / factor) : 1;
    }

    static Section of(RunAnswer answer, Gallery gallery) {
        ReserveTable table = answer.main().reserves();
        if (table.loads().isEmpty()) {
            return new Section("What fails first", "", "");
        }
        List<Reserve> rows = ReserveTwins.joined(table.envelope());
        StringBuilder body = new StringBuilder(pictures(table, gallery));
        body.append(
                "<table><thead><tr><th>reserve</th><th>case</th><th>where</th>"
                        + "<th>what gives way</th><th>ply</th><th>x, y, z, mm</th><th>knock-downs</th><th>what settles it</th></tr></thead><tbody>");
        for (Reserve row : rows.subList(0, Math.min(ROWS, rows.size()))) {
            body.append("<tr>");
            cell(body, ReserveWords.value(row));
            cell(body, row.load());
            cell(body, row.zone());
            cell(body, ReserveWords.what(row));
            cell(body, row.ply());
            cell(body, place(row.place()));
            cell(body, row.knockDown());
            cell(body, ReserveWords.settles(row));
            body.append("</tr>");
        }
        body.append("</tbody></table>");
        if (rows.size() > ROWS) {
            body.append("<p>").append(rows.size() - ROWS).append(" more rows are in answer.json.</p>");
        }
        body.append("<p>").append(escape(table.strengths())).append("</p><ul>");
        table.loads().forEach((load, source) -> item(body, load + ": " + source));
        body.append("</ul><ul class=\"warnings\">");
        for (Check.NotChecked each : table.notChecked()) {
            item(body, each.toString());
        }
        body.append("</ul>");
        return new Section("What fails first", ReserveWords.ASIDE, body.toString());
    }

    /** The lowest factor on the tub, which mode and which case it is. */
    private static String pictures(ReserveTable table, Gallery gallery) {
        if (table.map().isEmpty()) {
            return "";
        }
        ReserveMap map = table.map().get();
        StringBuilder body = new StringBuilder();
        gallery.plate("reserve")
                .ifPresent(p -> body.append(TwistSections.figure(
                        p,
                        "plate",
                        "Lowest reserve factor on the tub",
                        "Lowest reserve factor of each element over all load cases: fibres and sandwich.")));
        body.append(scale());
        gallery.plate("reserve cut")
                .ifPresent(p -> body.append(
                        TwistSections.figure(p, "plate", "Cut along the middle", "Right half with the walls.")));
        body.append("<div class=\"pair\">");
        gallery.plate("reserve mode")
                .ifPresent(p -> body.append(MakeSections.labelled(p, "Modes by number", numbered(map.modes()))));
        gallery.plate("reserve case")
                .ifPresent(p -> body.append(MakeSections.labelled(p, "Cases by number", numbered(map.loads()))));
        return body.append("</div><p>Plain where the factor is above ten.</p>").toString();
    }

    private static String numbered(List<String> names) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < names.size(); i++) {
            text.append(i == 0 ? "" : ", ").append(i + 1).append(' ').append(names.get(i));
        }
        return text.toString();
    }

    static String scale() {
        double left = 22;
        double width = 450;
        Svg svg = new Svg(780, 46, "Colour scale of the reserve factor");
        int steps = 115;
        for (int i = 0; i < steps; i++) {
            String fill = Colour.hex(Palette.ramp((i + 0.5) / steps));
            svg.rectangle("swatch", fill, left + width * i / steps, 6, width / steps + 0.4, 12);
        }
        for (double tick : new double[] {10, 5, 3, 2, 1.5, 1.2, 1}) {
            double x = left + width * level(tick);
            svg.line("tick", x, 18, x, 23);
            svg.text(
                    "figure middle",
                    x,
                    37,
                    tick < 2 && tick > 1 ? fixed(tick, 1, NARROW_SPACE) : fixed(tick, 0, NARROW_SPACE));
        }
        svg.text("axis", left + width + 18, 17, "reserve factor");
        svg.text("axis", left + width + 18, 36, "pale: far from its strength; deepest: 1 or less");
        return "<div class=\"scale\">" + svg.done() + "</div>";
    }

    private static String place(double[] x) {
        return fixed(1000 * x[0], 0, NARROW_SPACE) + ", " + fixed(1000 * x[1], 0, NARROW_SPACE) + ", "
                + fixed(1000 * x[2], 0, NARROW_SPACE);
    }

    private static void cell(StringBuilder body, String text) {
        body.append("<td>").append(escape(text)).append("</td>");
    }

    private static void item(StringBuilder body, String text) {
        body.append("<li>").append(escape(text)).append("</li>");
    }
}
