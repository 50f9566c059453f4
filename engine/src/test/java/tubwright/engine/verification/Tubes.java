// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.function.IntFunction;

/** Prismatic tubes along z whose far section turns rigidly about the shear centre; returns twist per unit couple. */
final class Tubes {
    private Tubes() {}

    /**
     * A tube of closed or open cross-section.
     *
     * @param points cross-section points (x, y) in order
     * @param normals unit outward normals at the two ends of each wall segment, 4 numbers a segment
     * @param closed whether the last point joins the first
     * @param centre x of the shear centre
     * @param warpingFree whether the root section may warp
     */
    static double twist(
            double[][] points,
            IntFunction<double[]> normals,
            boolean closed,
            double centre,
            double length,
            int along,
            double[] laminate,
            boolean warpingFree) {
        return twist(points, normals, closed, centre, length, along, laminate, warpingFree, true);
    }

    /** The same, the far section free to warp or not. */
    static double twist(
            double[][] points,
            IntFunction<double[]> normals,
            boolean closed,
            double centre,
            double length,
            int along,
            double[] laminate,
            boolean warpingFree,
            boolean farFree) {
        int n = points.length;
        int segments = closed ? n : n - 1;
        ShellModel m = new ShellModel(laminate) {
            @Override
            double[] directors(int e) {
                double[] d = normals.apply(e % segments);
                return new double[] {d[0], d[1], 0, d[2], d[3], 0, d[2], d[3], 0, d[0], d[1], 0};
            }
        };
        m.reference = x -> new double[] {0, 0, 1};
        for (int k = 0; k <= along; k++) {
            for (double[] p : points) {
                m.node(p[0], p[1], length * k / along);
            }
        }
        for (int k = 0; k < along; k++) {
            for (int i = 0; i < segments; i++) {
                int j = (i + 1) % n;
                m.element(k * n + i, k * n + j, (k + 1) * n + j, (k + 1) * n + i);
            }
        }
        for (int i = 0; i < n; i++) {
            m.hold(i, 0, 1, 5);
            if (!warpingFree) {
                m.hold(i, 2, 3, 4);
            }
            int tip = along * n + i;
            m.prescribe(tip, 0, -points[i][1]);
            m.prescribe(tip, 1, points[i][0] - centre);
            m.prescribe(tip, 5, 1);
            if (!farFree) {
                m.hold(tip, 2, 3, 4);
            }
        }
        if (warpingFree) {
            m.hold(0, 2);
        }
        m.solve();
        return 1 / m.twiceEnergy();
    }

    /** Points and normals of a circle (or the slit circle, the slit at angle 0) of n segments. */
    static double circle(
            double radius, int n, boolean closed, double length, int along, double[] laminate, boolean warpingFree) {
        return circle(radius, n, closed, length, along, laminate, warpingFree, true);
    }

    /** The same, the far section free to warp or not. */
    static double circle(
            double radius,
            int n,
            boolean closed,
            double length,
            int along,
            double[] laminate,
            boolean warpingFree,
            boolean farFree) {
        double[][] p = new double[closed ? n : n + 1][];
        for (int i = 0; i < p.length; i++) {
            double f = 2 * Math.PI * i / n;
            p[i] = new double[] {radius * Math.cos(f), radius * Math.sin(f)};
        }
        IntFunction<double[]> normals = i -> {
            double a = 2 * Math.PI * i / n;
            double b = 2 * Math.PI * (i + 1) / n;
            return new double[] {Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)};
        };
        return twist(p, normals, closed, closed ? 0 : -2 * radius, length, along, laminate, warpingFree, farFree);
    }

    /** Rectangular box b × h with k elements a wall. */
    static double box(double b, double h, int k, double length, int along, double[] laminate, boolean warpingFree) {
        double[][] corners = {{-b / 2, -h / 2}, {b / 2, -h / 2}, {b / 2, h / 2}, {-b / 2, h / 2}};
        double[][] out = {{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
        double[][] p = new double[4 * k][];
        for (int i = 0; i < 4 * k; i++) {
            double[] a = corners[i / k];
            double[] c = corners[(i / k + 1) % 4];
            double t = (double) (i % k) / k;
            p[i] = new double[] {a[0] + t * (c[0] - a[0]), a[1] + t * (c[1] - a[1])};
        }
        return twist(
                p,
                i -> new double[] {out[i / k][0], out[i / k][1], out[i / k][0], out[i / k][1]},
                true,
                0,
                length,
                along,
                laminate,
                warpingFree);
    }
}
