// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RigAnswer;
import tubwright.desk.text.Figures;
import tubwright.engine.rig.Estimate;
import tubwright.engine.rig.Finding;
import tubwright.engine.rig.Loop;
import tubwright.engine.rig.TorsionReading;

/** The page of a torsion test: stiffness and what its ± is made of, the loop, the twist line, what is doubtful. */
public final class RigNote {
    private static final String GAP = Figures.NARROW_SPACE;

    private RigNote() {}

    /** The whole page. */
    public static String write(RigAnswer answer) {
        List<Section> sections = new ArrayList<>();
        for (TorsionReading test : answer.tests()) {
            String name = test.readings().setup().test();
            sections.add(new Section(
                    capital(name),
                    "± holds the true value with 95 % chance (GUM, JCGM 100:2008).",
                    stiffness(test) + findings(test)));
            sections.add(new Section(
                    "Torque and angle",
                    "Rising branches are drawn full, falling ones broken. A loop is friction or slop; its area is work"
                            + " lost.",
                    RigCharts.loop(test) + loops(test)));
            sections.add(new Section(
                    "Twist line",
                    "Each bar is a measured station with its 95 % interval"
                            + (answer.predicted().isPresent() ? "; the line is the last run." : "."),
                    RigCharts.twist(test, answer.predicted())));
        }
        answer.split()
                .ifPresent(s -> sections.add(new Section(
                        "Hub to hub",
                        "The two tests are springs in series.",
                        "<p>Between hub and tub lie "
                                + plusMinus(perDegree(s.suspension()), perDegree(s.expanded()), GAP)
                                + " N·m/deg; " + percent(s.tubShare())
                                + " of the flexibility from hub to hub is the tub's.</p>")));
        answer.notSplit()
                .ifPresent(words -> sections.add(
                        new Section("Hub to hub", "Not told apart.", "<p>" + Html.escape(words) + "</p>")));
        String head = "<header><div class=\"name\"><p class=\"kicker\">Torsion test</p><h1>"
                + Html.escape(answer.title()) + "</h1></div></header>\n";
        return Note.page(answer.title() + ": torsion test", head, sections, "");
    }

    private static String stiffness(TorsionReading test) {
        StringBuilder rows = new StringBuilder();
        row(rows, "both branches", test.all());
        test.withoutRig().ifPresent(e -> row(rows, "rig taken out", e));
        test.loading().ifPresent(e -> row(rows, "loading", e));
        test.unloading().ifPresent(e -> row(rows, "unloading", e));
        test.withoutOutliers().ifPresent(e -> row(rows, "without the outliers", e));
        StringBuilder parts = new StringBuilder();
        Estimate best = test.best();
        best.uncertainty()
                .contributions()
                .forEach(c -> parts.append("<tr><th>")
                        .append(Html.escape(c.name()))
                        .append("</th><td class=\"n\">")
                        .append(percent(c.standard() / best.stiffness()))
                        .append("</td></tr>"));
        return "<div class=\"heads\"><div class=\"head lead\"><h3>torsional stiffness</h3><p class=\"value\"><strong>"
                + significant(perDegree(best.stiffness()), 4, GAP) + "</strong> <span class=\"band\">± "
                + significant(perDegree(best.expanded()), 2, GAP)
                + "</span> <span class=\"unit\">N·m/deg</span></p><p class=\"foot\">"
                + Html.escape(test.span() + "; " + test.readings().source()) + "</p></div></div>"
                + "<table class=\"tight\"><thead><tr><th>fit</th><th class=\"n\">N·m/deg</th><th class=\"n\">±</th>"
                + "<th class=\"n\">R²</th><th class=\"n\">steps</th></tr></thead><tbody>" + rows + "</tbody></table>"
                + "<h3>What the ± is made of <span>standard uncertainty over stiffness</span></h3>"
                + "<table class=\"tight\"><tbody>" + parts + "</tbody></table>";
    }

    private static void row(StringBuilder rows, String name, Estimate estimate) {
        rows.append("<tr><th>").append(name).append("</th>");
        for (String cell : List.of(
                significant(perDegree(estimate.stiffness()), 4, GAP),
                significant(perDegree(estimate.expanded()), 2, GAP),
                fixed(estimate.rSquared(), 4, GAP),
                Integer.toString(estimate.steps()))) {
            rows.append("<td class=\"n\">").append(cell).append("</td>");
        }
        rows.append("</tr>");
    }

    private static String findings(TorsionReading test) {
        if (test.findings().isEmpty()) {
            return "";
        }
        StringBuilder list = new StringBuilder("<ul class=\"warnings\">");
        for (Finding finding : test.findings()) {
            list.append("<li>").append(Html.escape(finding.toString())).append("</li>");
        }
        return list.append("</ul>").toString();
    }

    private static String loops(TorsionReading test) {
        if (test.loops().isEmpty()) {
            return "";
        }
        StringBuilder rows = new StringBuilder();
        for (Loop loop : test.loops()) {
            rows.append("<tr><th>").append(loop.cycle()).append("</th>");
            for (String cell : List.of(
                    fixed(Math.toDegrees(loop.width()), 4, GAP),
                    percent(loop.share()),
                    significant(loop.area(), 2, GAP),
                    fixed(Math.toDegrees(loop.residual()), 4, GAP))) {
                rows.append("<td class=\"n\">").append(cell).append("</td>");
            }
            rows.append("</tr>");
        }
        return "<table class=\"tight\"><thead><tr><th>cycle</th><th class=\"n\">loop width, deg</th>"
                + "<th class=\"n\">of the angle</th><th class=\"n\">lost, J</th><th class=\"n\">left at the end, deg</th>"
                + "</tr></thead><tbody>" + rows + "</tbody></table>";
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
