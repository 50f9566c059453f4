// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.CrushAnswer;
import tubwright.desk.answer.CrushWords;
import tubwright.engine.safety.crush.CrushSection;
import tubwright.engine.safety.crush.CrushVerdicts;

/** Impacts as one page of HTML: force over stroke, limit by limit, what the values come from. */
public final class CrushPage {
    private CrushPage() {}

    /** The whole page. */
    public static String write(CrushAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        String head =
                "<header><div class=\"name\"><p class=\"kicker\">Crush</p><h1>" + escape(answer.tub()) + "</h1><p>"
                        + escape("What gives way before the driver does, straight on, in one dimension.")
                        + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
        List<Section> sections = new ArrayList<>(sections(answer));
        sections.add(new Section("What this is not", "", "<p>" + escape(CrushAnswer.ASIDE) + "</p>"));
        return Note.page(answer.tub() + ": crush", head, sections, "");
    }

    /** One section a structure. */
    static List<Section> sections(CrushAnswer answer) {
        return answer.structures().stream()
                .map(each -> new Section(each.structure().name(), CrushWords.impact(each.structure()), body(each)))
                .toList();
    }

    private static String body(CrushAnswer.Each each) {
        StringBuilder body = new StringBuilder();
        each.whole().ifPresent(a -> {
            body.append("<p>").append(escape(CrushWords.outcome(a))).append(".</p>");
            body.append("<figure>").append(CrushChart.draw(each, a)).append("</figure>");
            a.notes().forEach(n -> body.append("<p>").append(escape(n)).append(".</p>"));
        });
        each.structure()
                .missing()
                .forEach(m -> body.append("<p>").append(escape(m.toString())).append("</p>"));
        body.append(lines(each.lines()));
        each.apart().ifPresent(a -> {
            body.append("<h3>If parts break off</h3><p>");
            body.append(escape(String.join(" ", CrushWords.apart(each.structure(), a))))
                    .append("</p>");
        });
        body.append("<h3>How it crushes</h3>").append(materials(each));
        if (!each.structure().onto().isEmpty()) {
            body.append("<p>")
                    .append(escape("Its force goes into " + each.structure().onto() + "; case \""
                            + each.structure().name() + " crush\" of the strength run carries it with its margin."))
                    .append("</p>");
        }
        return body.toString();
    }

    /** Limit by limit. */
    static String lines(List<CrushVerdicts.Line> lines) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr><th>limit</th><th>found</th>"
                + "<th class=\"n\">reserve</th><th>comes to</th></tr></thead><tbody>");
        for (CrushVerdicts.Line line : lines) {
            rows.append("<tr><td>").append(escape(line.limit())).append("</td><td>");
            rows.append(escape(line.found())).append("</td><td class=\"n\">");
            rows.append(Double.isFinite(line.reserve()) ? String.format(Locale.ROOT, "%.2f", line.reserve()) : "–")
                    .append("</td><td>")
                    .append(escape(
                            line.needs().isEmpty()
                                    ? line.verdict().words()
                                    : line.verdict().words() + ": needs " + String.join("; ", line.needs())))
                    .append("</td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String materials(CrushAnswer.Each each) {
        StringBuilder rows = new StringBuilder(
                "<table class=\"tight\"><thead><tr><th>section</th><th class=\"n\">long, mm</th>"
                        + "<th class=\"n\">stroke, mm</th><th class=\"n\">force, kN</th><th>crushes as</th></tr></thead><tbody>");
        for (CrushSection s : each.structure().sections()) {
            rows.append("<tr><td>")
                    .append(escape(s.name()))
                    .append(String.format(
                            Locale.ROOT,
                            "</td><td class=\"n\">%.0f</td><td class=\"n\">%.0f</td><td class=\"n\">%.1f – %.1f</td><td>",
                            1e3 * s.length(),
                            1e3 * s.stroke(),
                            1e-3 * s.force(0),
                            1e-3 * s.force(1)))
                    .append(escape(CrushWords.section(s)))
                    .append("</td></tr>");
        }
        return rows.append("</tbody></table><p>")
                .append(escape(
                        "Start of the crush: " + each.structure().trigger().source() + "."))
                .append("</p>")
                .toString();
    }
}
