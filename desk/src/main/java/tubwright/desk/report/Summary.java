// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.report.Html.tag;
import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Conversions.poundFeetPerDegree;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.Optional;
import tubwright.desk.answer.CalibratedWords;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.RunAnswer.Target;
import tubwright.desk.text.Conversions;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.VariantAnswer;

/** The first section: the numbers somebody came for, the targets, and what to know before believing them. */
final class Summary {
    private Summary() {}

    static Section section(RunAnswer answer) {
        VariantAnswer main = answer.main();
        StringBuilder body = new StringBuilder("<div class=\"heads\">");
        Optional<CaseAnswer> torsion = Reading.torsion(main);
        torsion.ifPresent(t -> {
            double k = t.stiffness().value();
            String foot = fixed(poundFeetPerDegree(k), 0, NARROW_SPACE) + " lbf·ft/deg, between x = "
                    + fixed(1000 * t.frontStation(), 0, NARROW_SPACE) + " mm and "
                    + fixed(1000 * t.rearStation(), 0, NARROW_SPACE) + " mm";
            String value = plusMinus(perDegree(k), perDegree(t.stiffness().error()), NARROW_SPACE);
            body.append(head("Torsional stiffness", value, "N·m/deg", foot, "lead"));
        });
        double mass = main.mass().whole().mass();
        body.append(head(
                "Mass",
                significant(mass, 4, NARROW_SPACE),
                "kg",
                significant(mass / Conversions.POUND, 4, NARROW_SPACE) + " lb in " + main.pieceCount()
                        + (main.pieceCount() == 1 ? " piece" : " pieces"),
                ""));
        Reading.torsionPerMass(main)
                .ifPresent(k -> body.append(head(
                        "Stiffness per kilogram",
                        significant(perDegree(k), 3, NARROW_SPACE),
                        "N·m/deg/kg",
                        rival(answer),
                        "")));
        Reading.bending(main)
                .ifPresent(b -> body.append(head(
                        "Bending stiffness",
                        plusMinus(b.stiffness().value() / 1e6, b.stiffness().error() / 1e6, NARROW_SPACE),
                        "kN/mm",
                        "read at x = " + fixed(1000 * b.frontStation(), 0, NARROW_SPACE) + " mm",
                        "")));
        body.append("</div>");
        torsion.ifPresent(t -> body.append(tag(
                "p",
                "included",
                "Included in the torsional stiffness: " + escape(t.includes()) + ". The ± is the mesh error only."
                        + (t.stiffnessAtHardpoints() > 0
                                ? " Between the loaded and the held hardpoints themselves, with that give, it is "
                                        + significant(perDegree(t.stiffnessAtHardpoints()), 3, NARROW_SPACE)
                                        + " N·m/deg."
                                : ""))));
        answer.calibrated().ifPresent(c -> body.append(tag("p", "included", escape(CalibratedWords.of(c)))));
        targets(body, answer);
        if (!answer.warnings().isEmpty()) {
            body.append("<ul class=\"warnings\">");
            answer.warnings().forEach(w -> body.append("<li>").append(escape(w)).append("</li>"));
            body.append("</ul>");
        }
        body.append(tag("p", "caution", escape(RunAnswer.CAUTION)));
        return new Section("The answer", "", body.toString());
    }

    private static String rival(RunAnswer answer) {
        if (answer.variants().size() < 2) {
            return "";
        }
        VariantAnswer other = answer.variants().get(1);
        Optional<Double> ours = Reading.torsionPerMass(answer.main());
        Optional<Double> theirs = Reading.torsionPerMass(other);
        return ours.isEmpty() || theirs.isEmpty()
                ? ""
                : significant(ours.get() / theirs.get(), 3, NARROW_SPACE) + " times " + other.variant();
    }

    private static String head(String what, String value, String unit, String foot, String kind) {
        int error = value.indexOf(" ±");
        String number = error < 0 ? value : value.substring(0, error);
        String band = error < 0 ? "" : "<span class=\"band\">" + escape(value.substring(error + 1)) + "</span> ";
        return "<div class=\"head " + kind + "\"><h3>" + escape(what) + "</h3><p class=\"value\"><strong>"
                + escape(number)
                + "</strong> " + band + "<span class=\"unit\">" + escape(unit) + "</span></p><p class=\"foot\">"
                + escape(foot) + "</p></div>";
    }

    private static void targets(StringBuilder body, RunAnswer answer) {
        if (answer.targets().isEmpty()) {
            return;
        }
        body.append("<ul class=\"targets\">");
        for (Target target : answer.targets()) {
            Target.Standing standing = target.standing();
            String mark = switch (standing) {
                case MET -> "met";
                case MISSED -> "missed";
                case TOO_CLOSE_TO_CALL -> "too close to call";
            };
            String kind = switch (standing) {
                case MET -> "met";
                case MISSED -> "missed";
                case TOO_CLOSE_TO_CALL -> "close";
            };
            body.append("<li class=\"")
                    .append(kind)
                    .append("\"><b>")
                    .append(mark)
                    .append("</b> ");
            body.append(escape(target.what() + " " + (target.atLeast() ? "at least " : "at most ")
                    + (significant(target.limit(), 4, NARROW_SPACE) + " " + target.unit()).strip() + ": "
                    + comesTo(target)));
            body.append("</li>");
        }
        body.append("</ul>");
    }

    private static String comesTo(Target target) {
        if (!Double.isFinite(target.value())) {
            return target.value() > 0 ? "none found" : "not answered";
        }
        return ("comes to " + plusMinus(target.value(), target.error() == 0 ? Double.NaN : target.error(), NARROW_SPACE)
                        + " " + target.unit())
                .strip();
    }
}
