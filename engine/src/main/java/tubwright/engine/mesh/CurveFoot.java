// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

/** Nearest point of a curve in a chart, by Newton steps along the gradient of its level set. */
final class CurveFoot {
    private CurveFoot() {}

    /**
     * @param reach farthest the foot may be, in cells
     * @param foot receives (a, b)
     * @return whether it was found
     */
    static boolean find(Chart chart, CutCurve.Level level, double a0, double b0, double reach, double[] foot) {
        double a = a0;
        double b = b0;
        double h = 1e-6;
        double[] p = new double[3];
        for (int it = 0; it < 20; it++) {
            double f = at(chart, level, a, b, p);
            if (Math.abs(f) < 1e-12) {
                foot[0] = a;
                foot[1] = b;
                return true;
            }
            double ha = a + h > chart.cellsA() ? -h : h;
            double hb = b + h > chart.cellsB() ? -h : h;
            double ga = (at(chart, level, a + ha, b, p) - f) / ha;
            double gb = (at(chart, level, a, b + hb, p) - f) / hb;
            double g = ga * ga + gb * gb;
            if (!(g > 0)) {
                return false;
            }
            double da = -f * ga / g;
            double db = -f * gb / g;
            double step = Math.hypot(da, db);
            if (step > 0.5) {
                da *= 0.5 / step;
                db *= 0.5 / step;
            }
            a += da;
            b += db;
            if (Math.hypot(a - a0, b - b0) > reach || a < 0 || b < 0 || a > chart.cellsA() || b > chart.cellsB()) {
                return false;
            }
            if (step < 1e-11) {
                foot[0] = a;
                foot[1] = b;
                return Math.abs(f) < 1e-9;
            }
        }
        return false;
    }

    private static double at(Chart chart, CutCurve.Level level, double a, double b, double[] p) {
        chart.position(a, b, p);
        return level.at(p[0], p[1], p[2]);
    }
}
