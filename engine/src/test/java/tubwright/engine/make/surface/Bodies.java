// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Surfaces whose geometry is known in closed form, as triangles. */
public final class Bodies {
    private Bodies() {}

    /** A point of a parametric surface. */
    public interface At {
        double[] of(double u, double v);
    }

    /** A rectangle of the parameters in n by m cells, each of two triangles. */
    public static TriangleSurface grid(double u0, double u1, int n, double v0, double v1, int m, At at) {
        double[] points = new double[3 * (n + 1) * (m + 1)];
        int[] corners = new int[6 * n * m];
        for (int i = 0; i <= n; i++) {
            for (int j = 0; j <= m; j++) {
                double[] p = at.of(u0 + (u1 - u0) * i / n, v0 + (v1 - v0) * j / m);
                System.arraycopy(p, 0, points, 3 * (i * (m + 1) + j), 3);
            }
        }
        int e = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < m; j++) {
                int o = i * (m + 1) + j;
                int[] quad = {o, o + m + 1, o + m + 2, o + 1};
                int[] order = (i + j) % 2 == 0 ? new int[] {0, 1, 2, 0, 2, 3} : new int[] {0, 1, 3, 1, 2, 3};
                for (int k : order) {
                    corners[e++] = quad[k];
                }
            }
        }
        return TriangleSurface.of(points, corners);
    }

    /** A unit sphere: an icosahedron, every edge halved so many times, turned so that no axis meets a point. */
    public static TriangleSurface sphere(int halvings) {
        double g = (1 + Math.sqrt(5)) / 2;
        double[][] first = {
            {-1, g, 0},
            {1, g, 0},
            {-1, -g, 0},
            {1, -g, 0},
            {0, -1, g},
            {0, 1, g},
            {0, -1, -g},
            {0, 1, -g},
            {g, 0, -1},
            {g, 0, 1},
            {-g, 0, -1},
            {-g, 0, 1}
        };
        List<double[]> points = new ArrayList<>();
        for (double[] p : first) {
            points.add(unit(turned(p)));
        }
        int[] t = {
            0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8, 3, 9, 4,
            3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1
        };
        for (int h = 0; h < halvings; h++) {
            Map<Long, Integer> middles = new HashMap<>();
            int[] finer = new int[4 * t.length];
            int at = 0;
            for (int i = 0; i < t.length; i += 3) {
                int a = middle(points, middles, t[i], t[i + 1]);
                int b = middle(points, middles, t[i + 1], t[i + 2]);
                int c = middle(points, middles, t[i + 2], t[i]);
                for (int k : new int[] {t[i], a, c, t[i + 1], b, a, t[i + 2], c, b, a, b, c}) {
                    finer[at++] = k;
                }
            }
            t = finer;
        }
        double[] flat = new double[3 * points.size()];
        for (int p = 0; p < points.size(); p++) {
            System.arraycopy(points.get(p), 0, flat, 3 * p, 3);
        }
        return TriangleSurface.of(flat, t);
    }

    private static int middle(List<double[]> points, Map<Long, Integer> middles, int a, int b) {
        return middles.computeIfAbsent(((long) Math.min(a, b) << 32) | Math.max(a, b), k -> {
            double[] p = points.get(a);
            double[] q = points.get(b);
            points.add(unit(new double[] {p[0] + q[0], p[1] + q[1], p[2] + q[2]}));
            return points.size() - 1;
        });
    }

    private static double[] turned(double[] p) {
        double c = Math.cos(0.3);
        double s = Math.sin(0.3);
        double[] q = {c * p[0] - s * p[1], s * p[0] + c * p[1], p[2]};
        return new double[] {q[0], c * q[1] - s * q[2], s * q[1] + c * q[2]};
    }

    private static double[] unit(double[] p) {
        double length = Space.length(p);
        return new double[] {p[0] / length, p[1] / length, p[2] / length};
    }

    /** A cylinder of radius r about z over an angle, of a height; its meridians are edges. */
    public static TriangleSurface cylinder(double r, double angle, int n, double height, int m) {
        return grid(0, angle, n, 0, height, m, (u, z) -> new double[] {r * Math.cos(u), r * Math.sin(u), z});
    }

    /** A cone about z whose meridians make an angle with the axis, between two distances from the apex. */
    public static TriangleSurface cone(double half, double angle, int n, double from, double to, int m) {
        double s = Math.sin(half);
        double c = Math.cos(half);
        return grid(from, to, m, 0, angle, n, (d, u) -> new double[] {d * s * Math.cos(u), d * s * Math.sin(u), d * c});
    }

    /** Every triangle. */
    public static boolean[] all(TriangleSurface surface) {
        boolean[] all = new boolean[surface.triangles()];
        java.util.Arrays.fill(all, true);
        return all;
    }
}
