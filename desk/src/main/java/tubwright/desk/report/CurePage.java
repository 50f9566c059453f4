// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.answer.CureWords;
import tubwright.engine.make.cure.CureCheck;
import tubwright.engine.make.cure.CureHistory;
import tubwright.engine.make.cure.CureHistory.Moment;
import tubwright.engine.make.cure.LaminateCure;
import tubwright.engine.make.cure.LaminateCure.Stage;

/** Cures as one page: table, a drawing for each cure of each laminate, bends, moulds. */
public final class CurePage {
    private static final double WIDTH = 860;
    private static final double LEFT = 52;
    private static final double RIGHT = 810;
    private static final double TOP = 26;
    private static final double BOTTOM = 250;

    private CurePage() {}

    /** The whole page. */
    public static String write(CureAnswer answer) {
        String head = "<header><div class=\"name\"><p class=\"kicker\">Cure</p><h1>" + Html.escape(answer.tub())
                + "</h1><p>" + Html.escape(CureWords.shop(answer.shop())) + "</p></div><dl class=\"block\">"
                + cells(answer)
                + "</dl></header>\n";
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "Cure by cure",
                "Every different laminate, thickest first. Heat goes through the thickness only. In brackets: proves"
                        + " nothing, since another resin stands in or a limit is missing.",
                table(answer)));
        for (CureAnswer.Place place : answer.places()) {
            sections.add(new Section(
                    place.where().getFirst(),
                    fixed(1e3 * place.cure().thickness(), 1, NARROW_SPACE) + " mm",
                    "<p class=\"foot\">" + Html.escape(place.code()) + "</p>" + elsewhere(place)
                            + place(place.cure())));
        }
        sections.add(new Section(
                "Bends",
                "By how much each bend of the skin closes, so by how much to open the mould. Friction on the mould and"
                        + " thinning are not in it; on sandwich it is that of the outer skin alone.",
                bends(answer)));
        sections.add(new Section(
                "Moulds",
                "Cold length of a mould for the whole tub, by what it is made of: part and mould agree where the part"
                        + " freezes.",
                moulds(answer)));
        return Note.page(answer.tub() + ": cure", head, sections, "");
    }

    private static String cells(CureAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "checks met", Long.toString(answer.count(CureCheck.Verdict.MET)));
        Note.cell(cells, "missed", Long.toString(answer.count(CureCheck.Verdict.MISSED)));
        Note.cell(cells, "not checked", Long.toString(answer.count(CureCheck.Verdict.NOT_CHECKED)));
        return cells.toString();
    }

    private static String table(CureAnswer answer) {
        StringBuilder rows =
                new StringBuilder("<table class=\"tight\"><thead><tr><th>laminate</th><th class=\"n\">mm</th>"
                        + "<th>cure</th><th>cycle</th><th class=\"n\">hours</th><th class=\"n\">peak</th>"
                        + "<th class=\"n\">degree</th><th>missed</th></tr></thead><tbody>");
        for (CureAnswer.Place place : answer.places()) {
            boolean first = true;
            for (Stage stage : place.cure().stages()) {
                String name = place.where().getFirst();
                rows.append("<tr>")
                        .append(Html.tag("td", "", first ? Html.escape(name) : ""))
                        .append(Html.tag(
                                "td", "n", first ? fixed(1e3 * place.cure().thickness(), 1, NARROW_SPACE) : ""))
                        .append(Html.tag("td", "", Html.escape(stage.title())))
                        .append(Html.tag("td", "", Html.escape(stage.cycle().name())))
                        .append(Html.tag(
                                "td",
                                "n",
                                stage.history()
                                        .map(h -> fixed(h.stoppedAt() / 3600, 1, NARROW_SPACE))
                                        .orElse("")))
                        .append(Html.tag("td", "n", Html.escape(of(stage, CureCheck.Subject.PEAK))))
                        .append(Html.tag("td", "n", Html.escape(of(stage, CureCheck.Subject.DEGREE))))
                        .append(Html.tag("td", "", Html.escape(missed(stage))))
                        .append("</tr>");
                first = false;
            }
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String missed(Stage stage) {
        return stage.checks().stream()
                .filter(c -> c.verdict() == CureCheck.Verdict.MISSED)
                .map(c -> c.subject().title())
                .collect(Collectors.joining(", "));
    }

    private static String of(Stage stage, CureCheck.Subject subject) {
        return stage.checks().stream()
                .filter(c -> c.subject() == subject)
                .findFirst()
                .map(CureWords::told)
                .orElse("");
    }

    private static String elsewhere(CureAnswer.Place place) {
        List<String> others = place.where().subList(1, place.where().size());
        return others.isEmpty()
                ? ""
                : "<p class=\"foot\">" + Html.escape("also: " + String.join(", ", others)) + "</p>";
    }

    private static String place(LaminateCure cure) {
        StringBuilder body = new StringBuilder();
        cure.missing()
                .forEach(m -> body.append("<p>")
                        .append(Html.escape("Not checked: needs " + m))
                        .append("</p>"));
        for (Stage stage : cure.stages()) {
            body.append("<h3>").append(Html.escape(stage.title())).append("</h3>");
            stage.history().ifPresent(h -> body.append(draw(stage, h)));
            body.append("<ul class=\"targets\">");
            for (CureCheck check : stage.checks()) {
                String kind = switch (check.verdict()) {
                    case MET -> "met";
                    case MISSED -> "missed";
                    case NOT_CHECKED -> "close";
                };
                String amounts =
                        CureWords.value(check) + (check.limit().isPresent() ? ", " + CureWords.limit(check) : "");
                body.append("<li class=\"")
                        .append(kind)
                        .append("\"><b>")
                        .append(check.verdict().word())
                        .append("</b> ")
                        .append(Html.escape(check.subject().title()
                                + (amounts.isEmpty() ? "" : " " + amounts)
                                + (check.words().isEmpty() ? "" : "; " + check.words())))
                        .append("</li>");
            }
            body.append("</ul>");
        }
        return body.toString();
    }

    /** Air, leading and lagging place, and the least degree of cure, against time. */
    private static String draw(Stage stage, CureHistory history) {
        double hottest = 20;
        for (Moment moment : history.moments()) {
            hottest = Math.max(hottest, Math.max(moment.air(), history.leading(moment)) - 273.15);
        }
        Axis across = Axis.exact(0, history.stoppedAt() / 3600, LEFT, RIGHT);
        Axis up = Axis.round(0, hottest, BOTTOM, TOP, 5);
        Axis degree = Axis.exact(0, 1, BOTTOM, TOP);
        Svg svg = new Svg(WIDTH, BOTTOM + 44, "Temperatures and degree of cure, " + stage.title());
        for (double tick : up.ticks(5)) {
            svg.line(tick == 0 ? "zero" : "grid", LEFT, up.at(tick), RIGHT, up.at(tick));
            svg.text("figure end", LEFT - 8, up.at(tick) + 4, fixed(tick, 0, ""));
        }
        for (int fifth = 0; fifth <= 5; fifth++) {
            svg.text("figure", RIGHT + 8, degree.at(fifth / 5.0) + 4, fixed(fifth / 5.0, 1, ""));
        }
        for (double tick : across.ticks(8)) {
            svg.line("tick", across.at(tick), BOTTOM, across.at(tick), BOTTOM + 5);
            svg.text("figure middle", across.at(tick), BOTTOM + 19, fixed(tick, across.decimals(8), ""));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 38, "hours");
        svg.text("axis", LEFT - 44, TOP - 10, "°C");
        svg.text("axis end", RIGHT + 44, TOP - 10, "degree of cure");
        curve(svg, "curve thin s3", history, across, up, m -> m.air() - 273.15);
        curve(svg, "curve s1", history, across, up, m -> history.leading(m) - 273.15);
        curve(svg, "curve s0", history, across, up, m -> history.lagging(m) - 273.15);
        curve(svg, "curve thin s2", history, across, degree, history::leastDegree);
        svg.text("name s1", LEFT + 10, TOP + 12, "leading place");
        svg.text("name s0", LEFT + 10, TOP + 28, "lagging place");
        svg.text("name s3", LEFT + 10, TOP + 44, "air");
        svg.text("name s2", LEFT + 10, TOP + 60, "least degree of cure");
        return "<div class=\"chart\">" + svg.done() + "</div>";
    }

    private static void curve(
            Svg svg, String kind, CureHistory history, Axis across, Axis up, ToDoubleFunction<Moment> value) {
        double[] x = new double[history.moments().size()];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = across.at(history.moments().get(i).time() / 3600);
            y[i] = up.at(value.applyAsDouble(history.moments().get(i)));
        }
        svg.path(kind, x, y);
    }

    private static String bends(CureAnswer answer) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr><th>between</th><th>zone</th>"
                + "<th class=\"n\">from, mm</th><th class=\"n\">to, mm</th><th class=\"n\">angle</th>"
                + "<th class=\"n\">closes by</th></tr></thead><tbody>");
        for (CureAnswer.Bend bend : answer.bends()) {
            rows.append("<tr>")
                    .append(Html.tag("td", "", Html.escape(bend.between())))
                    .append(Html.tag("td", "", Html.escape(bend.zone())))
                    .append(Html.tag("td", "n", fixed(1e3 * bend.from(), 0, NARROW_SPACE)))
                    .append(Html.tag("td", "n", fixed(1e3 * bend.to(), 0, NARROW_SPACE)))
                    .append(Html.tag(
                            "td",
                            "n",
                            fixed(Math.toDegrees(bend.least()), 1, "") + " to "
                                    + fixed(Math.toDegrees(bend.most()), 1, "") + "°"))
                    .append(Html.tag(
                            "td",
                            "n",
                            Double.isNaN(bend.mostClosing())
                                    ? CureWords.degrees(bend.mostClosing())
                                    : CureWords.degrees(bend.leastClosing()) + " to "
                                            + CureWords.degrees(bend.mostClosing())))
                    .append("</tr>");
        }
        rows.append("</tbody></table>");
        answer.places().stream()
                .flatMap(p -> p.cure().springIn().stream())
                .map(LaminateCure.Bend::source)
                .distinct()
                .forEach(s ->
                        rows.append("<p class=\"foot\">").append(Html.escape(s)).append("</p>"));
        return rows.toString();
    }

    private static String moulds(CureAnswer answer) {
        if (answer.moulds().isEmpty()) {
            return "<p>" + Html.escape("Not known: needs the expansion of the laminates.") + "</p>";
        }
        StringBuilder rows =
                new StringBuilder("<table class=\"tight\"><thead><tr><th>mould</th><th class=\"n\">1e-6/K</th>"
                        + "<th class=\"n\">cold over part</th><th class=\"n\">part, mm</th><th class=\"n\">cold, mm</th>"
                        + "<th>source</th></tr></thead><tbody>");
        for (CureAnswer.Mould mould : answer.moulds()) {
            rows.append("<tr>")
                    .append(Html.tag("td", "", Html.escape(mould.description())))
                    .append(Html.tag("td", "n", fixed(1e6 * mould.expansion(), 1, "")))
                    .append(Html.tag("td", "n", fixed(mould.factor(), 5, "")))
                    .append(Html.tag("td", "n", fixed(1e3 * mould.part(), 1, NARROW_SPACE)))
                    .append(Html.tag("td", "n", fixed(1e3 * mould.part() * mould.factor(), 1, NARROW_SPACE)))
                    .append(Html.tag("td", "", Html.escape(mould.source())))
                    .append("</tr>");
        }
        return rows.append("</tbody></table>").toString();
    }
}
