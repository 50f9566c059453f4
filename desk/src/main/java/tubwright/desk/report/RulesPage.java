// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.RulesAnswer;
import tubwright.engine.safety.rules.Finding;
import tubwright.engine.safety.rules.PanelTest;

/** A tub held against rules as one page of HTML. */
public final class RulesPage {
    private RulesPage() {}

    /** The whole page. */
    public static String write(RulesAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "mesh", String.format(Locale.ROOT, "%.0f mm", 1e3 * answer.meshSize()));
        String head = "<header><div class=\"name\"><p class=\"kicker\">Rules</p><h1>" + escape(answer.tub())
                + "</h1><p>"
                + escape("Held against rules, clause by clause: met, not met, or not checked and what is needed.")
                + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
        List<Section> sections = new ArrayList<>(sections(answer));
        sections.add(new Section("What met means", "", "<p>" + escape(RulesAnswer.ASIDE) + "</p>"));
        return Note.page(answer.tub() + ": rules", head, sections, "");
    }

    /** Clauses and test panels, set by set. */
    static List<Section> sections(RulesAnswer answer) {
        List<Section> sections = new ArrayList<>();
        for (RulesAnswer.Held held : answer.sets()) {
            sections.add(new Section(
                    held.set().name(),
                    held.set().source() + ". " + held.set().about(),
                    "<p>" + escape(held.count()) + "</p>" + clauses(held)));
            if (!held.panels().isEmpty()) {
                sections.add(new Section(
                        "Test panels, foretold",
                        "275 mm wide on a span of 400 mm, bent along the laminate. The range is that of 38 measured student"
                                + " panels about such predictions.",
                        panels(held)));
            }
        }
        return sections;
    }

    private static String clauses(RulesAnswer.Held held) {
        StringBuilder rows =
                new StringBuilder("<table class=\"tight\"><thead><tr><th>clause</th><th>asks</th><th>found</th>"
                        + "<th class=\"n\">reserve</th><th>comes to</th></tr></thead><tbody>");
        for (Finding f : held.findings()) {
            rows.append("<tr><td>").append(escape(f.clause().number())).append("</td><td>");
            rows.append(escape(
                    f.clause().says() + " [" + f.clause().provenance().trust().mark() + "]"));
            rows.append("</td><td>").append(escape(f.found())).append("</td><td class=\"n\">");
            rows.append(Double.isFinite(f.reserve()) ? String.format(Locale.ROOT, "%.2f", f.reserve()) : "–")
                    .append("</td><td>")
                    .append(escape(RulesAnswer.comesTo(f)))
                    .append("</td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String panels(RulesAnswer.Held held) {
        StringBuilder rows =
                new StringBuilder("<table class=\"tight\"><thead><tr><th>zone</th><th class=\"n\">N/mm</th>"
                        + "<th class=\"n\">eight of ten</th><th class=\"n\">core shear</th><th class=\"n\">gives way, kN</th>"
                        + "<th>how, and what comes next</th></tr></thead><tbody>");
        for (PanelTest p : held.panels()) {
            rows.append("<tr><td>").append(escape(p.laminate()));
            rows.append(String.format(
                    Locale.ROOT,
                    "</td><td class=\"n\">%.0f</td><td class=\"n\">%.0f – %.0f</td><td class=\"n\">%.0f %%</td><td class=\"n\">%s"
                            + "</td><td>",
                    1e-3 * p.stiffness(),
                    1e-3 * p.low(),
                    1e-3 * p.high(),
                    100 * p.shearShare(),
                    p.ways().isEmpty()
                            ? "–"
                            : String.format(
                                    Locale.ROOT,
                                    "%.1f",
                                    1e-3 * p.ways().getFirst().load())));
            rows.append(escape(ways(p))).append("</td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String ways(PanelTest p) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < Math.min(3, p.ways().size()); i++) {
            words.add((i == 0
                            ? ""
                            : String.format(
                                    Locale.ROOT,
                                    "%.1f kN ",
                                    1e-3 * p.ways().get(i).load()))
                    + p.ways().get(i).mode());
        }
        return String.join("; ", words);
    }
}
