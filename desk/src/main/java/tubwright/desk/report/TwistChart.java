// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.RunAnswer.Landmark;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.TwistLine;
import tubwright.engine.response.VariantAnswer;

/**
 * Twist along the tub on one station axis: side view on top, angle per kN·m under it, local torsional rigidity at the
 * bottom; all variants laid over each other.
 */
final class TwistChart {
    private static final double WIDTH = 960;
    private static final double LEFT = 64;
    private static final double RIGHT = 880;
    private static final double LABELS = 40;
    private static final double ANGLE_HEIGHT = 210;
    private static final double RIGIDITY_HEIGHT = 190;
    private static final double GAP = 62;
    private static final double NEWTON_METRES = 1000;

    private final RunAnswer answer;
    private final double low;
    private final double high;

    private record Series(String kind, String name, double[] x, double[] angles, double[] rigidities, TwistLine line) {}

    TwistChart(RunAnswer answer) {
        this.answer = answer;
        double[] nodes = answer.main().mesh().nodes();
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (int i = 0; i < nodes.length; i += 3) {
            least = Math.min(least, nodes[i]);
            most = Math.max(most, nodes[i]);
        }
        low = least;
        high = most;
    }

    /** The drawing, or "" when no variant has a twist line. */
    String draw(Picture side, String sideUri) {
        List<Series> all = series();
        if (all.isEmpty()) {
            return "";
        }
        Axis x = Axis.exact(low, high, LEFT, RIGHT);
        double ratio = (RIGHT - LEFT) / ((high - low) * side.view().scale());
        double pictureWidth = side.image().width() * ratio;
        double pictureHeight = side.image().height() * ratio;
        double pictureTop = LABELS;
        double angleTop = pictureTop + pictureHeight + 48;
        double angleBottom = angleTop + ANGLE_HEIGHT;
        double rigidityTop = angleBottom + GAP;
        double rigidityBottom = rigidityTop + RIGIDITY_HEIGHT;
        Svg svg = new Svg(WIDTH, rigidityBottom + 46, "Twist along the tub");
        landmarks(svg, x, LABELS - 4, rigidityBottom);
        svg.image(
                sideUri,
                x.at(low)
                        - (side.view().offsetX()
                                        - (side.view().centre()[0] - low)
                                                * side.view().scale())
                                * ratio,
                pictureTop,
                pictureWidth,
                pictureHeight);
        angles(svg, all, x, angleTop, angleBottom);
        rigidities(svg, all, x, rigidityTop, rigidityBottom);
        for (double tick : x.ticks(10)) {
            svg.line("tick", x.at(tick), rigidityBottom, x.at(tick), rigidityBottom + 5);
            svg.text("figure middle", x.at(tick), rigidityBottom + 19, fixed(tick * 1000, 0, " "));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, rigidityBottom + 39, "station x, mm aft of the datum");
        return svg.done();
    }

    private List<Series> series() {
        List<Series> result = new java.util.ArrayList<>();
        for (int v = 0; v < answer.variants().size(); v++) {
            VariantAnswer variant = answer.variants().get(v);
            Optional<CaseAnswer> torsion = Reading.torsion(variant);
            if (torsion.isEmpty() || torsion.get().twistLine().isEmpty()) {
                continue;
            }
            TwistLine line = torsion.get().twistLine().get();
            double factor = Math.toDegrees(NEWTON_METRES / torsion.get().load());
            double[] angles = line.angles().clone();
            double[] rigidities = line.rigidities().clone();
            for (int i = 0; i < angles.length; i++) {
                angles[i] *= factor;
                rigidities[i] = Math.abs(rigidities[i]) / 1e6;
            }
            result.add(new Series("s" + v % 4, variant.variant(), line.stations(), angles, rigidities, line));
        }
        return result;
    }

