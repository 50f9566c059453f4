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
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.picture.EnergyScale;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.TubPicture;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.engine.safety.damage.Aftermath;
import tubwright.engine.safety.damage.DamageMap;
import tubwright.engine.safety.damage.PatchAnswer;

/** What hits cost as one page of HTML: maps on the tub, variant beside variant, and tables. */
public final class DamagePage {
    private static final int ROWS = 24;

    private final DamageAnswer answer;

    private DamagePage(DamageAnswer answer) {
        this.answer = answer;
    }

    /** The whole page. */
    public static String write(DamageAnswer answer) {
        return new DamagePage(answer).page();
    }

    private String page() {
        List<Section> sections = new ArrayList<>();
        if (answer.at().isPresent()) {
            for (DamageAnswer.PerVariant variant : answer.variants()) {
                sections.add(new Section(
                        variant.name(),
                        variant.construction(),
                        one(variant)
                                + variant.aftermath().map(DamagePage::aftermath).orElse("")));
            }
        } else {
            sections.addAll(scan());
        }
        sections.add(new Section("What this is not", "", "<p>" + escape(DamageAnswer.ASIDE) + "</p>"));
        return Note.page(answer.tub() + ": damage", head(), sections, "");
    }

    private String head() {
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "patch", fixed(1e3 * answer.size(), 0, NARROW_SPACE) + " mm");
        for (DamageAnswer.PerVariant variant : answer.variants()) {
            Note.cell(cells, variant.name(), fixed(variant.unknowns(), 0, NARROW_SPACE) + " unknowns");
        }
        String what = answer.at()
                .map(at -> "Hit at " + at + ".")
                .orElse("A patch moved over the whole tub; at each place it is a "
                        + answer.degree().words() + ", and the rest carries the loads.");
        return "<header><div class=\"name\"><p class=\"kicker\">Damage</p><h1>" + escape(answer.tub()) + "</h1><p>"
                + escape(what) + "</p></div><dl class=\"block\">" + cells + "</dl></header>\n";
    }

    private List<Section> scan() {
        List<DamageMap> maps = answer.variants().parallelStream()
                .map(v -> DamageMap.of(v.mesh(), v.patches()))
                .toList();
        double[] first = maps.getFirst().lost().clone();
        for (int e = 0; e < first.length; e++) {
            first[e] = Double.isNaN(first[e]) ? 0 : first[e];
        }
        EnergyScale scale = EnergyScale.of(answer.variants().getFirst().mesh(), first);
        StringBuilder lost = new StringBuilder();
        StringBuilder reserve = new StringBuilder();
        boolean loads = false;
        for (int v = 0; v < maps.size(); v++) {
            DamageAnswer.PerVariant variant = answer.variants().get(v);
            DamageMap map = maps.get(v);
            TubPicture painter = new TubPicture(variant.mesh());
            double[] level = Arrays.stream(map.lost()).map(scale::position).toArray();
            lost.append(figure(painter.levels(level, From.THREE_QUARTER_FRONT, false, 1160), variant, "stiffness lost"))
                    .append(figure(
                            painter.levels(level, From.INTO_THE_CUT, true, 880), variant, "stiffness lost, cut"));
            double[] used =
                    Arrays.stream(map.reserve()).map(ReserveSection::level).toArray();
            if (variant.patches().stream().anyMatch(p -> !p.loads().isEmpty())) {
                loads = true;
                reserve.append(figure(
                                painter.levels(used, From.THREE_QUARTER_FRONT, false, 1160), variant, "least reserve"))
                        .append(figure(
                                painter.levels(used, From.INTO_THE_CUT, true, 880), variant, "least reserve, cut"));
            }
        }
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Side by side", "Positions are spread evenly over all skin and walls.", table()));
        sections.add(new Section(
                "How much each patch matters",
                "Share of the torsional stiffness that the worst patch over a spot takes with it; one scale for all"
                        + " variants. Where part of the couple acted on what is gone the share is not known and pale.",
                TwistSections.scaleBar(
                                new EnergyScale(100 * scale.low(), 100 * scale.high()),
                                "Colour scale of stiffness lost",
                                "% lost")
                        + lost));
        sections.add(new Section(
                "Where damage would spread",
                "Lowest reserve factor beside the patch with the loads gone round it, over all load cases, on the scale of"
                        + " all reserve pictures. At the hot end it is one or less: there the hit does not stay local.",
                loads ? ReserveSection.scale() + reserve : ""));
        for (DamageAnswer.PerVariant variant : answer.variants()) {
            sections.add(new Section(variant.name() + ", place by place", ReserveWords.ASIDE, places(variant)));
            if (!variant.hotSpots().isEmpty()) {
                StringBuilder spots = new StringBuilder();
                variant.hotSpots()
                        .forEach(spot -> spots.append("<h3>")
                                .append(escape(spot.patch().patch().name() + ", "
                                        + spot.patch().patch().region()))
                                .append("</h3>")
                                .append(aftermath(spot.aftermath())));
                sections.add(new Section(
                        variant.name() + ", beyond the weakest holes",
                        "Buckling of the rest, joints, inserts and panels of sheet with the hole, solved anew.",
                        spots.toString()));
            }
        }
        return sections;
    }

    private static String figure(Picture picture, DamageAnswer.PerVariant variant, String what) {
        String uri = "data:image/png;base64," + Base64.getEncoder().encodeToString(Png.encode(picture.image()));
        return TwistSections.figure(
                new Gallery.Plate(picture, uri),
                "plate",
                variant.name() + ": " + what,
                variant.name() + ": " + what + ".");
    }

    private String table() {
        StringBuilder rows = heads(
                "variant",
                "positions",
                "half lose at most, %",
                "worst, %",
                "reserve lost by the hit",
                "leave something loose");
        for (DamageAnswer.PerVariant variant : answer.variants()) {
            List<PatchAnswer> dearest = variant.dearest();
            rows.append("<tr><td>").append(escape(variant.name())).append("</td>");
            cell(rows, fixed(variant.patches().size(), 0, NARROW_SPACE));
            cell(rows, significant(100 * variant.usualLoss(), 2, NARROW_SPACE));
            cell(
                    rows,
                    dearest.isEmpty()
                            ? "–"
                            : significant(100 * dearest.getFirst().torsionLost(), 2, NARROW_SPACE));
            cell(rows, Double.isNaN(variant.spreading()) ? "–" : percent(variant.spreading()));
            cell(
                    rows,
                    fixed(variant.patches().stream().filter(PatchAnswer::loose).count(), 0, NARROW_SPACE));
            rows.append("</tr>");
        }
        return rows.append("</tbody></table>").toString();
    }

    private static String places(DamageAnswer.PerVariant variant) {
        StringBuilder rows = heads("at", "zone", "torsion lost", "before", "after", "case", "how", "");
        List<PatchAnswer> both =
                new ArrayList<>(variant.weakest().stream().limit(ROWS).toList());
        variant.dearest().stream().limit(ROWS).filter(p -> !both.contains(p)).forEach(both::add);
        both.forEach(p -> {
            rows.append("<tr>");
            text(rows, p.patch().name());
            text(rows, p.patch().region());
            cell(rows, DamageAnswer.lost(p));
            cell(rows, factor(DamageAnswer.before(p)));
            cell(rows, factor(DamageMap.reserve(p)));
            text(rows, p.worst().map(PatchAnswer.UnderLoad::name).orElse(""));
            text(
                    rows,
                    p.worst()
                            .flatMap(PatchAnswer.UnderLoad::after)
                            .map(ReserveWords::what)
                            .orElse(""));
            text(rows, DamageAnswer.aside(p));
            rows.append("</tr>");
        });
        return rows.append("</tbody></table>").toString();
    }

    private static String factor(double value) {
        return value > 100 ? "> 100" : fixed(value, 2, NARROW_SPACE);
    }

    private static String one(DamageAnswer.PerVariant variant) {
        StringBuilder body = new StringBuilder();
        for (PatchAnswer p : variant.patches()) {
            body.append("<h3>")
                    .append(escape(p.degree().words()))
                    .append(", ")
                    .append(fixed(1e4 * p.patch().area(), 0, NARROW_SPACE))
                    .append(" cm²</h3>");
            StringBuilder rows = heads("case", "before", "after", "how");
            for (PatchAnswer.Stiffness each : p.stiffness()) {
                double unit = each.torsion() ? Math.PI / 180 : 1e-3;
                rows.append("<tr>");
                text(rows, each.name() + ", stiffness, " + (each.torsion() ? "N·m/deg" : "N/mm"));
                cell(rows, significant(unit * each.before(), 5, NARROW_SPACE));
                cell(
                        rows,
                        Double.isNaN(each.after()) ? "not known" : significant(unit * each.after(), 5, NARROW_SPACE));
                text(rows, Double.isNaN(each.after()) ? "part of the load acted on what is gone" : "");
                rows.append("</tr>");
            }
            for (PatchAnswer.UnderLoad each : p.loads()) {
                rows.append("<tr>");
                text(rows, each.name() + ", reserve factor");
                cell(rows, each.before().map(ReserveWords::value).orElse("–"));
                cell(
                        rows,
                        each.loose()
                                ? "not carried"
                                : each.after().map(ReserveWords::value).orElse("–"));
                text(
                        rows,
                        each.after()
                                .map(r -> r.zone() + ": " + ReserveWords.what(r))
                                .orElse(""));
                rows.append("</tr>");
            }
            body.append(rows).append("</tbody></table>");
            String aside = DamageAnswer.aside(p);
            if (!aside.isEmpty()) {
                body.append("<p>").append(escape(aside)).append("</p>");
            }
        }
        return body.toString();
    }

    private static String aftermath(Aftermath after) {
        StringBuilder body = new StringBuilder();
        if (!after.buckling().isEmpty()) {
            StringBuilder rows = heads("lowest buckling factor with the hole", "before", "after");
            after.buckling().forEach(b -> {
                rows.append("<tr>");
                text(rows, b.name());
                cell(rows, factor(b.before()));
                cell(rows, factor(b.after()));
                rows.append("</tr>");
            });
            body.append(rows).append("</tbody></table>");
        }
        if (!after.rows().isEmpty()) {
            StringBuilder rows = heads("joints, inserts and sheet that are left", "before", "after", "case", "how");
            after.rows().stream().limit(ROWS).forEach(r -> {
                rows.append("<tr>");
                text(rows, r.after().zone());
                cell(rows, factor(r.before()));
                cell(rows, factor(r.after().value()));
                text(rows, r.after().load());
                text(rows, r.after().check());
                rows.append("</tr>");
            });
            body.append(rows).append("</tbody></table>");
        }
        return body.toString();
    }

    private static StringBuilder heads(String... names) {
        StringBuilder rows = new StringBuilder("<table class=\"tight\"><thead><tr>");
        for (String name : names) {
            rows.append("<th>").append(escape(name)).append("</th>");
        }
        return rows.append("</tr></thead><tbody>");
    }

    private static void cell(StringBuilder rows, String text) {
        rows.append("<td class=\"n\">").append(escape(text)).append("</td>");
    }

    private static void text(StringBuilder rows, String text) {
        rows.append("<td>").append(escape(text)).append("</td>");
    }
}
