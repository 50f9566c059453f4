// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.Arrays;
import java.util.Optional;
import tubwright.desk.answer.StudyAnswer;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.findings.LayupDraws;
import tubwright.fleet.statistics.Probability;

/** Drawn layups as a row of bars, with what it means for the targets and which inputs are to blame. */
final class LayupDrawing {
    private static final double WIDTH = 860;
    private static final double LEFT = 40;
    private static final double RIGHT = 830;
    private static final double TOP = 20;
    private static final double BOTTOM = 240;
    private static final double UNIT = Math.PI / 180e3;
    private static final double COUNTS = 0.002;

    private LayupDrawing() {}

    static String of(StudyAnswer answer) {
        StringBuilder body = new StringBuilder();
        for (Findings.OfVariant variant : answer.findings().variants()) {
            variant.layups().ifPresent(draws -> {
                body.append("<h3>").append(Html.escape(variant.variant())).append("</h3>");
                body.append(bars(draws)).append(words(answer, draws)).append(inputs(draws));
            });
        }
        return body.toString();
    }

    private static String bars(LayupDraws draws) {
        Axis across = Axis.round(UNIT * draws.from(), UNIT * draws.to(), LEFT, RIGHT, 8);
        Axis up = Axis.exact(0, Arrays.stream(draws.bars()).max().orElse(1), BOTTOM, TOP);
        Svg svg = new Svg(WIDTH, BOTTOM + 50, "How often each torsional stiffness was drawn");
        double step = UNIT * (draws.to() - draws.from()) / draws.bars().length;
        for (int b = 0; b < draws.bars().length; b++) {
            double x = across.at(UNIT * draws.from() + b * step);
            double y = up.at(draws.bars()[b]);
            svg.rectangle("jump", x, y, across.at(UNIT * draws.from() + (b + 1) * step) - x - 1, BOTTOM - y);
        }
        for (double tick : across.ticks(8)) {
            svg.line("tick", across.at(tick), BOTTOM, across.at(tick), BOTTOM + 5);
            svg.text("figure middle", across.at(tick), BOTTOM + 19, fixed(tick, across.decimals(8), NARROW_SPACE));
        }
        svg.line("zero", across.at(UNIT * draws.nominal()), TOP, across.at(UNIT * draws.nominal()), BOTTOM);
        svg.text("name", across.at(UNIT * draws.nominal()) + 6, TOP + 10, "as designed");
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 42, "torsional stiffness, kN·m/deg");
        return svg.done();
    }

    private static String words(StudyAnswer answer, LayupDraws draws) {
        StringBuilder words = new StringBuilder("<p>");
        words.append(Html.escape(draws.draws() + " layups. Nine of ten lie between " + stiffness(draws.quantiles()[1])
                + " and " + stiffness(draws.quantiles()[3]) + " kN·m/deg; one of a hundred below "
                + stiffness(draws.quantiles()[0]) + ". The proved bounds of a draw are at most "
                + percent(draws.widest()) + " apart. "));
        words.append(met("The target of stiffness", draws.stiffness()));
        if (draws.stiffness().isPresent()) {
            double share = answer.plan().text().share();
            words.append(Html.escape(
                    Double.isInfinite(draws.suffices())
                            ? "Any scatter would do. "
                            : "For " + StudyAnswer.chance(share) + " of tubs to meet it all scatter may be "
                                    + significant(draws.suffices(), 2, NARROW_SPACE) + " times what it is. "));
        }
        words.append(met("The target of mass", draws.mass()));
        return words.append(Html.escape("Mass scatters by " + significant(draws.massDeviation(), 2, NARROW_SPACE)
                        + " kg with the thickness of the plies."))
                + "</p>";
    }

    private static String stiffness(double si) {
        return significant(UNIT * si, 3, NARROW_SPACE);
    }

    private static String met(String what, Optional<Probability> of) {
        return of.map(p ->
                        Html.escape(what + " is met with a probability between " + StudyAnswer.chance(p.low()) + " and "
                                + StudyAnswer.chance(p.high()) + " (" + p.counted() + " draws surely, " + p.unknown()
                                + " too near to tell). "))
                .orElse("");
    }

    private static String inputs(LayupDraws draws) {
        StringBuilder rows = new StringBuilder(
                "<table class=\"tight\"><thead><tr><th>what scatters</th><th class=\"n\">of the variance</th></tr></thead><tbody>");
        int[] order = java.util.stream.IntStream.range(0, draws.explained().length)
                .boxed()
                .sorted(java.util.Comparator.comparingDouble(i -> -draws.explained()[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int i : order) {
            if (draws.explained()[i] >= COUNTS) {
                row(rows, draws.inputs().get(i), draws.explained()[i]);
            }
        }
        row(rows, "ply angles, and what is no straight line", Math.max(0, draws.shortfall()));
        return rows.append("</tbody></table>").toString();
    }

    private static void row(StringBuilder rows, String name, double share) {
        rows.append("<tr><td>")
                .append(Html.escape(name))
                .append("</td><td class=\"n\">")
                .append(percent(share))
                .append("</td></tr>");
    }
}
