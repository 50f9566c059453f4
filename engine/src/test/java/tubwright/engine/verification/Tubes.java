// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.function.IntFunction;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Prismatic tubes along z whose far section turns rigidly; returns twist per unit couple. */
final class Tubes {
    private Tubes() {}

    /**
     * A closed tube of quads that turns about the origin.
     *
     * @param points cross-section points (x, y) in order, the last joined to the first
     * @param normals unit outward normals at the two ends of each wall segment, 4 numbers a segment
     * @param warpingFree whether the root section may warp
     */
    private static double twist(
            double[][] points,
            IntFunction<double[]> normals,
            double length,
            int along,
            double[] laminate,
            boolean warpingFree) {
        int n = points.length;
        ShellModel m = new ShellModel(laminate) {
            @Override
            double[] directors(int e) {
                double[] d = normals.apply(e % n);
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
            for (int i = 0; i < n; i++) {
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
            m.prescribe(tip, 1, points[i][0]);
            m.prescribe(tip, 5, 1);
        }
        if (warpingFree) {
            m.hold(0, 2);
        }
        m.solve();
        return 1 / m.twiceEnergy();
    }

    /** A closed round tube of n flat segments whose normals at the corners are those of the circle. */
    static double circle(double radius, int n, double length, int along, double[] laminate, boolean warpingFree) {
        double[][] p = new double[n][];
        for (int i = 0; i < n; i++) {
            double f = 2 * Math.PI * i / n;
            p[i] = new double[] {radius * Math.cos(f), radius * Math.sin(f)};
        }
        IntFunction<double[]> normals = i -> {
            double a = 2 * Math.PI * i / n;
            double b = 2 * Math.PI * (i + 1) / n;
            return new double[] {Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)};
        };
        return twist(p, normals, length, along, laminate, warpingFree);
    }

    /**
     * A round tube of n cells (even) round, slit along the line at angle 0, turned at its far end about the shear centre, 2R
     * behind the axis; the half above the slit is solved, as the other mirrors it with signs changed.
     */
    static double slit(
            Kind kind,
            double radius,
            int n,
            double length,
            int along,
            double[] laminate,
            boolean warpingFree,
            boolean farFree) {
        ShellModel m = new ShellModel(laminate);
        m.normal = x -> Vectors.unit(x[0], x[1], 0);
        m.reference = x -> new double[] {0, 0, 1};
        int half = n / 2;
        ObstacleCourse.grid(m, kind, half, along, (a, b) -> {
            double f = Math.PI * a;
            return new double[] {radius * Math.cos(f), radius * Math.sin(f), length * b};
        });
        for (int i = 0; i <= half; i++) {
            m.hold(i, 0, 1, 5);
            if (!warpingFree) {
                m.hold(i, 2, 3, 4);
            }
            int tip = along * (half + 1) + i;
            double[] x = m.nodes.get(tip);
            m.prescribe(tip, 0, -x[1]);
            m.prescribe(tip, 1, x[0] + 2 * radius);
            m.prescribe(tip, 5, 1);
            if (!farFree) {
                m.hold(tip, 2, 3, 4);
            }
        }
        for (int k = 0; k <= along; k++) {
            int opposite = k * (half + 1) + half;
            m.hold(opposite, 2);
            if (k > 0 && k < along) {
                m.hold(opposite, 0, 4);
            }
        }
        m.solve();
        return .5 / m.twiceEnergy();
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
                length,
                along,
                laminate,
                warpingFree);
    }
}
