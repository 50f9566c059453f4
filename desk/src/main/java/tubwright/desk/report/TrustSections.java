// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.material.Material;
import tubwright.engine.material.Property;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.mesh.MeshQuality;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.Converged;
import tubwright.engine.response.VariantAnswer;

/** The sections about how far to trust the rest: mesh error, material values and their sources, files. */
final class TrustSections {
    /** What a reader of a stiffness note wants of a material, in this order. */
    private static final List<Property> SHOWN = List.of(
            Property.E1,
            Property.E2,
            Property.G12,
            Property.NU12,
            Property.G13,
            Property.G23,
            Property.DENSITY,
            Property.THICKNESS);

    private TrustSections() {}

    static List<Section> of(RunAnswer answer) {
        return List.of(
                new Section(
                        "How sure: the mesh",
                        "The same model on finer and finer meshes, carried to size zero (Richardson 1911; band after"
                                + " Roache 1994). The band holds for the model, not for the car: materials, joints and"
                                + " workmanship come on top.",
                        meshes(answer)),
                new Section(
                        "How sure: the materials",
                        "Values used and where they come from. Values from memory or assumed have not been looked up:"
                                + " replace them by your supplier's or your own coupons' before you rely on them.",
                        materials(answer.materials())),
                new Section("With this note", "In the same folder.", files(answer)));
    }

    private static String meshes(RunAnswer answer) {
        StringBuilder body = new StringBuilder();
        for (VariantAnswer variant : answer.variants()) {
            for (CaseAnswer each : variant.cases()) {
                Converged c = each.stiffness();
                if (c.samples().isEmpty()) {
                    continue;
                }
                boolean torsion = each.kind() == CaseAnswer.Kind.TORSION;
                double factor = torsion ? perDegree(1) : 1e-6;
                String unit = torsion ? "N·m/deg" : "kN/mm";
                body.append("<div class=\"mesh\"><div><h3>")
                        .append(escape(variant.variant() + ", " + each.name()))
                        .append("</h3><table class=\"tight\"><thead><tr><th class=\"n\">mesh size <span>mm</span></th>"
                                + "<th class=\"n\">unknowns</th><th class=\"n\">" + unit
                                + "</th><th class=\"n\">off by</th></tr></thead><tbody>");
                for (Converged.Sample sample : c.samples()) {
                    double off = sample.value() / c.value() - 1;
                    body.append("<tr><td class=\"n\">")
                            .append(fixed(1000 * sample.meshSize(), 1, NARROW_SPACE))
                            .append("</td><td class=\"n\">")
                            .append(fixed(sample.unknowns(), 0, NARROW_SPACE))
                            .append("</td><td class=\"n\">")
                            .append(significant(sample.value() * factor, 5, NARROW_SPACE))
                            .append("</td><td class=\"n\">")
                            .append(off > 0 ? "+" : "")
                            .append(fixed(100 * off, 2, NARROW_SPACE))
                            .append(" %</td></tr>");
                }
                body.append("<tr class=\"sum\"><td class=\"n\">0</td><td></td><td class=\"n\">")
                        .append(plusMinus(c.value() * factor, c.error() * factor, NARROW_SPACE))
                        .append("</td><td></td></tr></tbody></table><p class=\"foot\">")
                        .append(escape(sentence(c.note())))
                        .append("</p></div>")
                        .append(ConvergenceChart.draw(c, factor, unit))
                        .append("</div>");
            }
        }
        return body.append(quality(answer.variants())).toString();
    }

