// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.Colour;
import tubwright.desk.picture.Palette;
import tubwright.desk.picture.TubPicture.Label;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.SheetState;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.structure.Part;

/** The sections about what the tub is made of: beside the other variants, mass, zones and layups, joints. */
final class MakeSections {
    private MakeSections() {}

    static List<Section> of(RunAnswer answer, Gallery gallery) {
        List<Section> sections = new ArrayList<>();
        if (answer.variants().size() > 1) {
            sections.add(new Section(
                    "Side by side",
                    "The same shape, loads and supports, built another way. Ratios are to the first column.",
                    comparison(answer, gallery)));
        }
        sections.add(new Section(
                "What it weighs",
                "Laminate, core, film, adhesive, fasteners, inserts. Centre of mass and inertia in the car's axes.",
                mass(answer.tub(), answer.main().mass())));
        sections.add(new Section(
                "Zones and layups",
                "One number, one zone; + marks patches, plies laid over the zones. Stacks are drawn from the outer surface inward, hatched along the fibres, the"
                        + " reference direction to the right; thickness of core is not to scale.",
                zones(answer, gallery)));
        sections.add(new Section(
                "Joints and stiffeners",
                "What holds the pieces together, and bars along their edges.",
                joints(answer)));
        return sections;
    }

    private static String comparison(RunAnswer answer, Gallery gallery) {
        List<VariantAnswer> variants = answer.variants();
        StringBuilder table = new StringBuilder("<table><thead><tr><th></th>");
        for (VariantAnswer variant : variants) {
            table.append("<th class=\"n\">").append(escape(variant.variant())).append("<br/><span>");
            table.append(escape(variant.construction())).append("</span></th>");
        }
        table.append("</tr></thead><tbody>");
        for (CaseAnswer each : answer.main().cases()) {
            boolean torsion = each.kind() == CaseAnswer.Kind.TORSION;
            row(
                    table,
                    variants,
                    torsion ? "Torsional stiffness" : "Bending stiffness",
                    torsion ? "N·m/deg" : "kN/mm",
                    v -> Reading.named(v, each.name()).map(c -> perUnit(c)),
                    torsion ? Optional.empty() : Optional.of(3));
        }
        Reading.torsion(answer.main())
                .ifPresent(t -> row(
                        table,
                        variants,
                        "Torsional stiffness at the hardpoints, inserts and all",
                        "N·m/deg",
                        v -> Reading.named(v, t.name())
                                .map(CaseAnswer::stiffnessAtHardpoints)
                                .filter(k -> k > 0)
                                .map(k -> perDegree(k)),
                        Optional.of(3)));
        Reading.torsion(answer.main()).ifPresent(t -> sheet(table, variants, t));
        row(table, variants, "Mass", "kg", v -> Optional.of(v.mass().whole().mass()), Optional.of(4));
        row(
                table,
                variants,
                "Torsional stiffness per mass",
                "N·m/deg/kg",
                v -> Reading.torsionPerMass(v).map(k -> perDegree(k)),
                Optional.of(3));
        row(table, variants, "Pieces", "", v -> Optional.of((double) v.pieceCount()), Optional.empty());
        row(table, variants, "Parts to make", "", v -> Optional.of((double) v.partCount()), Optional.empty());
        row(table, variants, "Fasteners", "", v -> Optional.of((double) v.fastenerCount()), Optional.empty());
        row(table, variants, "Length of joints", "m", v -> Optional.of(v.seamLength()), Optional.of(3));
        table.append("</tbody></table><div class=\"pair\">");
        gallery.plate("hero")
                .ifPresent(p ->
                        table.append(TwistSections.again(p, variants.getFirst().variant())));
        for (int v = 1; v < variants.size(); v++) {
            String name = variants.get(v).variant();
            gallery.plate("variant " + name)
                    .ifPresent(p -> table.append(TwistSections.figure(
                            p, "plate", name, name + ", on the same colours and for the same couple")));
        }
        return table.append("</div>").toString();
    }

    /** When thin sheet buckles, and what stiffness it leaves where the case's own couple buckles it. */
    private static void sheet(StringBuilder table, List<VariantAnswer> variants, CaseAnswer torsion) {
        Function<VariantAnswer, Optional<SheetState>> state =
                v -> Reading.named(v, torsion.name()).flatMap(CaseAnswer::sheet);
        if (variants.stream().noneMatch(v -> state.apply(v).isPresent())) {
            return;
        }
        row(
                table,
                variants,
                "Sheet first buckles in shear at",
                "N·m",
                v -> state.apply(v).map(s -> s.firstFactor() * torsion.load()),
                Optional.of(2));
        if (variants.stream()
                .anyMatch(v -> state.apply(v).filter(s -> s.buckled() > 0).isPresent())) {
            row(
                    table,
                    variants,
                    "Torsional stiffness with the sheet buckled by " + significant(torsion.load(), 4, NARROW_SPACE)
                            + " N·m",
                    "N·m/deg",
                    v -> Reading.named(v, torsion.name()).map(c -> perDegree(c.stiffnessUnderLoad())),
                    Optional.empty());
        }
    }

