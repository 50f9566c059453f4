// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.StudyAnswer;
import tubwright.fleet.Reading;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.plan.Aim;
import tubwright.fleet.plan.Variation;

/** A study as one page. */
public final class StudyPage {
    private static final int MOST_ROWS = 200;

    private StudyPage() {}

    /** The whole page. */
    public static String write(StudyAnswer answer) {
        String head = "<header><div class=\"name\"><p class=\"kicker\">Study: "
                + Html.escape(answer.plan().name())
                + "</p><h1>" + Html.escape(answer.tub()) + "</h1><p>"
                + Html.escape(answer.plan().text().about().orElse("")) + "</p></div></header>\n";
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "How far layups scatter",
                "Every draw is a layup of its own, answered by a reduced model whose bounds are proved; materials are drawn"
                        + " for the whole tub, angles for every ply.",
                LayupDrawing.of(answer)));
        sections.add(new Section(
                "What was found",
                StudyPanels.suits(answer)
                        ? "Lines join designs that were computed whole. Thin lines are laid up anew at every point; one"
                                + " without points, close below a lightest mass, is the mass that no layup can beat."
                        : "Every design is a line across what was varied and what was read.",
                answer.plan().variations().isEmpty()
                        ? ""
                        : StudyPanels.suits(answer) ? StudyPanels.draw(answer) : ParallelAxes.draw(answer)));
        sections.add(new Section(
                "How sure to meet the targets",
                "Share of the designs drawn, with the interval that holds the truth in 95 of 100 studies.",
                chances(answer)));
        sections.add(new Section(
                "What matters",
                "Share of the variance each explains alone, and with all others; plus or minus one standard error.",
                indices(answer)));
        sections.add(new Section(
                "Per step",
                "Slope at the middle, from a surface through all points; how far that surface is off is told by leaving"
                        + " each point out in turn.",
                slopes(answer)));
        sections.add(new Section(
                "What nothing beats", "Every one of these designs was computed whole, none guessed.", front(answer)));
        sections.add(new Section("What could not be", "Designs that are no tub, by reason.", reasons(answer)));
        sections.add(new Section("The designs", "All of them are in rows.csv.", table(answer)));
        return Note.page(answer.tub() + ": " + answer.plan().name(), head, sections, "");
    }

    private static String cell(double value) {
        return "<td class=\"n\">" + (Double.isFinite(value) ? significant(value, 4, NARROW_SPACE) : "–") + "</td>";
    }

    private static String head(List<String> names) {
        StringBuilder row = new StringBuilder("<table class=\"tight\"><thead><tr>");
        names.forEach(n -> row.append("<th>").append(Html.escape(n)).append("</th>"));
        return row.append("</tr></thead><tbody>").toString();
    }

    private static Reading reading(StudyAnswer answer, String text) {
        return answer.plan().readings().stream()
                .filter(r -> r.text().equals(text))
                .findFirst()
                .orElseThrow();
    }

    private static String chances(StudyAnswer answer) {
        StringBuilder rows = new StringBuilder();
        for (Findings.OfVariant variant : answer.findings().variants()) {
            for (Findings.Chance chance : variant.chances()) {
                Reading reading = reading(answer, chance.reading());
                rows.append("<tr><td>").append(Html.escape(variant.variant())).append("</td><td>");
                rows.append(Html.escape(reading.text() + (chance.atLeast() ? " at least " : " at most ")
                        + significant(reading.shown(chance.limit()), 3, NARROW_SPACE) + " "
                        + reading.kind().unit()));
                rows.append("</td><td>").append(percent(chance.met().share())).append("</td><td>");
                rows.append(percent(chance.met().low()))
                        .append(" to ")
                        .append(percent(chance.met().high()));
                rows.append("</td><td>").append(suffices(chance.suffices())).append("</td></tr>");
            }
        }
        return rows.isEmpty()
                ? ""
                : head(List.of("variant", "target", "met", "between", "scatter that would suffice")) + rows
                        + "</tbody></table>";
    }

    private static String suffices(double factor) {
        return Double.isFinite(factor)
                ? factor == 0 ? "none: missed as designed" : significant(factor, 2, NARROW_SPACE) + " of the present"
                : "any";
    }

    private static String indices(StudyAnswer answer) {
        StringBuilder rows = new StringBuilder();
        List<Variation> variations = answer.plan().variations();
        for (Findings.OfVariant variant : answer.findings().variants()) {
            for (Findings.Indices indices : variant.indices()) {
                for (int d = 0; d < variations.size(); d++) {
                    rows.append("<tr><td>")
                            .append(Html.escape(indices.reading()))
                            .append("</td><td>");
                    rows.append(Html.escape(variations.get(d).name())).append("</td>");
                    rows.append(share(indices.of().first()[d], indices.of().firstError()[d]));
                    rows.append(share(indices.of().total()[d], indices.of().totalError()[d]))
                            .append("</tr>");
                }
            }
        }
        return rows.isEmpty()
                ? ""
                : head(List.of("reading", "varied", "alone", "with others")) + rows + "</tbody></table>";
    }

    private static String share(double value, double error) {
        return String.format(java.util.Locale.ROOT, "<td class=\"n\">%.3f ± %.3f</td>", value, error);
    }

    private static String slopes(StudyAnswer answer) {
        StringBuilder rows = new StringBuilder();
        List<Variation> variations = answer.plan().variations();
        for (Findings.OfVariant variant : answer.findings().variants()) {
            for (Findings.Between between : variant.between()) {
                Reading reading = reading(answer, between.reading());
                if (between.error() == 0 && Arrays.stream(between.slopes()).allMatch(s -> s == 0)) {
                    continue; // the same everywhere, as the plies of a tub of sheet
                }
                rows.append("<tr><td>").append(Html.escape(variant.variant())).append("</td><td>");
                rows.append(Html.escape(reading.heading())).append("</td>");
                for (int d = 0; d < variations.size(); d++) {
                    double range =
                            variations.get(d).number(1) - variations.get(d).number(0);
                    rows.append(cell(reading.shown(between.slopes()[d]) / range));
                }
                rows.append(cell(reading.shown(between.error())));
                rows.append("<td class=\"n\">")
                        .append(percent(Math.max(0, between.explained())))
                        .append("</td></tr>");
            }
        }
        List<String> names = new ArrayList<>(List.of("variant", "reading"));
        variations.forEach(v -> names.add("per " + (v.unit().isEmpty() ? "one" : v.unit()) + " of " + v.name()));
        names.addAll(List.of("off by", "explained"));
        return rows.isEmpty() ? "" : head(names) + rows + "</tbody></table>";
    }

    private static String front(StudyAnswer answer) {
        StringBuilder rows = new StringBuilder();
        List<Aim> aims = answer.plan().aims();
        List<Variation> variations = answer.plan().variations();
        for (Findings.OfVariant variant : answer.findings().variants()) {
            for (int number : variant.front()) {
                Findings.OfPoint point = variant.points().get(number);
                rows.append("<tr><td>").append(Html.escape(variant.variant())).append("</td><td class=\"n\">");
                rows.append(number + 1).append("</td>");
                for (int d = 0; d < variations.size(); d++) {
                    rows.append("<td class=\"n\">")
                            .append(Html.escape(variations.get(d).text(point.shares()[d])))
                            .append("</td>");
                }
                for (int a = 0; a < aims.size(); a++) {
                    Reading reading = reading(answer, aims.get(a).reading());
                    rows.append(cell(reading.shown(point.value(reading.text()))));
                    rows.append(point.added() ? cell(reading.shown(point.promised()[a])) : "<td></td>");
                }
                rows.append("</tr>");
            }
        }
        List<String> names = new ArrayList<>(List.of("variant", "point"));
        variations.forEach(v -> names.add(v.name()));
        aims.forEach(a -> names.addAll(List.of(reading(answer, a.reading()).heading(), "guessed before")));
        return rows.isEmpty() ? "" : head(names) + rows + "</tbody></table>";
    }

    private static String reasons(StudyAnswer answer) {
        Map<String, Integer> reasons = answer.reasons();
        StringBuilder rows = new StringBuilder();
        reasons.forEach((why, count) -> rows.append("<tr><td class=\"n\">")
                .append(count)
                .append("</td><td>")
                .append(Html.escape(why))
                .append("</td></tr>"));
        return rows.isEmpty() ? "" : head(List.of("designs", "why")) + rows + "</tbody></table>";
    }

    private static String table(StudyAnswer answer) {
        if (answer.plan().variations().isEmpty()) {
            return "";
        }
        List<Variation> variations = answer.plan().variations();
        List<StudyAnswer.Column> columns = answer.columns();
        List<String> names = new ArrayList<>(List.of("variant", "point"));
        variations.forEach(v -> names.add(StudyAnswer.heading(v)));
        columns.forEach(c -> names.add(c.heading()));
        StringBuilder rows = new StringBuilder("<div class=\"wide\">").append(head(names));
        for (int v = 0; v < answer.findings().variants().size(); v++) {
            Findings.OfVariant variant = answer.findings().variants().get(v);
            for (int p = 0; p < Math.min(MOST_ROWS, variant.points().size()); p++) {
                rows.append("<tr><td>").append(Html.escape(variant.variant())).append("</td><td class=\"n\">");
                rows.append(p + 1).append("</td>");
                for (int d = 0; d < variations.size(); d++) {
                    double share = variant.points().get(p).shares()[d];
                    rows.append(
                            variations.get(d).words().isPresent()
                                    ? "<td>" + Html.escape(variations.get(d).text(share)) + "</td>"
                                    : cell(variations.get(d).number(share)));
                }
                for (StudyAnswer.Column column : columns) {
                    rows.append(cell(column.byVariant().get(v)[p]));
                }
                rows.append("</tr>");
            }
        }
        return rows.append("</tbody></table></div>").toString();
    }
}