    private void landmarks(Svg svg, Axis x, double top, double bottom) {
        double clear = Double.NEGATIVE_INFINITY;
        for (Landmark mark : answer.landmarks()) {
            double from = x.at(Math.max(low, mark.from()));
            double to = x.at(Math.min(high, mark.to()));
            if (mark.kind() == Landmark.Kind.OPENING) {
                svg.rectangle("opening", from, top, to - from, bottom - top);
            } else if (to - from < 2) {
                svg.line("wall", from, top, from, bottom);
            } else {
                svg.rectangle("lean", from, top, to - from, bottom - top);
            }
            double middle = (from + to) / 2;
            double half = 3.1 * mark.name().length();
            boolean crowded = middle - half < clear;
            svg.text("mark middle", Math.clamp(middle, half, WIDTH - half), crowded ? top - 18 : top - 5, mark.name());
            clear = crowded ? clear : middle + half + 8;
        }
    }

    private void angles(Svg svg, List<Series> all, Axis x, double top, double bottom) {
        double least = 0;
        double most = 0;
        for (Series each : all) {
            for (double angle : each.angles()) {
                least = Math.min(least, angle);
                most = Math.max(most, angle);
            }
        }
        Axis y = Axis.round(least, most, bottom, top, 5);
        svg.text("axis", LEFT - 60, top - 16, "twist, degrees per kN·m");
        for (double tick : y.ticks(5)) {
            svg.line(tick == 0 ? "zero" : "grid", LEFT, y.at(tick), RIGHT, y.at(tick));
            svg.text("figure end", LEFT - 8, y.at(tick) + 4, fixed(tick, y.decimals(5), " "));
        }
        for (Series each : all.reversed()) {
            svg.path("curve " + each.kind(), places(x, each.x()), places(y, each.angles()));
            for (TwistLine.Jump jump : each.line().jumps()) {
                svg.circle("jump " + each.kind(), x.at(jump.station()), y.at(near(each, jump.station())), 3);
            }
        }
        double right = RIGHT;
        for (Series each : all.reversed()) {
            right -= 7.6 * each.name().length();
            svg.text("name " + each.kind(), right, top - 16, each.name());
            svg.line("curve " + each.kind(), right - 40, top - 20, right - 10, top - 20);
            right -= 66;
        }
    }

    private void rigidities(Svg svg, List<Series> all, Axis x, double top, double bottom) {
        double least = Double.MAX_VALUE;
        double most = 0;
        for (Series each : all) {
            for (double value : each.rigidities()) {
                if (Double.isFinite(value) && value > 0) {
                    least = Math.min(least, value);
                    most = Math.max(most, value);
                }
            }
        }
        if (most == 0) {
            return;
        }
        Axis y = Axis.logarithmic(least, most, bottom, top);
        svg.text("axis", LEFT - 60, top - 16, "local torsional rigidity GJ, MN·m²");
        svg.text("axis end", WIDTH - 6, top - 16, "twist rate, degrees per m per kN·m");
        for (double tick : y.ticks(5)) {
            svg.line("grid", LEFT, y.at(tick), RIGHT, y.at(tick));
            svg.text("figure end", LEFT - 8, y.at(tick) + 4, significant(tick, 1, " "));
            double rate = Math.toDegrees(NEWTON_METRES / (tick * 1e6));
            svg.text("figure", RIGHT + 8, y.at(tick) + 4, significant(rate, 2, " "));
        }
        for (int i = all.size() - 1; i >= 0; i--) {
            double[] values = all.get(i).rigidities().clone();
            for (int k = 0; k < values.length; k++) {
                values[k] = values[k] > 0 ? y.at(values[k]) : Double.NaN;
            }
            svg.path("curve " + all.get(i).kind(), places(x, all.get(i).x()), values);
        }
    }

    private static double near(Series series, double station) {
        int best = 0;
        for (int i = 1; i < series.x().length; i++) {
            if (Math.abs(series.x()[i] - station) < Math.abs(series.x()[best] - station)) {
                best = i;
            }
        }
        return series.angles()[best];
    }

    private static double[] places(Axis axis, double[] values) {
        double[] result = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            result[i] = axis.at(values[i]);
        }
        return result;
    }
}
