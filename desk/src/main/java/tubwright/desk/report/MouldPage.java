// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import tubwright.desk.answer.MouldAnswer;
import tubwright.desk.answer.MouldWords;
import tubwright.desk.picture.Colour;
import tubwright.desk.picture.DraftPicture;
import tubwright.desk.picture.Palette;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.View.From;
import tubwright.desk.text.Figures;

/** Pieces and moulds as one page: pictures of draft, tables of pieces, bends, cold sizes and tooling. */
public final class MouldPage {
    private MouldPage() {}

    /** The whole page. */
    public static String write(MouldAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "variant", answer.variant());
        Note.cell(cells, "moulds of", answer.material());
        Note.cell(cells, "draft asked for", Figures.fixed(Math.toDegrees(answer.wanted()), 1, "") + "°");
        String head = "<header><div class=\"name\"><p class=\"kicker\">Pieces and moulds</p><h1>"
                + Html.escape(answer.tub()) + "</h1><p>"
                + (answer.allComeOut()
                        ? "Every piece comes out of its mould as one."
                        : "Not every piece comes out of its mould as one: what would help stands below.")
                + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "Draft",
                "The angle between face and pull: "
                        + Figures.fixed(Math.toDegrees(DraftPicture.PLENTY), 0, "") + "° and more is pale, upright red,"
                        + " undercut dark.",
                pictures(answer)));
        List<String> advice = MouldWords.advice(answer);
        sections.add(new Section(
                "What would help",
                "Where the mould reaches over a piece, by how much, and over what height.",
                advice.isEmpty() ? "<p>Nothing is undercut.</p>" : list(advice)));
        sections.add(new Section(
                "Pieces",
                "Areas are those of the outer face; across, across and along the pull. What a face develops into is"
                        + " exact only where it unrolls.",
                table(MouldWords.PIECE_HEAD, MouldWords.pieces(answer, Figures.NARROW_SPACE), 2)
                        + list(answer.pieces().stream()
                                .map(MouldWords::edges)
                                .filter(e -> !e.isEmpty())
                                .toList())));
        sections.add(new Section(
                "Bends",
                "A bend closes when the part cools: open the mould by so much. Of a sandwich it is that of the outer skin"
                        + " alone; friction and thinning are not in it. Inside: radius under the bag.",
                table(MouldWords.BEND_HEAD, MouldWords.bends(answer, Figures.NARROW_SPACE), 4)));
        sections.add(new Section(
                "Cold sizes",
                "Part and mould agree where the part freezes, " + Figures.fixed(answer.change(), 0, "")
                        + " K above the room; cut the mould to this size when cold.",
                answer.factors().isEmpty()
                        ? "<p>Not known: needs the expansion of the laminates.</p>"
                        : table(MouldWords.FACTOR_HEAD, MouldWords.factors(answer, Figures.NARROW_SPACE), 1)));
        sections.add(new Section(
                "Tooling",
                "What has to be made first. Flange and strips: common practice, no source.",
                table(MouldWords.TOOLING_HEAD, MouldWords.tooling(answer, Figures.NARROW_SPACE), 5)));
        return Note.page(answer.tub() + ": pieces and moulds", head, sections, "");
    }

    private static String pictures(MouldAnswer answer) {
        StringBuilder html = new StringBuilder(key());
        for (MouldAnswer.Piece piece : answer.pieces()) {
            if (piece.draft().isEmpty()) {
                continue;
            }
            html.append("<div class=\"pair\">");
            for (From from : List.of(From.THREE_QUARTER_FRONT, From.SIDE)) {
                var picture = DraftPicture.of(piece.face(), piece.draft().orElseThrow(), from, 720);
                String uri = "data:image/png;base64," + Base64.getEncoder().encodeToString(Png.encode(picture.image()));
                String caption = piece.name() + (from == From.SIDE ? " from the left" : "");
                html.append(TwistSections.figure(new Gallery.Plate(picture, uri), "plate", caption, caption));
            }
            html.append("</div>");
        }
        return html.toString();
    }

    /** The ramp with its degrees. */
    private static String key() {
        Svg svg = new Svg(420, 44, "Draft by colour");
        int steps = 60;
        for (int i = 0; i < steps; i++) {
            double level = (i + 0.5) / steps;
            svg.rectangle("", Colour.hex(Palette.ramp(level)), 10 + 400.0 * i / steps, 4, 400.0 / steps + 0.5, 14);
        }
        for (int degrees = 15; degrees >= -5; degrees -= 5) {
            double x = 10 + 400 * DraftPicture.level(Math.toRadians(degrees));
            svg.line("tick", x, 18, x, 24);
            svg.text("figure middle", x, 38, degrees + "°");
        }
        return "<div class=\"chart\">" + svg.done() + "</div>";
    }

    private static String table(List<String> head, List<List<String>> rows, int words) {
        StringBuilder html = new StringBuilder("<table class=\"tight\"><thead><tr>");
        for (int c = 0; c < head.size(); c++) {
            html.append(c < words ? "<th>" : "<th class=\"n\">")
                    .append(Html.escape(head.get(c)))
                    .append("</th>");
        }
        html.append("</tr></thead><tbody>");
        for (List<String> row : rows) {
            html.append("<tr>");
            for (int c = 0; c < row.size(); c++) {
                html.append(Html.tag("td", c < words ? "" : "n", Html.escape(row.get(c))));
            }
            html.append("</tr>");
        }
        return html.append("</tbody></table>").toString();
    }

    private static String list(List<String> lines) {
        StringBuilder html = new StringBuilder("<ul>");
        lines.forEach(line -> html.append(Html.tag("li", "", Html.escape(line))));
        return html.append("</ul>").toString();
    }
}
