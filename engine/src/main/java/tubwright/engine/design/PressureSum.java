// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.shape.Opening;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Case;

/** Force and moment of a pressure on a strip, openings left out, from small flat cells of the surface. */
final class PressureSum {
    private static final int ALONG = 120;
    private static final int ACROSS = 24;

    private PressureSum() {}

    /**
     * Resultant of both sides of the car.
     *
     * @param about point the moment is taken about, m
     * @return force (N) and moment (N·m), 6 numbers
     */
    static double[] about(double[] about, TubShape shape, Case.Pressure pressure) {
        double[] sum = new double[6];
        int strip = shape.strip(pressure.on()).orElseThrow();
        double from = Math.max(shape.front(), pressure.from());
        double to = Math.min(shape.rear(), pressure.to());
        for (int i = 0; i < ALONG && from < to; i++) {
            double x = from + (to - from) * i / ALONG;
            Section fore = shape.section(x);
            Section aft = shape.section(x + (to - from) / ALONG);
            Section middle = shape.section(x + (to - from) / (2 * ALONG));
            for (int k = 0; k < ACROSS; k++) {
                double t = (double) k / ACROSS;
                double[] a = point(fore, strip, t);
                double[] b = point(aft, strip, t + 1.0 / ACROSS);
                double[] c = point(fore, strip, t + 1.0 / ACROSS);
                double[] d = point(aft, strip, t);
                SkinPoint at = new SkinPoint();
                middle.at(strip, t + 0.5 / ACROSS, at);
                double[] area = vectorArea(a, b, c, d);
                double out = area[0] * at.normalX + area[1] * at.normalY + area[2] * at.normalZ;
                for (boolean left : new boolean[] {false, true}) {
                    double side = left ? -1 : 1;
                    double[] p = {middle.x(), side * at.y, at.z};
                    if (inOpening(shape, pressure.on(), p, left)) {
                        continue;
                    }
                    double f = -pressure.pressure() * Math.signum(out);
                    add(sum, new double[] {f * area[0], f * side * area[1], f * area[2]}, p, about);
                }
            }
        }
        return sum;
    }

    private static double[] point(Section section, int strip, double t) {
        SkinPoint p = new SkinPoint();
        section.at(strip, Math.min(1, t), p);
        return new double[] {section.x(), p.y, p.z};
    }

    /** Half the cross product of the diagonals: exact for any quadrilateral. */
    private static double[] vectorArea(double[] a, double[] b, double[] c, double[] d) {
        double[] u = {b[0] - a[0], b[1] - a[1], b[2] - a[2]};
        double[] v = {d[0] - c[0], d[1] - c[1], d[2] - c[2]};
        return new double[] {
            0.5 * (u[1] * v[2] - u[2] * v[1]), 0.5 * (u[2] * v[0] - u[0] * v[2]), 0.5 * (u[0] * v[1] - u[1] * v[0])
        };
    }

    private static boolean inOpening(TubShape shape, String strip, double[] p, boolean left) {
        for (Opening opening : shape.openings()) {
            boolean mirrored = opening.side() != Side.CENTRE && left;
            double v = opening.view().v(p[0], mirrored ? -p[1] : p[1], p[2]);
            if (opening.strips().contains(strip)
                    && opening.side().covers(left)
                    && opening.contour().distance(p[0], v) < 0) {
                return true;
            }
        }
        return false;
    }

    private static void add(double[] sum, double[] f, double[] p, double[] about) {
        double x = p[0] - about[0];
        double y = p[1] - about[1];
        double z = p[2] - about[2];
        for (int d = 0; d < 3; d++) {
            sum[d] += f[d];
        }
        sum[3] += y * f[2] - z * f[1];
        sum[4] += z * f[0] - x * f[2];
        sum[5] += x * f[1] - y * f[0];
    }
}