    private static double perUnit(CaseAnswer answer) {
        double value = answer.stiffness().value();
        return answer.kind() == CaseAnswer.Kind.TORSION ? perDegree(value) : value / 1e6;
    }

    private static void row(
            StringBuilder table,
            List<VariantAnswer> variants,
            String what,
            String unit,
            Function<VariantAnswer, Optional<Double>> read,
            Optional<Integer> digits) {
        table.append("<tr><th>").append(escape(what)).append(unit.isEmpty() ? "" : " <span>" + unit + "</span>");
        table.append("</th>");
        Optional<Double> first = read.apply(variants.getFirst());
        for (int v = 0; v < variants.size(); v++) {
            Optional<Double> value = read.apply(variants.get(v));
            table.append("<td class=\"n\">");
            table.append(value.map(x ->
                            digits.map(d -> significant(x, d, NARROW_SPACE)).orElseGet(() -> fixed(x, 0, NARROW_SPACE)))
                    .orElse("–"));
            if (v > 0 && value.isPresent() && first.isPresent() && first.get() != 0) {
                table.append(" <span class=\"ratio\">× ")
                        .append(significant(value.get() / first.get(), 2, NARROW_SPACE))
                        .append("</span>");
            }
            table.append("</td>");
        }
        table.append("</tr>");
    }

    private static String mass(String tub, MassAnswer mass) {
        double whole = mass.whole().mass();
        double most =
                mass.pieces().stream().mapToDouble(MassAnswer.Body::mass).max().orElse(1);
        List<Bars.Bar> pieces = mass.pieces().stream()
                .map(p -> new Bars.Bar(
                        p.name(), "", p.mass() / most, significant(p.mass(), 3, NARROW_SPACE) + " kg", "s0"))
                .toList();
        double top = Reading.massByKind(mass).values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(1);
        List<Bars.Bar> kinds = new ArrayList<>();
        for (Part.Kind kind : Reading.massByKind(mass).keySet()) {
            double sum = Reading.massByKind(mass).get(kind);
            kinds.add(new Bars.Bar(
                    Reading.words(kind),
                    "",
                    sum / top,
                    significant(sum, 3, NARROW_SPACE) + " kg",
                    "k" + kind.ordinal()));
        }
        StringBuilder body = new StringBuilder("<h3>By piece</h3>");
        body.append(Bars.draw(pieces, 780, 230, "Mass by piece")).append("<h3>By kind</h3>");
        body.append(Bars.draw(kinds, 780, 230, "Mass by kind"));
        body.append("<table class=\"tight\"><thead><tr><th>Body</th><th class=\"n\">mass <span>kg</span></th>"
                + "<th class=\"n\">share</th><th class=\"n\">x <span>mm</span></th><th class=\"n\">y <span>mm</span></th>"
                + "<th class=\"n\">z <span>mm</span></th><th class=\"n\">I<sub>xx</sub> <span>kg·m²</span></th>"
                + "<th class=\"n\">I<sub>yy</sub></th><th class=\"n\">I<sub>zz</sub></th></tr></thead><tbody>");
        mass.pieces().forEach(p -> body(body, p.name(), p, whole, ""));
        body(body, tub, mass.whole(), whole, "sum");
        return body.append("</tbody></table>").toString();
    }

    private static void body(StringBuilder table, String name, MassAnswer.Body body, double whole, String kind) {
        table.append("<tr class=\"")
                .append(kind)
                .append("\"><td>")
                .append(escape(name))
                .append("</td>");
        number(table, significant(body.mass(), 3, NARROW_SPACE));
        number(table, tubwright.desk.text.Figures.percent(body.mass() / whole));
        for (int d = 0; d < 3; d++) {
            number(table, fixed(1000 * body.centre()[d], 0, NARROW_SPACE));
        }
        for (int d = 0; d < 3; d++) {
            number(table, fixed(body.inertia()[d], 3, NARROW_SPACE));
        }
        table.append("</tr>");
    }

    private static void number(StringBuilder table, String text) {
        table.append("<td class=\"n\">").append(text).append("</td>");
    }

