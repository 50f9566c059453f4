// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.EnergyScale;
import tubwright.desk.picture.Palette;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.EnergyShare;
import tubwright.engine.response.TwistLine;

/** The sections about how the tub twists: where it is flexible, along its length, and as a shape. */
final class TwistSections {
    private static final int BARS = 14;

    private TwistSections() {}

    static List<Section> of(RunAnswer answer, Gallery gallery) {
        List<Section> sections = new ArrayList<>();
        Optional<CaseAnswer> torsion = Reading.torsion(answer.main());
        torsion.ifPresent(t -> sections.add(new Section(
                "Where the flexibility lives",
                "Strain energy stored in the tub under the torsion couple. A part that stores a tenth of the energy gives"
                        + " a tenth of the twist between loaded and held points; stiffening one that stores little buys little.",
                energy(t, gallery))));
        gallery.plate("profile")
                .ifPresent(plate -> sections.add(new Section(
                        "Twist along the tub",
                        "A steep line is a soft length, a step is a joint that gives. Shaded: openings; lines: walls. Angles are"
                                + " per kN·m of couple, right-handed about the axis that runs aft.",
                        twist(answer, plate))));
        torsion.ifPresent(t -> gallery.plate("twisted")
                .ifPresent(plate -> sections.add(new Section(
                        "The shape it takes",
                        "Movements under the couple, drawn " + significant(gallery.exaggeration(), 1, NARROW_SPACE)
                                + " times too large; thin lines show the tub at rest. Colour deepens with the distance moved.",
                        figure(plate, "plate", "Twisted shape", "Couple " + couple(t) + ".")))));
        return sections;
    }

    /** A picture with a caption. */
    static String figure(Gallery.Plate plate, String kind, String label, String caption) {
        return "<figure class=\"" + kind + "\"><img src=\"" + plate.uri() + "\" width=\""
                + plate.picture().image().width() + "\" height=\""
                + plate.picture().image().height() + "\" alt=\""
                + escape(label) + "\"/>" + (caption.isEmpty() ? "" : "<figcaption>" + escape(caption) + "</figcaption>")
                + "</figure>";
    }

    /** The leading picture, drawn so that a later section can show it again without a second copy. */
    private static String shared(Gallery.Plate plate) {
        int width = plate.picture().image().width();
        int height = plate.picture().image().height();
        Svg svg = new Svg(width, height, "The tub coloured by energy density");
        svg.raw("<image id=\"hero\" href=\"" + plate.uri() + "\" width=\"" + width + "\" height=\"" + height + "\"/>");
        return "<figure class=\"plate\">" + svg.done() + "</figure>";
    }

    /** The leading picture once more. */
    static String again(Gallery.Plate plate, String caption) {
        Svg svg =
                new Svg(plate.picture().image().width(), plate.picture().image().height(), caption);
        return "<figure class=\"plate\">" + svg.raw("<use href=\"#hero\"/>").done() + "<figcaption>" + escape(caption)
                + "</figcaption></figure>";
    }

    private static String couple(CaseAnswer t) {
        return significant(t.load(), 4, NARROW_SPACE) + " N·m";
    }

    private static String energy(CaseAnswer torsion, Gallery gallery) {
        StringBuilder body = new StringBuilder();
        gallery.plate("hero").ifPresent(p -> body.append(shared(p)));
        gallery.scale()
                .ifPresent(s -> body.append(
                        scaleBar(s, "Colour scale of energy density", "J/m² of surface under " + couple(torsion))));
        body.append("<div class=\"pair\">");
        gallery.plate("side").ifPresent(p -> body.append(figure(p, "plate", "Side view", "From the left.")));
        gallery.plate("plan").ifPresent(p -> body.append(figure(p, "plate", "Plan view", "From above.")));
        body.append("</div>");
        gallery.plate("cut")
                .ifPresent(p -> body.append(figure(
                        p, "plate", "Cut along the middle", "Cut along its middle plane: right half with the walls.")));
        List<EnergyShare> shares = Reading.largest(torsion, BARS);
        double most =
                torsion.energy().stream().mapToDouble(EnergyShare::share).max().orElse(1);
        List<Bars.Bar> bars = shares.stream()
                .map(s -> new Bars.Bar(
                        s.name(),
                        s.name().equals("everything else") ? "" : Reading.words(s.kind()),
                        s.share() / most,
                        percent(s.share()),
                        s.name().equals("everything else")
                                ? "rest"
                                : "k" + s.kind().ordinal()))
                .toList();
        body.append("<h3>Energy by part</h3>").append(Bars.draw(bars, 780, 230, "Energy by part"));
        return body.toString();
    }

    /** The colours of a scale with its round values and what they count. */
    static String scaleBar(EnergyScale scale, String label, String unit) {
        double left = 22;
        double width = 450;
        Svg svg = new Svg(780, 46, label);
        int steps = 115;
        for (int i = 0; i < steps; i++) {
            String fill = tubwright.desk.picture.Colour.hex(Palette.ramp((i + 0.5) / steps));
            svg.rectangle("swatch", fill, left + width * i / steps, 6, width / steps + 0.4, 12);
        }
        for (double tick : scale.ticks()) {
            double x = left + width * scale.position(tick);
            svg.line("tick", x, 18, x, 23);
            svg.text("figure middle", x, 37, significant(tick, 1, NARROW_SPACE));
        }
        svg.text("axis", left + width + 18, 17, unit);
        svg.text("axis", left + width + 18, 36, "logarithmic; paler or deeper beyond the ends");
        return "<div class=\"scale\">" + svg.done() + "</div>";
    }

    private static String twist(RunAnswer answer, Gallery.Plate profile) {
        String chart = new TwistChart(answer).draw(profile.picture(), profile.uri());
        if (chart.isEmpty()) {
            return "";
        }
        StringBuilder rows = new StringBuilder();
        for (var variant : answer.variants()) {
            Reading.torsion(variant).flatMap(CaseAnswer::twistLine).ifPresent(line -> {
                for (TwistLine.Jump jump : line.jumps()) {
                    double share = Reading.torsion(variant)
                            .map(t -> Math.abs(jump.angle()) * t.stiffness().value() / t.load())
                            .orElse(Double.NaN);
                    rows.append("<tr><td>")
                            .append(escape(variant.variant()))
                            .append("</td><td>")
                            .append(escape(jump.joint()))
                            .append("</td><td class=\"n\">")
                            .append(fixed(1000 * jump.station(), 0, NARROW_SPACE))
                            .append("</td><td class=\"n\">")
                            .append(percent(share))
                            .append("</td></tr>");
                }
            });
        }
        String steps = rows.isEmpty()
                ? ""
                : "<h3>Steps at joints</h3><table class=\"tight\"><thead><tr><th>Variant</th><th>Joint</th>"
                        + "<th class=\"n\">x, mm</th><th class=\"n\">share of the twist</th></tr></thead><tbody>" + rows
                        + "</tbody></table>";
        return "<div class=\"chart\">" + chart + "</div>" + steps;
    }

    /** Stiffness of a case with its unit, for tables. */
    static String stiffness(CaseAnswer answer) {
        return switch (answer.kind()) {
            case TORSION -> fixed(perDegree(answer.stiffness().value()), 0, NARROW_SPACE);
            case BENDING -> significant(answer.stiffness().value() / 1e6, 3, NARROW_SPACE);
        };
    }
}
