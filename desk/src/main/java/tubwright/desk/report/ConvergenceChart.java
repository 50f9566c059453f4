// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.fixed;

import java.util.List;
import tubwright.engine.response.Converged;

/** Values against mesh size, with the estimate at size zero and the band about it. */
final class ConvergenceChart {
    private static final double WIDTH = 420;
    private static final double HEIGHT = 230;
    private static final double LEFT = 66;
    private static final double RIGHT = 404;
    private static final double TOP = 26;
    private static final double BOTTOM = 182;
    /** Orders outside these are accidents of the samples, not the method's. */
    private static final double LEAST_ORDER = 0.5;

    private static final double MOST_ORDER = 4;

    private ConvergenceChart() {}

    /**
     * Draws one.
     *
     * @param converged values
     * @param factor from its unit to the one shown
     * @param unit shown
     */
    static String draw(Converged converged, double factor, String unit) {
        List<Converged.Sample> samples = converged.samples();
        double error = Double.isFinite(converged.error()) ? converged.error() : 0;
        double low = converged.value() - error;
        double high = converged.value() + error;
        double coarsest = 0;
        for (Converged.Sample sample : samples) {
            low = Math.min(low, sample.value());
            high = Math.max(high, sample.value());
            coarsest = Math.max(coarsest, sample.meshSize());
        }
        double air = 0.12 * Math.max(high - low, 1e-6 * Math.abs(high));
        Axis x = Axis.exact(0, coarsest * 1.08, LEFT + 8, RIGHT);
        Axis y = Axis.exact((low - air) * factor, (high + air) * factor, BOTTOM, TOP);
        Svg svg = new Svg(WIDTH, HEIGHT, "Value against mesh size");
        double bandTop = y.at((converged.value() + error) * factor);
        double bandBottom = y.at((converged.value() - error) * factor);
        svg.rectangle("band", LEFT, bandTop, RIGHT - LEFT, bandBottom - bandTop);
        for (double tick : y.ticks(4)) {
            svg.line("grid", LEFT, y.at(tick), RIGHT, y.at(tick));
            svg.text("figure end", LEFT - 8, y.at(tick) + 4, fixed(tick, y.decimals(4), "\u202f"));
        }
        svg.line("zero", x.at(0), TOP, x.at(0), BOTTOM);
        for (double tick : x.ticks(5)) {
            svg.line("tick", x.at(tick), BOTTOM, x.at(tick), BOTTOM + 5);
            svg.text("figure middle", x.at(tick), BOTTOM + 19, fixed(tick * 1000, 0, " "));
        }
        svg.text("axis middle", (LEFT + RIGHT) / 2, BOTTOM + 40, "mesh size, mm");
        svg.text("axis", 6, TOP - 12, unit);
        curve(svg, converged, factor, x, y, coarsest);
        for (Converged.Sample sample : samples) {
            svg.circle("dot s0", x.at(sample.meshSize()), y.at(sample.value() * factor), 4);
        }
        svg.circle("ring s0", x.at(0), y.at(converged.value() * factor), 5);
        return svg.done();
    }

    /** The curve value + c·hᵖ through the finest sample; where no believable order was observed, of the second. */
    private static void curve(Svg svg, Converged converged, double factor, Axis x, Axis y, double coarsest) {
        if (converged.samples().isEmpty()) {
            return;
        }
        boolean observed = converged.order() >= LEAST_ORDER && converged.order() <= MOST_ORDER;
        double order = observed ? converged.order() : 2;
        Converged.Sample finest = converged.samples().getLast();
        double c = (finest.value() - converged.value()) / Math.pow(finest.meshSize(), order);
        double end = observed ? coarsest : finest.meshSize();
        double[] px = new double[41];
        double[] py = new double[41];
        for (int i = 0; i < px.length; i++) {
            double h = end * i / (px.length - 1);
            px[i] = x.at(h);
            py[i] = y.at((converged.value() + c * Math.pow(h, order)) * factor);
        }
        svg.path(observed ? "curve thin s0" : "curve thin guess s0", px, py);
    }
}