    private static String zones(RunAnswer answer, Gallery gallery) {
        StringBuilder body = new StringBuilder("<div class=\"pair\">");
        for (String name : List.of("zones", "zones cut")) {
            gallery.plate(name).ifPresent(p -> body.append(labelled(p, "Zones by number", "")));
        }
        body.append("</div>");
        for (VariantAnswer variant : answer.variants()) {
            List<RunAnswer.Layup> layups = Reading.layups(answer, variant.variant());
            if (layups.isEmpty()) {
                continue;
            }
            body.append("<h3>").append(escape(variant.variant())).append("</h3><table class=\"layups\"><thead><tr>");
            body.append("<th>Zone</th><th>Layup</th><th>Stack</th><th class=\"n\">t <span>mm</span></th>"
                    + "<th class=\"n\">g/m²</th><th class=\"n\">area <span>m²</span></th><th class=\"n\">kg</th>"
                    + "</tr></thead><tbody>");
            Map<Object, List<RunAnswer.Layup>> stacks = new LinkedHashMap<>();
            layups.forEach(l -> stacks.computeIfAbsent(List.of(l.patch(), l.laminate()), k -> new ArrayList<>())
                    .add(l));
            stacks.values().forEach(same -> stack(body, same, gallery));
            body.append("</tbody></table>");
        }
        return body.toString();
    }

    /** One row for all zones that carry the same stack. */
    private static void stack(StringBuilder table, List<RunAnswer.Layup> same, Gallery gallery) {
        Laminate laminate = same.getFirst().laminate();
        double area = same.stream().mapToDouble(RunAnswer.Layup::area).sum();
        table.append("<tr><td class=\"zones\">");
        for (RunAnswer.Layup layup : same) {
            int number = layup.patch() ? -1 : gallery.zones().indexOf(layup.name());
            String chip = number < 0
                    ? "<span class=\"chip none\">" + (layup.patch() ? "+" : "") + "</span>"
                    : "<span class=\"chip\" style=\"background:" + Colour.hex(Palette.kind(number)) + "\">"
                            + (number + 1) + "</span>";
            table.append("<div>").append(chip).append(escape(layup.name())).append("</div>");
        }
        table.append("</td><td><code>").append(escape(same.getFirst().code())).append("</code><p class=\"foot\">");
        table.append(escape(materials(laminate))).append("</p></td><td class=\"stack\">");
        table.append(StackDrawing.draw(laminate)).append("</td>");
        number(table, fixed(1000 * laminate.thickness(), 2, NARROW_SPACE));
        number(table, fixed(1000 * laminate.arealMass(), 0, NARROW_SPACE));
        number(table, fixed(area, 3, NARROW_SPACE));
        number(table, fixed(laminate.arealMass() * area, 2, NARROW_SPACE));
        table.append("</tr>");
    }

    private static String materials(Laminate laminate) {
        return laminate.layers().stream()
                .map(l -> l.material().name())
                .distinct()
                .collect(java.util.stream.Collectors.joining(", "));
    }

    /** A picture with numbers on it. */
    static String labelled(Gallery.Plate plate, String what, String caption) {
        int width = plate.picture().image().width();
        int height = plate.picture().image().height();
        Svg svg = new Svg(width, height, what).image(plate.uri(), 0, 0, width, height);
        for (Label label : plate.picture().labels()) {
            svg.circle("tag", label.x(), label.y(), 15);
            svg.text("tagged middle", label.x(), label.y() + 6, label.text());
        }
        return "<figure class=\"plate\">" + svg.done()
                + (caption.isEmpty() ? "" : "<figcaption>" + escape(caption) + "</figcaption>") + "</figure>";
    }

    private static String joints(RunAnswer answer) {
        if (answer.joints().isEmpty()) {
            return "";
        }
        StringBuilder table = new StringBuilder(
                "<table class=\"tight\"><thead><tr><th>Variant</th><th>Line</th>"
                        + "<th>How</th><th class=\"n\">length <span>m</span></th><th class=\"n\">fasteners</th></tr></thead><tbody>");
        for (RunAnswer.JointCard joint : answer.joints()) {
            table.append("<tr><td>")
                    .append(escape(joint.variant()))
                    .append("</td><td>")
                    .append(escape(joint.name()));
            table.append("</td><td>").append(escape(joint.description())).append("</td>");
            number(table, fixed(joint.length(), 2, NARROW_SPACE));
            number(table, joint.fasteners() == 0 ? "–" : Integer.toString(joint.fasteners()));
            table.append("</tr>");
        }
        return table.append("</tbody></table>").toString();
    }
}
