// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.EvidenceAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.material.Material;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.safety.damage.DamageMap;

/** The dossier as one page of HTML, the caution below each of its sections and on each sheet of a print. */
public final class EvidencePage {
    private static final int ROWS = 12;

    private final EvidenceAnswer answer;

    private EvidencePage(EvidenceAnswer answer) {
        this.answer = answer;
    }

    /** The whole page. */
    public static String write(EvidenceAnswer answer) {
        return new EvidencePage(answer).page();
    }

    private String page() {
        RunAnswer run = answer.run();
        Gallery gallery = Gallery.paint(run);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "What this was made from", "The same files give the same dossier, byte for byte.", inputs()));
        sections.add(Summary.section(run));
        sections.add(new Section(
                "Materials and where their values come from",
                "Every value used, with its source and how far it may be trusted.",
                materials(run.materials())));
        sections.add(new Section(
                "How the program was checked",
                "Against closed forms, published benchmarks, handbooks and open measurements; docs/verification lists them one"
                        + " by one.",
                verification()));
        sections.add(ReserveSection.of(run, gallery));
        sections.add(new Section("If a patch is torn out", DamageAnswer.ASIDE, damage()));
        answer.crush().ifPresent(c -> sections.addAll(CrushPage.sections(c)));
        answer.rules().ifPresent(r -> sections.addAll(RulesPage.sections(r)));
        sections.add(new Section(
                "Tests done", "As the design and the project's logbook have them; foretold beside found.", tests()));
        sections.add(new Section("What is not covered", "No pass, any of it.", list(answer.gaps())));
        List<Section> cautioned = sections.stream()
                .filter(s -> !s.body().isEmpty())
                .map(s -> new Section(
                        s.title(),
                        s.aside(),
                        s.body() + "<p class=\"foot\">" + escape(EvidenceAnswer.CAUTION) + "</p>"))
                .toList();
        return Note.page(answer.tub() + ": evidence", head(), cautioned, StackDrawing.patterns());
    }

    private String head() {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "fingerprint", answer.fingerprint());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "meshes", answer.mesh());
        if (!answer.by().isEmpty()) {
            Note.cell(cells, "by", answer.by());
        }
        return "<header><div class=\"name\"><p class=\"kicker\">Evidence</p><h1>" + escape(answer.tub()) + "</h1><p>"
                + escape("What was relied on, what came out, what was tested and what nobody has looked at. "
                        + EvidenceAnswer.CAUTION)
                + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
    }

    private String inputs() {
        StringBuilder rows = heads("file", "SHA-256");
        for (EvidenceAnswer.Input input : answer.inputs()) {
            rows.append("<tr><td>").append(escape(input.name())).append("</td><td><code>");
            rows.append(input.fingerprint()).append("</code></td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String materials(List<Material> materials) {
        StringBuilder rows = heads("material", "value", "", "source");
        for (Material material : materials) {
            boolean first = true;
            for (Property property : Property.values()) {
                if (material.properties().find(property).isEmpty()) {
                    continue;
                }
                PropertyValue value = material.properties().find(property).get();
                rows.append("<tr><td>")
                        .append(first ? escape(material.name()) : "")
                        .append("</td><td>");
                rows.append(escape(property.key())).append("</td><td class=\"n\">");
                rows.append(escape(new Quantity(value.si(), property.dimension()).toString()))
                        .append("</td><td>")
                        .append(escape(value.provenance().toString()))
                        .append("</td></tr>");
                first = false;
            }
        }
        return rows.append("</tbody></table>").toString();
    }

    private String verification() {
        if (answer.verification().isEmpty()) {
            return "<p>The verification report did not come with this build; see docs/verification.</p>";
        }
        StringBuilder rows = heads("family", "checks", "worst, share of what was allowed");
        for (EvidenceAnswer.Family family : answer.verification()) {
            rows.append("<tr><td>").append(escape(family.name())).append("</td><td class=\"n\">");
            rows.append(family.checks())
                    .append("</td><td class=\"n\">")
                    .append(String.format(Locale.ROOT, "%.0f %%", 100 * family.worst()))
                    .append("</td></tr>");
        }
        return "<p>" + answer.checks() + " values from outside, in "
                + answer.verification().size() + " families.</p>" + rows.append("</tbody></table>");
    }

    private String damage() {
        DamageAnswer.PerVariant variant = answer.damage().variants().getFirst();
        StringBuilder body = new StringBuilder();
        body.append("<p>")
                .append(escape(String.format(
                        Locale.ROOT,
                        "A hole of %.0f mm moved over the whole tub, %d positions: half of them cost no more than %s %% of the"
                                + " torsional stiffness%s.",
                        1e3 * answer.damage().size(),
                        variant.patches().size(),
                        significant(100 * variant.usualLoss(), 2, NARROW_SPACE),
                        Double.isNaN(variant.spreading())
                                ? ""
                                : String.format(
                                        Locale.ROOT,
                                        "; of those with reserve beside them %.0f %% lose it by the hit, there it would spread",
                                        100 * variant.spreading()))))
                .append("</p>");
        EvidencePictures.damage(variant).forEach(p -> body.append(p.figure()));
        StringBuilder rows = heads("at", "zone", "torsion lost", "reserve before", "after", "");
        variant.weakest().stream().limit(ROWS).forEach(p -> {
            rows.append("<tr><td>").append(escape(p.patch().name())).append("</td><td>");
            rows.append(escape(p.patch().region())).append("</td><td class=\"n\">");
            rows.append(escape(DamageAnswer.lost(p))).append("</td><td class=\"n\">");
            rows.append(factor(DamageAnswer.before(p))).append("</td><td class=\"n\">");
            rows.append(factor(DamageMap.reserve(p))).append("</td><td>");
            rows.append(escape(DamageAnswer.aside(p))).append("</td></tr>");
        });
        return body.append("<h3>Least reserve beside the hole</h3>")
                .append(rows)
                .append("</tbody></table>")
                .toString();
    }

    private static String factor(double value) {
        return value > 100 ? "&gt; 100" : String.format(Locale.ROOT, "%.2f", value);
    }

    private String tests() {
        if (answer.tests().isEmpty()) {
            return "<p>None on record. The first tub goes on a rig before it is driven.</p>";
        }
        StringBuilder rows = heads("when", "what");
        for (EvidenceAnswer.Test test : answer.tests()) {
            rows.append("<tr><td>").append(escape(test.when())).append("</td><td>");
            rows.append(escape(test.what())).append("</td></tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String list(List<String> lines) {
        StringBuilder items = new StringBuilder("<ul class=\"warnings\">");
        lines.forEach(l -> items.append("<li>").append(escape(l)).append("</li>"));
        return items.append("</ul>").toString();
    }

    private static StringBuilder heads(String... names) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr>");
        for (String name : names) {
            rows.append("<th>").append(escape(name)).append("</th>");
        }
        return rows.append("</tr></thead><tbody>");
    }
}
