// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import java.util.ArrayList;
import java.util.List;

/**
 * Something that takes room: a limb, a column, a box; symmetric about the plane y = its own middle.
 *
 * <p>Seen from the side it is a bar from one point to another with a half depth across it; its half width may change along
 * it. Sections across the bar are ellipses, or rectangles for a box.
 *
 * @param name for tables
 * @param from x, y, z of its middle at one end, m
 * @param to the same at the other
 * @param halfWidth across the car at either end, m
 * @param halfDepth across the bar in the plane of symmetry, m
 * @param square whether its sections are rectangles
 */
public record Solid(String name, double[] from, double[] to, double[] halfWidth, double halfDepth, boolean square) {
    private static final int ALONG = 24;
    private static final int ROUND = 32;

    /** A box with sides along the axes. */
    public static Solid box(String name, double[] low, double[] high) {
        double z = (low[2] + high[2]) / 2;
        double y = (low[1] + high[1]) / 2;
        double half = (high[1] - low[1]) / 2;
        return new Solid(
                name,
                new double[] {low[0], y, z},
                new double[] {high[0], y, z},
                new double[] {half, half},
                (high[2] - low[2]) / 2,
                true);
    }

    /** A round bar. */
    public static Solid bar(String name, double[] from, double[] to, double radius) {
        return new Solid(name, from, to, new double[] {radius, radius}, radius, false);
    }

    /** Points on its surface: rings from end to end, x, y, z each, m. */
    public List<double[]> surface() {
        double dx = to[0] - from[0];
        double dz = to[2] - from[2];
        double length = Math.hypot(dx, dz);
        double nx = length == 0 ? 0 : -dz / length;
        double nz = length == 0 ? 1 : dx / length;
        if (nz < 0) {
            nx = -nx;
            nz = -nz;
        }
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i <= ALONG; i++) {
            double t = i / (double) ALONG;
            double wide = halfWidth[0] + t * (halfWidth[1] - halfWidth[0]);
            for (int k = 0; k < ROUND; k++) {
                double phi = 2 * Math.PI * k / ROUND;
                double c = Math.cos(phi);
                double s = Math.sin(phi);
                if (square) {
                    double most = Math.max(Math.abs(c), Math.abs(s));
                    c /= most;
                    s /= most;
                }
                points.add(new double[] {
                    from[0] + t * dx + nx * halfDepth * s,
                    from[1] + t * (to[1] - from[1]) + wide * c,
                    from[2] + t * dz + nz * halfDepth * s
                });
            }
        }
        return points;
    }

    /** Points half way out, that tell whether another solid sticks into this one. */
    boolean holds(double[] point) {
        double dx = to[0] - from[0];
        double dz = to[2] - from[2];
        double length = Math.hypot(dx, dz);
        if (length == 0) {
            return false;
        }
        double t = ((point[0] - from[0]) * dx + (point[2] - from[2]) * dz) / (length * length);
        if (t < 0 || t > 1) {
            return false;
        }
        double across = ((point[0] - from[0]) * dz - (point[2] - from[2]) * dx) / length;
        double wide = halfWidth[0] + t * (halfWidth[1] - halfWidth[0]);
        double y = point[1] - from[1] - t * (to[1] - from[1]);
        double a = Math.abs(y) / wide;
        double b = Math.abs(across) / halfDepth;
        return square ? Math.max(a, b) < 1 : a * a + b * b < 1;
    }
}
