// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.List;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.strength.Check;

/** What fails first, by how much it is clear, and what was not checked. */
final class ReserveSection {
    private static final int ROWS = 40;

    private ReserveSection() {}

    static Section of(RunAnswer answer) {
        ReserveTable table = answer.main().reserves();
        if (table.loads().isEmpty()) {
            return new Section("What fails first", "", "");
        }
        List<Reserve> rows = table.envelope();
        StringBuilder body = new StringBuilder("<table><thead><tr><th>reserve</th><th>case</th><th>where</th>"
                + "<th>what gives way</th><th>ply</th><th>x, y, z, mm</th><th>knock-downs</th></tr></thead><tbody>");
        for (Reserve row : rows.subList(0, Math.min(ROWS, rows.size()))) {
            body.append("<tr>");
            cell(body, ReserveWords.value(row));
            cell(body, row.load());
            cell(body, row.zone());
            cell(body, ReserveWords.what(row));
            cell(body, row.ply());
            cell(body, place(row.place()));
            cell(body, row.knockDown());
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
