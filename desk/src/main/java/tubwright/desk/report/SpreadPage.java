// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.SpreadStory;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.TubPicture;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.safety.spread.SpreadAnswer;

/** A load followed until little is left as one page of HTML: load against movement, what failed where and in what order. */
public final class SpreadPage {
    private static final double WIDTH = 620;
    private static final double HEIGHT = 330;
    private static final double LEFT = 78;
    private static final double RIGHT = 600;
    private static final double TOP = 30;
    private static final double BOTTOM = 268;

    private final SpreadStory story;

    private SpreadPage(SpreadStory story) {
        this.story = story;
    }

    /** The whole page. */
    public static String write(SpreadStory story) {
        return new SpreadPage(story).page();
    }

    private String page() {
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "Load against movement",
                "The movement is that of the load on its own way, its work over its size. Where the line turns back, load and"
                        + " movement both have to fall for the failure to go on slowly; under a real push it would jump.",
                chart()));
        sections.add(new Section(
                "What failed, in order",
                "Load at which it first began, and how much of its zone had begun and was gone in the end.",
                story.path().events().isEmpty() ? "" : events()));
        sections.add(new Section(
                "Where",
                "Share of stiffness that the worst layer of every element has lost where it carries load: pale nothing, hot all"
                        + " of it.",
                picture()));
        sections.add(new Section("How well it converged", "", "<p>" + escape(story.convergence()) + "</p>" + asides()));
        sections.add(new Section("What this is not", "", "<p>" + escape(SpreadStory.ASIDE) + "</p>"));
        return Note.page(story.tub() + ": spread", head(), sections, "");
    }

    private String head() {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", story.stamp());
        Note.cell(cells, "with", "Tubwright " + story.version());
        Note.cell(cells, "variant", story.variant());
        Note.cell(cells, "unknowns", fixed(story.unknowns(), 0, NARROW_SPACE));
        Note.cell(
                cells,
                story.path().goesRound() ? "followed up to" : "most it bears",
                load(story.path().peak().factor()));
        return "<header><div class=\"name\"><p class=\"kicker\">Spread</p><h1>" + escape(story.tub()) + "</h1><p>"
                + escape(story.what() + ". It ends: " + story.path().ended() + ".")
                + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
    }

    private String load(double factor) {
        return story.panel()
                ? String.format(Locale.ROOT, "%.2f kN", 1e-3 * factor)
                : String.format(Locale.ROOT, "factor %.2f", factor);
    }

    private double shown(SpreadAnswer.Step step) {
        return story.couple() ? Math.toDegrees(story.movement(step)) : 1e3 * story.movement(step);
    }

    private double shownLoad(SpreadAnswer.Step step) {
        return story.panel() ? 1e-3 * step.factor() : step.factor();
    }

    private String chart() {
        List<SpreadAnswer.Step> steps = story.path().steps();
        double far = steps.stream().mapToDouble(this::shown).max().orElse(1);
        double high = steps.stream().mapToDouble(this::shownLoad).max().orElse(1);
        Axis x = Axis.round(0, far > 0 ? far : 1, LEFT, RIGHT, 6);
        Axis y = Axis.round(0, high > 0 ? high : 1, BOTTOM, TOP, 5);
        Svg svg = new Svg(WIDTH, HEIGHT, "Load against movement");
        for (double tick : y.ticks(5)) {
            svg.line("grid", LEFT, y.at(tick), RIGHT, y.at(tick));
            svg.text("figure end", LEFT - 8, y.at(tick) + 4, fixed(tick, y.decimals(5), NARROW_SPACE));
        }
        for (double tick : x.ticks(6)) {
            svg.line("tick", x.at(tick), BOTTOM, x.at(tick), BOTTOM + 5);
            svg.text("figure middle", x.at(tick), BOTTOM + 19, fixed(tick, x.decimals(6), NARROW_SPACE));
        }
        svg.line("zero", LEFT, BOTTOM, RIGHT, BOTTOM);
        svg.text(
                "axis middle",
                0.5 * (LEFT + RIGHT),
                BOTTOM + 42,
                story.couple() ? "turn of the couple, deg" : "movement of the load, mm");
        svg.text("axis", 6, TOP - 14, story.panel() ? "kN" : "load factor");
        svg.path(
                "curve s0",
                steps.stream().mapToDouble(s -> x.at(shown(s))).toArray(),
                steps.stream().mapToDouble(s -> y.at(shownLoad(s))).toArray());
        SpreadAnswer.Step peak = story.path().peak();
        svg.circle("ring s0", x.at(shown(peak)), y.at(shownLoad(peak)), 5);
        if (steps.size() > 1) {
            svg.circle("dot s0", x.at(shown(steps.get(1))), y.at(shownLoad(steps.get(1))), 4);
        }
        return "<figure class=\"drawing\">" + svg.done()
                + "<figcaption>Dot: the first failure. Ring: "
                + (story.path().goesRound() ? "as far as it was followed" : "the most it bears")
                + ".</figcaption></figure>";
    }

    private String events() {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr>");
        for (String name : List.of("load", "where", "what", "first at, mm", "begun", "gone")) {
            rows.append("<th>").append(name).append("</th>");
        }
        rows.append("</tr></thead><tbody>");
        for (SpreadAnswer.Event each : story.path().events()) {
            rows.append("<tr><td class=\"n\">").append(escape(load(each.factor())));
            rows.append("</td><td>").append(escape(each.zone()));
            rows.append("</td><td>").append(escape(each.what()));
            rows.append("</td><td>");
            rows.append(escape(String.format(
                    Locale.ROOT,
                    "%.0f, %.0f, %.0f",
                    1e3 * each.place()[0],
                    1e3 * each.place()[1],
                    1e3 * each.place()[2])));
            rows.append("</td><td class=\"n\">").append(escape(percent(each.share())));
            rows.append("</td><td class=\"n\">")
                    .append(escape(percent(each.gone())))
                    .append("</td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private String asides() {
        List<String> all = new ArrayList<>();
        story.path().needs().forEach(n -> all.add("not checked: needs " + n));
        all.addAll(story.path().lowered());
        all.addAll(story.asides());
        if (all.isEmpty()) {
            return "";
        }
        StringBuilder list = new StringBuilder("<ul>");
        all.forEach(each -> list.append("<li>").append(escape(each)).append("</li>"));
        return list.append("</ul>").toString();
    }

    private String picture() {
        return story.panel() ? drawing() : tub();
    }

    /** A panel from above. */
    private String drawing() {
        Mesh mesh = story.mesh();
        double[] box = {1e9, -1e9, 1e9, -1e9};
        for (int n = 0; n < mesh.nodeCount(); n++) {
            box[0] = Math.min(box[0], mesh.nodes()[3 * n]);
            box[1] = Math.max(box[1], mesh.nodes()[3 * n]);
            box[2] = Math.min(box[2], mesh.nodes()[3 * n + 1]);
            box[3] = Math.max(box[3], mesh.nodes()[3 * n + 1]);
        }
        double scale = Math.min(560 / (box[1] - box[0]), 420 / (box[3] - box[2]));
        double width = scale * (box[1] - box[0]);
        double height = scale * (box[3] - box[2]);
        Svg svg = new Svg(width + 20, height + 20, "What failed, seen on the outer face");
        for (int k = 0; k < story.elements().length; k++) {
            int e = story.elements()[k];
            int a = mesh.elementNodes()[4 * e];
            int c = mesh.elementNodes()[4 * e + 2];
            double x = 10 + scale * (mesh.nodes()[3 * a] - box[0]);
            double y = 10 + scale * (box[3] - mesh.nodes()[3 * c + 1]);
            double w = scale * (mesh.nodes()[3 * c] - mesh.nodes()[3 * a]);
            double h = scale * (mesh.nodes()[3 * c + 1] - mesh.nodes()[3 * a + 1]);
            svg.rectangle("cell", colour(story.path().failed()[k]), x, y, w, h);
        }
        return "<figure class=\"drawing\">" + svg.done()
                + "<figcaption>Outer face, x to the right.</figcaption></figure>";
    }

    /** From the pale ground to a deep red. */
    private static String colour(double share) {
        double s = Math.clamp(share, 0, 1);
        return String.format(
                Locale.ROOT,
                "#%02x%02x%02x",
                Math.round(236 - 76 * s),
                Math.round(232 - 202 * s),
                Math.round(222 - 186 * s));
    }

    private String tub() {
        double[] levels = new double[story.mesh().elementCount()];
        for (int k = 0; k < story.elements().length; k++) {
            levels[story.elements()[k]] = Math.max(0.08, story.path().failed()[k]);
        }
        TubPicture painter = new TubPicture(story.mesh());
        return figure(painter.levels(levels, From.THREE_QUARTER_FRONT, false, 1160), "outside")
                + figure(painter.levels(levels, From.INTO_THE_CUT, true, 880), "cut");
    }

    private String figure(Picture picture, String what) {
        String uri = "data:image/png;base64," + Base64.getEncoder().encodeToString(Png.encode(picture.image()));
        double failed =
                Arrays.stream(story.path().failed()).filter(f -> f > 0.99).count();
        return TwistSections.figure(
                new Gallery.Plate(picture, uri),
                "plate",
                "What failed, " + what,
                "What failed, " + what + ": " + significant(failed, 3, NARROW_SPACE) + " of " + story.elements().length
                        + " elements that may fail are gone.");
    }
}
