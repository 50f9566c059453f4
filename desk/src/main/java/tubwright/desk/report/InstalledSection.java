// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Conversions.poundFeetPerDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import tubwright.desk.answer.InstalledWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.response.InstalledAnswer;
import tubwright.engine.response.VariantAnswer;

/** Stiffness with what is bolted on, the springs from hub to hub, and what pick-ups and wheels lose. */
final class InstalledSection {
    private InstalledSection() {}

    static Section of(RunAnswer answer) {
        StringBuilder body = new StringBuilder();
        for (VariantAnswer variant : answer.variants()) {
            variant.installed()
                    .filter(i -> i.torsion().isPresent() || i.hubToHub().isPresent())
                    .ifPresent(i -> variant(variant.variant(), answer.variants().size() > 1, i, body));
        }
        return new Section("With what is bolted on", body.isEmpty() ? "" : InstalledWords.SERIES, body.toString());
    }

    private static void variant(String name, boolean several, InstalledAnswer answer, StringBuilder body) {
        if (several) {
            body.append("<h3>").append(escape(name)).append("</h3>");
        }
        table(body, "torsional stiffness", "N·m/deg", "lbf·ft/deg");
        answer.torsion().ifPresent(t -> {
            String fitted = t.fitted().isEmpty() ? "masses" : String.join(", ", t.fitted());
            stiffness(body, "tub alone, " + t.name() + ", between sections", t.sections());
            stiffness(body, "with " + fitted + ", between sections", t.sectionsWith());
            stiffness(body, "tub alone, between hardpoints", t.hardpoints());
            stiffness(body, "with " + fitted + ", between hardpoints", t.hardpointsWith());
        });
        answer.hubToHub().ifPresent(h -> {
            stiffness(body, "axle to axle, links rigid", h.withoutLinks());
            stiffness(body, "hub to hub", h.stiffness());
        });
        body.append("</tbody></table>");
        answer.hubToHub().ifPresent(h -> {
            table(body, "springs in series", "share of the twist", "alone, N·m/deg");
            h.springsThatCount()
                    .forEach(s -> row(
                            body,
                            s.name(),
                            percent(s.share()),
                            significant(perDegree(s.stiffness()), 3, NARROW_SPACE)));
            body.append("</tbody></table>");
        });
        InstalledWords.massGap(answer)
                .ifPresent(t -> body.append("<p>").append(escape(t)).append("</p>"));
        if (!answer.pickUps().isEmpty()) {
            table(body, "pick-up", "N/mm", "along x, y, z");
            answer.pickUps()
                    .forEach(p -> row(
                            body,
                            p.name(),
                            significant(p.stiffness() / 1e3, 3, NARROW_SPACE),
                            fixed(p.direction()[0], 2, NARROW_SPACE) + ", " + fixed(p.direction()[1], 2, NARROW_SPACE)
                                    + ", " + fixed(p.direction()[2], 2, NARROW_SPACE)));
            body.append("</tbody></table><p>")
                    .append(escape(InstalledWords.PICK_UPS))
                    .append("</p>");
        }
        if (!answer.alignment().isEmpty()) {
            alignment(body, "camber, deg", answer.alignment(), InstalledAnswer.Lost::camber);
            alignment(body, "toe, deg", answer.alignment(), InstalledAnswer.Lost::toe);
            body.append("<p>").append(escape(InstalledWords.ALIGNMENT)).append("</p>");
        }
    }

    /** One row a case, one column a wheel. */
    private static void alignment(
            StringBuilder body,
            String what,
            List<InstalledAnswer.Lost> all,
            ToDoubleFunction<InstalledAnswer.Lost> angle) {
        List<String> wheels =
                all.stream().map(InstalledAnswer.Lost::wheel).distinct().toList();
        List<String> heads = new ArrayList<>(List.of(what));
        heads.addAll(wheels);
        table(body, heads.toArray(String[]::new));
        for (String load :
                all.stream().map(InstalledAnswer.Lost::load).distinct().toList()) {
            List<String> cells = new ArrayList<>(List.of(load));
            for (String wheel : wheels) {
                cells.add(all.stream()
                        .filter(l -> l.load().equals(load) && l.wheel().equals(wheel))
                        .findFirst()
                        .map(l -> fixed(Math.toDegrees(angle.applyAsDouble(l)), 3, NARROW_SPACE))
                        .orElse("–"));
            }
            row(body, cells.toArray(String[]::new));
        }
        body.append("</tbody></table>");
    }

    private static void stiffness(StringBuilder body, String what, double value) {
        row(
                body,
                what,
                significant(perDegree(value), 3, NARROW_SPACE),
                significant(poundFeetPerDegree(value), 3, NARROW_SPACE));
    }

    private static void table(StringBuilder body, String... heads) {
        body.append("<table class=\"tight\"><thead><tr>");
        for (int i = 0; i < heads.length; i++) {
            body.append(i == 0 ? "<th>" : "<th class=\"n\">")
                    .append(escape(heads[i]))
                    .append("</th>");
        }
        body.append("</tr></thead><tbody>");
    }

    private static void row(StringBuilder body, String... cells) {
        body.append("<tr>");
        for (int i = 0; i < cells.length; i++) {
            body.append(i == 0 ? "<td>" : "<td class=\"n\">")
                    .append(escape(cells[i]))
                    .append("</td>");
        }
        body.append("</tr>");
    }
}
