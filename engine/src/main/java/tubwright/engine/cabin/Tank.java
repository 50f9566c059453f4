// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import java.util.function.DoubleUnaryOperator;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.TubShape;

/**
 * Room for a tank between two stations and two heights, inside the skin.
 *
 * @param holds what it must hold, m³
 * @param from x, m
 * @param to x, m
 * @param low z, m
 * @param high z, m
 * @param gap left to the inner skin, m
 */
public record Tank(double holds, double from, double to, double low, double high, double gap) {
    private static final double CELL = 4e-3;

    /**
     * Volume that is there, m³: rows of the section's plane, at slices half way (midpoint rule).
     *
     * @param skin thickness of the skin at a station, m
     */
    public double room(TubShape shape, DoubleUnaryOperator skin) {
        double start = Math.max(from, shape.front());
        double end = Math.min(to, shape.rear());
        if (end <= start || high <= low) {
            return 0;
        }
        int slices = Math.max(8, (int) Math.ceil((end - start) / 0.02));
        double sum = 0;
        for (int i = 0; i < slices; i++) {
            double x = start + (i + 0.5) * (end - start) / slices;
            sum += area(shape.section(x), skin.applyAsDouble(x) + gap);
        }
        return sum * (end - start) / slices;
    }

    private double area(Section section, double inset) {
        double bottom = edge(section, inset, low);
        double top = edge(section, inset, high);
        double sum = 0;
        int rows = Math.max(1, (int) Math.round((top - bottom) / CELL));
        double step = (top - bottom) / rows;
        for (int r = 0; r < rows; r++) {
            double z = bottom + (r + 0.5) * step;
            // The outermost y still inside, by halving: sections do not fold back on themselves at one height.
            double in = 0;
            double out = section.distance(0, z) <= -inset ? 2 : 0;
            for (int k = 0; k < 40; k++) {
                double middle = (in + out) / 2;
                if (section.distance(middle, z) <= -inset) {
                    in = middle;
                } else {
                    out = middle;
                }
            }
            sum += 2 * in * step;
        }
        return sum;
    }

    /** The height nearest to one asked for that is inside on the centreline, towards the middle of the section. */
    private static double edge(Section section, double inset, double asked) {
        double in = (section.bottom() + section.top()) / 2;
        if (section.distance(0, asked) <= -inset || section.distance(0, in) > -inset) {
            return asked;
        }
        double out = asked;
        for (int k = 0; k < 40; k++) {
            double middle = (in + out) / 2;
            if (section.distance(0, middle) <= -inset) {
                in = middle;
            } else {
                out = middle;
            }
        }
        return in;
    }
}
