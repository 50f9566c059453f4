// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.List;
import tubwright.desk.answer.CrushAnswer;
import tubwright.engine.safety.crush.CrushChain;
import tubwright.engine.safety.crush.CrushLimit;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushSection;

/** Crush force and deceleration over stroke, with the limits that are levels, and the structure drawn below to the same scale. */
final class CrushChart {
    private static final double WIDTH = 860;
    private static final double HEIGHT = 470;
    private static final double LEFT = 66;
    private static final double RIGHT = 790;
    private static final double TOP = 34;
    private static final double BOTTOM = 320;
    private static final double BODY = 412;

    private CrushChart() {}

    static String draw(CrushAnswer.Each each, CrushRun.Answer answer) {
        double stroke = each.structure().sections().stream()
                .mapToDouble(CrushSection::stroke)
                .sum();
        double mass = each.structure().impact().mass();
        double most = answer.peakForce();
        for (CrushLimit limit : each.structure().limits()) {
            double level = level(limit, mass);
            if (level < 3 * answer.peakForce()) {
                most = Math.max(most, level);
            }
        }
        Axis x = Axis.exact(0, 1e3 * Math.max(stroke, answer.stroke()), LEFT, RIGHT);
        Axis y = Axis.round(0, 1.05e-3 * most, BOTTOM, TOP, 5);
        Svg svg = new Svg(
                WIDTH, HEIGHT, "Crush force over stroke of " + each.structure().name());
        double step = tick(1e-3 * mass * CrushRun.GRAVITY, y.high());
        for (double tick : y.ticks(5)) {
            svg.line("grid", LEFT, y.at(tick), RIGHT, y.at(tick));
            svg.text("figure end", LEFT - 8, y.at(tick) + 4, fixed(tick, y.decimals(5), NARROW_SPACE));
        }
        for (double g = step; 1e-3 * g * mass * CrushRun.GRAVITY <= y.high() * 1.0001; g += step) {
            double at = y.at(1e-3 * g * mass * CrushRun.GRAVITY);
            svg.line("tick", RIGHT, at, RIGHT + 5, at);
            svg.text("figure", RIGHT + 9, at + 4, fixed(g, 0, NARROW_SPACE) + " g");
        }
        for (double tick : x.ticks(8)) {
            svg.line("tick", x.at(tick), BOTTOM, x.at(tick), BOTTOM + 5);
            svg.text("figure middle", x.at(tick), BOTTOM + 19, fixed(tick, 0, NARROW_SPACE));
        }
        svg.line("zero", LEFT, BOTTOM, RIGHT, BOTTOM);
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 40, "stroke, mm");
        svg.text("axis", 6, TOP - 16, "crush force, kN");
        limits(svg, each, mass, x, y);
        available(svg, each, x, y);
        curve(svg, "curve s0", answer.history(), x, y);
        svg.circle(
                "ring s0",
                x.at(1e3 * answer.stroke()),
                y.at(1e-3 * answer.history().getLast().force()),
                5);
        boolean end = x.at(1e3 * answer.stroke()) > 0.75 * RIGHT;
        svg.text(
                end ? "name end" : "name",
                x.at(1e3 * answer.stroke()) + (end ? -10 : 10),
                y.at(1e-3 * answer.history().getLast().force()) + 22,
                answer.speedLeft() > 0 ? "used up" : "stops");
        each.apart().ifPresent(a -> broken(svg, a, x, y));
        body(svg, each, x);
        return svg.done();
    }

    private static void curve(Svg svg, String kind, List<CrushRun.Moment> history, Axis x, Axis y) {
        svg.path(
                kind,
                history.stream().mapToDouble(m -> x.at(1e3 * m.stroke())).toArray(),
                history.stream().mapToDouble(m -> y.at(1e-3 * m.force())).toArray());
    }

    /** Force that the structure has left to give, past where the car stops. */
    private static void available(Svg svg, CrushAnswer.Each each, Axis x, Axis y) {
        double from = 0;
        for (CrushSection s : each.structure().sections()) {
            svg.path(
                    "curve thin guess s0",
                    new double[] {x.at(1e3 * from), x.at(1e3 * (from + s.stroke()))},
                    new double[] {y.at(1e-3 * s.force(0)), y.at(1e-3 * s.force(1))});
            from += s.stroke();
        }
    }

    private static void broken(Svg svg, CrushChain.Answer answer, Axis x, Axis y) {
        if (!answer.parted().isEmpty()) {
            curve(svg, "curve thin s1", answer.history(), x, y);
            CrushRun.Moment last = answer.history().getLast();
            svg.text("name", x.at(1e3 * last.stroke()) + 8, y.at(0) - 8, "come apart");
        }
    }

    private static void limits(Svg svg, CrushAnswer.Each each, double mass, Axis x, Axis y) {
        for (CrushLimit limit : each.structure().limits()) {
            double level = 1e-3 * level(limit, mass);
            if (!(level <= y.high())) {
                continue;
            }
            double to = switch (limit) {
                case CrushLimit.PeakWithinStroke l -> Math.min(RIGHT, x.at(1e3 * l.stroke()));
                case CrushLimit.MeanWithinStroke l -> Math.min(RIGHT, x.at(1e3 * l.stroke()));
                default -> RIGHT;
            };
            svg.line("band-edge zero", LEFT, y.at(level), to, y.at(level));
            svg.text("name", LEFT + 6, y.at(level) - 5, limit.words());
        }
    }

    private static double level(CrushLimit limit, double mass) {
        return switch (limit) {
            case CrushLimit.Mean l -> mass * l.deceleration();
            case CrushLimit.Peak l -> mass * l.deceleration();
            case CrushLimit.PeakWithinStroke l -> mass * l.deceleration();
            case CrushLimit.MeanWithinStroke l -> mass * l.deceleration();
            case CrushLimit.PeakWithinEnergy l -> mass * l.deceleration();
            case CrushLimit.Force l -> l.force();
            case CrushLimit.TimeAbove l -> Double.POSITIVE_INFINITY;
        };
    }

    /** The structure from its tip, as high as its area is large, its lengths shrunk to their stroke. */
    private static void body(Svg svg, CrushAnswer.Each each, Axis x) {
        double most = each.structure().sections().stream()
                .mapToDouble(s -> Math.max(s.frontArea(), s.rearArea()))
                .max()
                .orElse(1);
        double from = 0;
        for (CrushSection s : each.structure().sections()) {
            double a = x.at(1e3 * from);
            double b = x.at(1e3 * (from + s.stroke()));
            double front = 30 * s.frontArea() / most;
            double rear = 30 * s.rearArea() / most;
            svg.path("curve thin s2", new double[] {a, b, b, a, a}, new double[] {
                BODY - front, BODY - rear, BODY + rear, BODY + front, BODY - front
            });
            svg.text("figure middle", (a + b) / 2, BODY + 4, s.name());
            from += s.stroke();
        }
        svg.text(
                "axis",
                LEFT,
                BODY + 50,
                "its sections from the end that is hit, as long as they can crush, as high as their area");
    }

    private static double tick(double perG, double high) {
        double all = high / perG;
        for (double step : new double[] {1, 2, 5, 10, 20, 50}) {
            if (all / step <= 6) {
                return step;
            }
        }
        return 100;
    }
}
