// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StabilityWords;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Stability;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;

/** Buckling and natural frequencies of every variant, with pictures of the first variant's modes. */
final class StabilitySection {
    private StabilitySection() {}

    static List<Section> of(RunAnswer answer, Gallery gallery) {
        StringBuilder buckling = new StringBuilder();
        StringBuilder vibration = new StringBuilder();
        for (var variant : answer.variants()) {
            Stability stability = variant.stability();
            boolean main = variant == answer.main();
            if (!stability.buckling().isEmpty()) {
                heading(buckling, answer, variant.variant());
                buckling(buckling, stability.buckling());
                if (main) {
                    plates(buckling, gallery, "buckling ");
                }
            }
            if (stability.free().isPresent()) {
                heading(vibration, answer, variant.variant());
                stability.free().ifPresent(v -> vibrations(vibration, "free in space", v));
                stability.held().ifPresent(v -> vibrations(vibration, "held", v));
                if (main) {
                    plates(vibration, gallery, "mode ");
                }
            }
        }
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("When it buckles", StabilityWords.BUCKLING, buckling.toString()));
        sections.add(new Section("How it vibrates", StabilityWords.VIBRATION, vibration.toString()));
        return sections;
    }

    private static void heading(StringBuilder body, RunAnswer answer, String variant) {
        if (answer.variants().size() > 1) {
            body.append("<h3>").append(escape(variant)).append("</h3>");
        }
    }

    private static void buckling(StringBuilder body, List<CaseBuckling> cases) {
        body.append("<table><thead><tr><th>case</th><th>factor</th><th>most of the mode's energy</th>"
                + "<th>moves most at</th><th>next factors</th><th>count</th></tr></thead><tbody>");
        for (CaseBuckling each : cases) {
            body.append("<tr>");
            cell(body, each.load());
            cell(body, StabilityWords.factor(each, NARROW_SPACE));
            cell(body, each.lowest().map(StabilityWords::where).orElse(""));
            cell(
                    body,
                    each.lowest()
                            .map(b -> StabilityWords.place(b.place(), NARROW_SPACE))
                            .orElse(""));
            StringBuilder next = new StringBuilder();
            for (Buckle mode : each.modes()
                    .subList(Math.min(1, each.modes().size()), each.modes().size())) {
                next.append(next.isEmpty() ? "" : "; ")
                        .append(significant(mode.factor(), 3, NARROW_SPACE))
                        .append(" in ")
                        .append(mode.zone());
            }
            cell(body, next.toString());
            cell(body, StabilityWords.counted(each, NARROW_SPACE));
            body.append("</tr>");
        }
        body.append("</tbody></table>");
    }

    private static void vibrations(StringBuilder body, String how, Vibrations vibrations) {
        body.append("<p>").append(escape("Natural frequencies " + how + ". "));
        for (Mode.Motion motion : StabilityWords.motions()) {
            body.append(escape(
                    "First " + motion.words() + ": " + StabilityWords.first(vibrations, motion, NARROW_SPACE) + ". "));
        }
        body.append(escape(StabilityWords.counted(vibrations, NARROW_SPACE))).append("</p>");
        body.append("<table><thead><tr><th>Hz</th><th>mode</th><th>torsion</th><th>vertical</th><th>sideways</th>"
                + "<th>panels</th><th>strained most</th><th>effective mass x, y, z, kg</th></tr></thead><tbody>");
        for (Mode mode : vibrations.modes().elastic()) {
            body.append("<tr>");
            cell(body, significant(mode.frequency(), 4, NARROW_SPACE));
            cell(body, mode.name());
            cell(body, percent(mode.share(Mode.Motion.TORSION)));
            cell(body, percent(mode.share(Mode.Motion.VERTICAL)));
            cell(body, percent(mode.share(Mode.Motion.SIDEWAYS)));
            cell(body, percent(mode.share(Mode.Motion.LOCAL)));
            cell(body, mode.strained());
            double[] m = mode.effectiveMass();
            cell(
                    body,
                    how.equals("held")
                            ? significant(m[0], 2, NARROW_SPACE) + ", " + significant(m[1], 2, NARROW_SPACE) + ", "
                                    + significant(m[2], 2, NARROW_SPACE)
                            : "–");
            body.append("</tr>");
        }
        body.append("</tbody></table>");
    }

    private static void plates(StringBuilder body, Gallery gallery, String prefix) {
        List<String> names = gallery.names(prefix);
        if (names.isEmpty()) {
            return;
        }
        body.append("<div class=\"pair\">");
        for (String name : names) {
            gallery.plate(name)
                    .ifPresent(
                            p -> body.append(TwistSections.figure(p, "plate", name, name.substring(prefix.length()))));
        }
        body.append("</div>");
    }

    private static void cell(StringBuilder body, String text) {
        body.append("<td>").append(escape(text)).append("</td>");
    }
}
