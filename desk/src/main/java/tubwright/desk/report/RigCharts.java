// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.fixed;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.desk.answer.RigAnswer.Predicted;
import tubwright.engine.rig.Step;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReading.StationAngle;

/** The loop of a torsion test, and its twist line. */
final class RigCharts {
    private static final double WIDTH = 860;
    private static final double LEFT = 70;
    private static final double RIGHT = 840;
    private static final double TOP = 30;
    private static final double BOTTOM = 330;

    private RigCharts() {}

    /** Torque against angle, cycle by cycle. */
    static String loop(TorsionReading test) {
        List<Step> steps = test.readings().steps();
        double[] x = new double[steps.size()];
        double[] y = new double[steps.size()];
        double[] ends = {0, 0, 0, 0};
        for (int i = 0; i < x.length; i++) {
            x[i] = Math.toDegrees(test.angles()[i]);
            y[i] = steps.get(i).torque();
            if (Double.isFinite(x[i])) {
                ends[0] = Math.min(ends[0], x[i]);
                ends[1] = Math.max(ends[1], x[i]);
            }
            ends[2] = Math.min(ends[2], y[i]);
            ends[3] = Math.max(ends[3], y[i]);
        }
        Axis across = Axis.round(ends[0], ends[1], LEFT, RIGHT, 8);
        Axis up = Axis.round(ends[2], ends[3], BOTTOM, TOP, 6);
        Svg svg = frame("Torque against angle", across, up, 8, 6, "angle, degrees", "torque, N·m");
        for (int i = 0; i + 1 < x.length; i++) {
            if (steps.get(i + 1).cycle() != steps.get(i).cycle()) {
                continue;
            }
            String kind = steps.get(i + 1).unloading() ? "curve thin s1" : "curve thin s0";
            svg.path(kind, new double[] {across.at(x[i]), across.at(x[i + 1])}, new double[] {
                up.at(y[i]), up.at(y[i + 1])
            });
        }
        for (int i = 0; i < x.length; i++) {
            if (Double.isFinite(x[i])) {
                svg.circle(steps.get(i).unloading() ? "jump s1" : "dot", across.at(x[i]), up.at(y[i]), 3);
            }
        }
        return svg.done();
    }

    /** Angle over torque along the tub, measured with its interval and as computed; "" with fewer than two stations. */
    static String twist(TorsionReading test, Optional<Predicted> predicted) {
        List<StationAngle> stations = test.twist();
        if (stations.size() < 2) {
            return "";
        }
        OptionalDouble held = test.readings().setup().heldStation();
        double low = stations.getFirst().station();
        double high = stations.getLast().station();
        double least = 0;
        double most = 0;
        for (StationAngle each : stations) {
            least = Math.min(least, degrees(each.perTorque() - each.expanded()));
            most = Math.max(most, degrees(each.perTorque() + each.expanded()));
        }
        boolean draw = predicted.isPresent() && held.isPresent();
        int points = 81;
        double[] x = new double[points];
        double[] y = new double[points];
        if (draw) {
            for (int i = 0; i < points; i++) {
                x[i] = low + (high - low) * i / (points - 1);
                y[i] = degrees(predicted.get().against(x[i], held.getAsDouble()));
                most = Math.max(most, y[i]);
            }
        }
        Axis along = Axis.exact(low, high, LEFT + 12, RIGHT - 12);
        Axis up = Axis.round(least, most, BOTTOM, TOP, 6);
        Svg svg = frame(
                "Twist line",
                Axis.exact(1000 * low, 1000 * high, LEFT + 12, RIGHT - 12),
                up,
                8,
                6,
                "station x, mm aft of the datum",
                "twist, degrees per kN·m");
        if (draw) {
            for (int i = 0; i < points; i++) {
                x[i] = along.at(x[i]);
                y[i] = up.at(y[i]);
            }
            svg.path("curve s1", x, y);
            svg.text(
                    "name s1 end",
                    RIGHT,
                    TOP - 12,
                    "last run: " + predicted.get().variant());
        }
        for (StationAngle each : stations) {
            double at = along.at(each.station());
            double top = up.at(degrees(each.perTorque() + each.expanded()));
            double bottom = up.at(degrees(each.perTorque() - each.expanded()));
            svg.line("tick", at, top, at, bottom);
            svg.line("tick", at - 5, top, at + 5, top);
            svg.line("tick", at - 5, bottom, at + 5, bottom);
            svg.circle("dot", at, up.at(degrees(each.perTorque())), 4);
        }
        return svg.done();
    }

    private static Svg frame(
            String label, Axis across, Axis up, int stepsAcross, int stepsUp, String below, String beside) {
        Svg svg = new Svg(WIDTH, BOTTOM + 46, label);
        svg.text("axis", LEFT - 60, TOP - 12, beside);
        for (double tick : up.ticks(stepsUp)) {
            svg.line(tick == 0 ? "zero" : "grid", LEFT, up.at(tick), RIGHT, up.at(tick));
            svg.text("figure end", LEFT - 8, up.at(tick) + 4, fixed(tick, up.decimals(stepsUp), " "));
        }
        for (double tick : across.ticks(stepsAcross)) {
            svg.line("tick", across.at(tick), BOTTOM, across.at(tick), BOTTOM + 5);
            svg.text("figure middle", across.at(tick), BOTTOM + 19, fixed(tick, across.decimals(stepsAcross), " "));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 39, below);
        return svg;
    }

    private static double degrees(double perTorque) {
        return Math.toDegrees(1000 * perTorque);
    }
}
