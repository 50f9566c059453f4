// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.util.Arrays;
import tubwright.engine.make.nest.Outline;

/**
 * An outline with fewer corners, nowhere further from the old one than a tolerance (Douglas and Peucker 1973, from two
 * corners far apart). Where that would make it cross itself the outline stays as it is.
 */
final class Simplified {
    private Simplified() {}

    static Outline of(double[] points, double tolerance) {
        int n = points.length / 2;
        int far = 0;
        for (int i = 1; i < n; i++) {
            if (distance(points, 0, i) > distance(points, 0, far)) {
                far = i;
            }
        }
        boolean[] kept = new boolean[n + 1];
        kept[0] = true;
        kept[far] = true;
        halve(points, 0, far, tolerance, kept);
        halve(points, far, n, tolerance, kept);
        double[] result = new double[2 * n];
        int k = 0;
        for (int i = 0; i < n; i++) {
            if (kept[i]) {
                result[2 * k] = points[2 * i];
                result[2 * k + 1] = points[2 * i + 1];
                k++;
            }
        }
        double[] few = Arrays.copyOf(result, 2 * k);
        return k < 3 || tubwright.engine.make.flat.Outlines.crossesItself(few) ? Outline.of(points) : Outline.of(few);
    }

    private static void halve(double[] p, int from, int to, double tolerance, boolean[] kept) {
        int n = p.length / 2;
        int worst = -1;
        double most = tolerance;
        for (int i = from + 1; i < to; i++) {
            double d = toSegment(p, i, from, to % n);
            if (d > most) {
                most = d;
                worst = i;
            }
        }
        if (worst >= 0) {
            kept[worst] = true;
            halve(p, from, worst, tolerance, kept);
            halve(p, worst, to, tolerance, kept);
        }
    }

    private static double toSegment(double[] p, int i, int a, int b) {
        double dx = p[2 * b] - p[2 * a];
        double dy = p[2 * b + 1] - p[2 * a + 1];
        double length = dx * dx + dy * dy;
        double t = length == 0
                ? 0
                : Math.clamp(((p[2 * i] - p[2 * a]) * dx + (p[2 * i + 1] - p[2 * a + 1]) * dy) / length, 0, 1);
        return Math.hypot(p[2 * i] - p[2 * a] - t * dx, p[2 * i + 1] - p[2 * a + 1] - t * dy);
    }

    private static double distance(double[] p, int a, int b) {
        return Math.hypot(p[2 * a] - p[2 * b], p[2 * a + 1] - p[2 * b + 1]);
    }
}
