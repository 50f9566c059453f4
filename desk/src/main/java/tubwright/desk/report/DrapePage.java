// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.answer.DrapeAnswer.degrees;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.TubPicture;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.lay.DrapedPly;

/** Laid plies as one page: pictures of shear, a table, every pattern drawn. */
public final class DrapePage {
    /** Plies shown each on a picture of its own. */
    private static final int SHOWN = 6;

    private static final double CARD = 300;

    private DrapePage() {}

    /** The whole page. */
    public static String write(DrapeAnswer answer) {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "variant", answer.variant());
        Note.cell(
                cells,
                "plies, films, cores",
                Integer.toString(answer.laid().plies().size()));
        Note.cell(cells, "pass a limit", Integer.toString(answer.passing().size()));
        String head = "<header><div class=\"name\"><p class=\"kicker\">Plies as they lie</p><h1>"
                + Html.escape(answer.tub()) + "</h1><p>" + Html.escape(answer.cost(NARROW_SPACE))
                + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "Shear",
                "How far warp and weft are from square, over the lock: the worst ply at every place, then the worst plies"
                        + " one by one.",
                pictures(answer)));
        sections.add(new Section("What would help", "Where a limit is passed.", advice(answer)));
        sections.add(new Section(
                "Ply by ply",
                "In the order of laying. Turn: how far fibres lie from their nominal direction. Flat: along the warp, the"
                        + " fibres or the ribbon, by across.",
                table(answer)));
        sections.add(new Section(
                "Limits",
                "Material data; a placeholder is marked as one. Give \"shear warning\", \"locking angle\", \"steering"
                        + " strain\" and \"tape width\" of your own materials.",
                list(answer.limits())));
        sections.add(new Section(
                "Patterns",
                "Seen from the side they are laid from, warp across the page. Arrow: warp, fibres or ribbon; short line:"
                        + " the tub's reference direction where laying starts.",
                patterns(answer)));
        return Note.page(answer.tub() + ": plies as they lie", head, sections, "");
    }

    private static String pictures(DrapeAnswer answer) {
        TubPicture painter = new TubPicture(answer.laid().mesh());
        int elements = answer.laid().mesh().elementCount();
        double[] worst = new double[elements];
        for (DrapedPly each : answer.laid().plies()) {
            levels(each, worst);
        }
        StringBuilder html = new StringBuilder();
        html.append(figure(painter.levels(worst, From.THREE_QUARTER_FRONT, false, 1160), "worst ply at every place"));
        html.append(figure(painter.levels(worst, From.INTO_THE_CUT, true, 1160), "the same, looked at from inside"));
        html.append("<div class=\"pair\">");
        answer.laid().plies().stream()
                .filter(p -> p.ply().cloth() && p.figures().area() > 0.01)
                .sorted(Comparator.comparingDouble(
                        p -> -(p.figures().locked() + p.figures().bare())
                                - 1e-3 * p.figures().largestShear()))
                .limit(SHOWN)
                .forEach(p -> {
                    double[] own = new double[elements];
                    levels(p, own);
                    html.append(figure(
                            painter.levels(own, From.THREE_QUARTER_FRONT, false, 720),
                            p.ply().name() + ": up to " + degrees(p.figures().largestShear())));
                });
        return html.append("</div>").toString();
    }

    private static void levels(DrapedPly ply, double[] levels) {
        if (!ply.ply().cloth()) {
            return;
        }
        for (int i = 0; i < ply.ply().elements().length; i++) {
            double shear = Double.isNaN(ply.fibres().warp()[i])
                    ? ply.limits().locking()
                    : Math.abs(ply.fibres().shear(i));
            int e = ply.ply().elements()[i];
            levels[e] = Math.max(levels[e], shear / ply.limits().locking());
        }
    }

    private static String figure(Picture picture, String caption) {
        String uri = "data:image/png;base64," + Base64.getEncoder().encodeToString(Png.encode(picture.image()));
        return TwistSections.figure(new Gallery.Plate(picture, uri), "plate", caption, caption);
    }

    private static String advice(DrapeAnswer answer) {
        return answer.advice().isEmpty() ? "<p>No ply passes a limit of its material.</p>" : list(answer.advice());
    }

    private static String list(List<String> lines) {
        StringBuilder html = new StringBuilder("<ul>");
        lines.forEach(line -> html.append("<li>").append(Html.escape(line)).append("</li>"));
        return html.append("</ul>").toString();
    }

    private static String table(DrapeAnswer answer) {
        StringBuilder rows = new StringBuilder(
                "<table class=\"tight\"><thead><tr><th>ply</th><th>of</th>"
                        + "<th class=\"n\">m²</th><th class=\"n\">shear</th><th class=\"n\">care cm²</th>"
                        + "<th class=\"n\">locked cm²</th><th class=\"n\">turn</th><th class=\"n\">mean</th>"
                        + "<th class=\"n\">flat mm</th><th class=\"n\">flat m²</th><th class=\"n\">stretch</th></tr></thead><tbody>");
        for (DrapedPly each : answer.laid().plies()) {
            DrapedPly.Figures f = each.figures();
            boolean cloth = each.ply().cloth();
            rows.append("<tr><td>").append(Html.escape(each.ply().name())).append("</td><td>");
            rows.append(Html.escape(DrapeAnswer.words(each.ply())));
            rows.append(
                            each.ply().patch().isEmpty()
                                    ? ""
                                    : "<br/>" + Html.escape(each.ply().patch()))
                    .append("</td>");
            cell(rows, fixed(f.area(), 3, NARROW_SPACE));
            cell(rows, cloth ? degrees(f.largestShear()) : "–");
            cell(rows, cloth ? fixed(1e4 * f.warned(), 0, NARROW_SPACE) : "–");
            cell(rows, cloth ? fixed(1e4 * (f.locked() + f.bare()), 0, NARROW_SPACE) : "–");
            cell(rows, degrees(f.largestTurn()));
            cell(rows, degrees(f.meanTurn()));
            cell(
                    rows,
                    fixed(1e3 * each.flat().length(), 0, NARROW_SPACE) + " × "
                            + fixed(1e3 * each.flat().width(), 0, NARROW_SPACE));
            cell(rows, fixed(each.flat().area(), 3, NARROW_SPACE));
            cell(
                    rows,
                    cloth
                            ? "–"
                            : fixed(
                                            100
                                                    * Math.max(
                                                            each.flat()
                                                                    .distortion()
                                                                    .longest(),
                                                            -each.flat()
                                                                    .distortion()
                                                                    .shortest()),
                                            1,
                                            NARROW_SPACE)
                                    + " %");
            rows.append("</tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static void cell(StringBuilder rows, String words) {
        rows.append("<td class=\"n\">").append(Html.escape(words)).append("</td>");
    }

    private static String patterns(DrapeAnswer answer) {
        StringBuilder html = new StringBuilder("<div class=\"pair\">");
        for (DrapedPly each : answer.laid().plies()) {
            html.append("<div>").append(draw(each.flat())).append("<p class=\"foot\">");
            html.append(Html.escape(each.ply().name() + ", " + DrapeAnswer.words(each.ply()) + ", "
                    + fixed(1e3 * each.flat().length(), 0, NARROW_SPACE) + " × "
                    + fixed(1e3 * each.flat().width(), 0, NARROW_SPACE) + " mm"));
            html.append("</p></div>");
        }
        return html.append("</div>").toString();
    }

    private static String draw(FlatPattern flat) {
        double[] box = flat.box();
        double scale = (CARD - 20) / Math.max(1e-6, box[2] - box[0]);
        double height = Math.max(30, scale * (box[3] - box[1]) + 20);
        Svg svg = new Svg(CARD, height, "Pattern of " + flat.name());
        DoubleUnaryOperator x = v -> 10 + scale * (v - box[0]);
        DoubleUnaryOperator y = v -> height - 10 - scale * (v - box[1]);
        for (double[] outline : flat.outlines()) {
            int n = outline.length / 2;
            double[] px = new double[n + 1];
            double[] py = new double[n + 1];
            for (int i = 0; i <= n; i++) {
                px[i] = x.applyAsDouble(outline[2 * (i % n)]);
                py[i] = y.applyAsDouble(outline[2 * (i % n) + 1]);
            }
            svg.path("curve thin s0", px, py);
        }
        for (double[] line : flat.lines()) {
            double[] px = new double[line.length / 2];
            double[] py = new double[line.length / 2];
            for (int i = 0; i < px.length; i++) {
                px[i] = x.applyAsDouble(line[2 * i]);
                py[i] = y.applyAsDouble(line[2 * i + 1]);
            }
            svg.path("hatch", px, py);
        }
        double sx = x.applyAsDouble(flat.start()[0]);
        double sy = y.applyAsDouble(flat.start()[1]);
        svg.line("zero", sx - 24, sy, sx + 24, sy).line("zero", sx + 24, sy, sx + 17, sy - 4);
        svg.line("zero", sx + 24, sy, sx + 17, sy + 4);
        double c = Math.cos(flat.reference());
        double s = Math.sin(flat.reference());
        svg.line("wall", sx, sy, sx + 16 * c, sy - 16 * s);
        return svg.circle("dot", sx, sy, 2).done();
    }
}
