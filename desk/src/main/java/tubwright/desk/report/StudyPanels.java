// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.desk.answer.StudyAnswer;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.plan.Variation;

/** What a study of one number found: panels one above the other over that number, one for each unit and size of numbers. */
final class StudyPanels {
    private static final double WIDTH = 860;
    private static final double LEFT = 70;
    private static final double RIGHT = 490;
    private static final double PANEL = 200;
    private static final double GAP = 46;
    private static final int LOOKS = 4;

    /** Numbers of one unit further apart than this have panels of their own: enclosed area beside area of plies. */
    private static final double APART = 20;

    private StudyPanels() {}

    /** Whether the study is of one number. */
    static boolean suits(StudyAnswer answer) {
        return answer.plan().variations().size() == 1
                && answer.plan().variations().getFirst().words().isEmpty();
    }

    static String draw(StudyAnswer answer) {
        List<List<StudyAnswer.Column>> panels = panels(answer.columns());
        Variation variation = answer.plan().variations().getFirst();
        double[] ends = answer.findings().variants().stream()
                .flatMap(v -> v.points().stream())
                .filter(p -> p.row().filter(r -> r.ok()).isPresent())
                .mapToDouble(p -> variation.number(p.shares()[0]))
                .sorted()
                .toArray();
        if (ends.length == 0) {
            return "";
        }
        Axis across = Axis.exact(ends[0], Math.max(ends[ends.length - 1], ends[0] + 1e-9), LEFT, RIGHT);
        double height = panels.size() * (PANEL + GAP) + 40;
        Svg svg = new Svg(WIDTH, height, answer.plan().name() + ": what was read against " + variation.name());
        double top = 20;
        for (List<StudyAnswer.Column> each : panels) {
            panel(svg, answer, across, each, top);
            top += PANEL + GAP;
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, top - GAP + 40, StudyAnswer.heading(variation));
        return svg.done();
    }

    private static List<List<StudyAnswer.Column>> panels(List<StudyAnswer.Column> columns) {
        List<List<StudyAnswer.Column>> panels = new ArrayList<>();
        for (StudyAnswer.Column column : columns) {
            double most = most(column);
            if (most == 0) {
                continue;
            }
            panels.stream()
                    .filter(p -> p.getFirst().unit().equals(column.unit()))
                    .filter(p -> Math.max(most, most(p.getFirst())) < APART * Math.min(most, most(p.getFirst())))
                    .findFirst()
                    .orElseGet(() -> {
                        panels.add(new ArrayList<>());
                        return panels.getLast();
                    })
                    .add(column);
        }
        return panels;
    }

    /** The largest number of a column, whatever its sign; 0 where there is none. */
    private static double most(StudyAnswer.Column column) {
        return column.byVariant().stream().mapToDouble(StudyPanels::most).max().orElse(0);
    }

    private static double most(double[] values) {
        return Arrays.stream(values)
                .filter(Double::isFinite)
                .map(Math::abs)
                .max()
                .orElse(0);
    }

    private static void panel(Svg svg, StudyAnswer answer, Axis across, List<StudyAnswer.Column> columns, double top) {
        String unit = columns.getFirst().unit();
        // A line of nothing but noughts, as of the plies of a tub of sheet, is not drawn.
        double[] all = columns.stream()
                .flatMap(c -> c.byVariant().stream())
                .filter(values -> most(values) > 0)
                .flatMapToDouble(Arrays::stream)
                .filter(Double::isFinite)
                .toArray();
        double low = Arrays.stream(all).min().orElseThrow();
        double high = Arrays.stream(all).max().orElseThrow();
        double margin = 0.06 * Math.max(high - low, 1e-6 * Math.abs(high) + 1e-12);
        double floor = low < 0 ? low - margin : Math.max(0, low - margin);
        Axis up = Axis.round(floor, high + margin, top + PANEL, top, 4);
        for (double tick : up.ticks(4)) {
            svg.line("grid", LEFT, up.at(tick), RIGHT, up.at(tick));
            svg.text("figure end", LEFT - 8, up.at(tick) + 4, fixed(tick, up.decimals(4), NARROW_SPACE));
        }
        for (double tick : across.ticks(8)) {
            svg.line("tick", across.at(tick), top + PANEL, across.at(tick), top + PANEL + 5);
            svg.text("figure middle", across.at(tick), top + PANEL + 18, fixed(tick, across.decimals(8), NARROW_SPACE));
        }
        svg.text("axis", LEFT, top - 6, unit.equals("1") ? "" : unit);
        List<Findings.OfVariant> variants = answer.findings().variants();
        List<double[]> names = new ArrayList<>();
        for (StudyAnswer.Column column : columns) {
            for (int v = 0; v < variants.size(); v++) {
                if (most(column.byVariant().get(v)) == 0) {
                    continue;
                }
                boolean bound = column.name().startsWith("bound");
                String look = "s" + (variants.size() > 1 ? v % LOOKS : columns.indexOf(column) % LOOKS);
                boolean second = variants.size() > 1 && columns.indexOf(column) > 0;
                line(svg, answer, across, up, column, v, look, bound || second, bound);
                String words = variants.size() > 1
                        ? column.name() + ", " + variants.get(v).variant()
                        : column.name();
                if (!bound) { // it lies so close below its mass that the two names would cover each other
                    name(svg, up, column.byVariant().get(v), names, look, words);
                }
            }
        }
    }

    /** Points joined; those of the tub as drawn are larger than those laid up anew. */
    private static void line(
            Svg svg,
            StudyAnswer answer,
            Axis across,
            Axis up,
            StudyAnswer.Column column,
            int v,
            String look,
            boolean thin,
            boolean bare) {
        List<Findings.OfPoint> points = answer.findings().variants().get(v).points();
        Variation variation = answer.plan().variations().getFirst();
        double[] values = column.byVariant().get(v);
        int[] order = IntStream.range(0, points.size())
                .boxed()
                .sorted(java.util.Comparator.comparingDouble(
                        i -> variation.number(points.get(i).shares()[0])))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] x = Arrays.stream(order)
                .mapToDouble(i -> across.at(variation.number(points.get(i).shares()[0])))
                .toArray();
        double[] y = Arrays.stream(order)
                .mapToDouble(i -> Double.isFinite(values[i]) ? up.at(values[i]) : Double.NaN)
                .toArray();
        svg.path("curve " + (thin ? "thin " : "") + look, x, y);
        for (int i = 0; i < x.length && !bare; i++) {
            if (Double.isFinite(y[i])) {
                svg.circle("jump " + look, x[i], y[i], thin ? 2.5 : 3.5);
            }
        }
    }

    /** The name at the right end of its line, moved down where another stands already. */
    private static void name(Svg svg, Axis up, double[] values, List<double[]> taken, String look, String words) {
        double last = Double.NaN;
        for (double each : values) {
            last = Double.isFinite(each) ? each : last;
        }
        if (!Double.isFinite(last)) {
            return;
        }
        double y = up.at(last) + 4;
        boolean moved = true;
        while (moved) {
            moved = false;
            for (double[] each : taken) {
                if (Math.abs(each[0] - y) < 13) {
                    y = each[0] + 13;
                    moved = true;
                }
            }
        }
        taken.add(new double[] {y});
        svg.text("name " + look, RIGHT + 10, y, words);
    }
}