    /** Shape of the elements and areas held against the exact surface. */
    private static String quality(List<VariantAnswer> variants) {
        StringBuilder body = new StringBuilder("<h3>Quality of the finest mesh</h3><table class=\"tight\"><thead><tr>"
                + "<th></th><th class=\"n\">quads</th><th class=\"n\">triangles</th>"
                + "<th class=\"n\">aspect <span>mean, worst</span></th><th class=\"n\">skew <span>deg</span></th>"
                + "<th class=\"n\">warp <span>deg</span></th><th class=\"n\">smallest corner <span>deg</span></th>"
                + "<th class=\"n\">worst area error</th></tr></thead><tbody>");
        for (VariantAnswer variant : variants) {
            MeshQuality q = variant.quality();
            double worst = q.areas().stream()
                    .mapToDouble(MeshQuality.PartArea::errorPercent)
                    .map(Math::abs)
                    .max()
                    .orElse(0);
            body.append("<tr><td>").append(escape(variant.variant()));
            for (String cell : List.of(
                    fixed(q.quads(), 0, NARROW_SPACE),
                    fixed(q.triangles(), 0, NARROW_SPACE),
                    fixed(q.aspect().mean(), 1, NARROW_SPACE) + ", "
                            + fixed(q.aspect().most(), 1, NARROW_SPACE),
                    fixed(q.skew().mean(), 0, NARROW_SPACE) + ", "
                            + fixed(q.skew().most(), 0, NARROW_SPACE),
                    fixed(q.warp().mean(), 1, NARROW_SPACE) + ", "
                            + fixed(q.warp().most(), 1, NARROW_SPACE),
                    fixed(q.corner().least(), 0, NARROW_SPACE),
                    fixed(worst, 2, NARROW_SPACE) + " %")) {
                body.append("</td><td class=\"n\">").append(cell);
            }
            body.append("</td></tr>");
        }
        return body.append("</tbody></table>").toString();
    }

    private static String sentence(String words) {
        if (words.isEmpty()) {
            return "";
        }
        String begun = Character.toUpperCase(words.charAt(0)) + words.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }

    private static String materials(List<Material> materials) {
        if (materials.isEmpty()) {
            return "";
        }
        StringBuilder body = new StringBuilder();
        for (Material material : materials) {
            StringBuilder row = new StringBuilder();
            Map<Provenance, StringBuilder> sources = new LinkedHashMap<>();
            for (Property property : SHOWN) {
                material.properties().find(property).ifPresent(value -> {
                    String shown = new Quantity(value.si(), property.dimension()).toString();
                    row.append("<div class=\"value\"><dt>")
                            .append(escape(property.key()))
                            .append("</dt><dd>")
                            .append(escape(shown))
                            .append(mark(value.provenance().trust()))
                            .append("</dd></div>");
                    sources.computeIfAbsent(value.provenance(), p -> new StringBuilder())
                            .append(property.key())
                            .append(", ");
                });
            }
            body.append("<article class=\"material\"><h3>")
                    .append(escape(material.name()))
                    .append(" <span>");
            body.append(escape(material.description()))
                    .append("</span></h3><dl>")
                    .append(row)
                    .append("</dl><ul>");
            sources.forEach((provenance, keys) -> body.append("<li><span class=\"keys\">")
                    .append(escape(keys.substring(0, keys.length() - 2)))
                    .append("</span> ")
                    .append(escape(provenance.source()))
                    .append(mark(provenance.trust()))
                    .append("</li>"));
            body.append("</ul></article>");
        }
        return body.toString();
    }

    private static String mark(Trust trust) {
        return switch (trust) {
            case PUBLISHED -> "";
            case TRANSCRIBED, COMPUTED, STATED -> " <span class=\"trust\">" + escape(trust.mark()) + "</span>";
            case FROM_MEMORY, ASSUMED, INVENTED -> " <span class=\"trust weak\">" + escape(trust.mark()) + "</span>";
        };
    }

    private static String files(RunAnswer answer) {
        StringBuilder list = new StringBuilder();
        for (String file : answer.files()) {
            list.append("<li><code>").append(escape(file)).append("</code></li>");
        }
        return list.isEmpty() ? "" : "<ul class=\"files\">" + list + "</ul>";
    }
}
