// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

/**
 * Moves nodes near cuts and splits towards the mean of their neighbours, and keeps a move only where the worst element
 * round the node gets better. Nodes on lines slide along them, nodes on curves along the curve.
 */
final class Smoother {
    private static final double[] STEPS = {1, 0.5, 0.2};

    private final PlaneMesh m;
    private final CutCurve[] curves;
    private final int[] start;
    private final int[] round;
    private final double[] foot = new double[2];

    private Smoother(PlaneMesh m, CutCurve[] curves) {
        this.m = m;
        this.curves = curves;
        int[][] rounds = m.elementsOfNodes();
        start = rounds[0];
        round = rounds[1];
    }

    static void smooth(PlaneMesh m, CutCurve[] curves, int passes) {
        new Smoother(m, curves).run(passes);
    }

    private void run(int passes) {
        int[] active = active();
        double[] shape = new double[m.elements];
        boolean[] known = new boolean[m.elements];
        for (int pass = 0; pass < passes; pass++) {
            boolean moved = false;
            for (int n : active) {
                moved |= improve(n, shape, known);
            }
            if (!moved) {
                return;
            }
        }
    }

    /** Nodes within two rings of a triangle or a curve. */
    private int[] active() {
        boolean[] on = new boolean[m.nodes];
        for (int e = 0; e < m.elements; e++) {
            boolean odd = m.corners[4 * e + 3] < 0;
            for (int i = 0; i < m.cornerCount(e); i++) {
                odd |= m.curve[m.corners[4 * e + i]] != -1;
            }
            if (odd) {
                for (int i = 0; i < m.cornerCount(e); i++) {
                    on[m.corners[4 * e + i]] = true;
                }
            }
        }
        boolean[] wide = on.clone();
        for (int e = 0; e < m.elements; e++) {
            boolean any = false;
            for (int i = 0; i < m.cornerCount(e); i++) {
                any |= on[m.corners[4 * e + i]];
            }
            for (int i = 0; any && i < m.cornerCount(e); i++) {
                wide[m.corners[4 * e + i]] = true;
            }
        }
        Ints list = new Ints();
        for (int n = 0; n < m.nodes; n++) {
            boolean fixed = m.holdA[n] != 0 && m.holdB[n] != 0
                    || m.otherCurve[n] != -1
                    || m.curve[n] >= 0 && (m.holdA[n] != 0 || m.holdB[n] != 0);
            if (wide[n] && !fixed) {
                list.add(n);
            }
        }
        return list.toArray();
    }

    private boolean improve(int n, double[] shape, boolean[] known) {
        double before = 1;
        double sumA = 0;
        double sumB = 0;
        int count = 0;
        int curveCount = 0;
        int c0 = -1;
        int c1 = -1;
        for (int k = start[n]; k < start[n + 1]; k++) {
            int e = round[k];
            if (!known[e]) {
                shape[e] = ElementShape.of(m, e);
                known[e] = true;
            }
            before = Math.min(before, shape[e]);
            int c = m.cornerCount(e);
            for (int i = 0; i < c; i++) {
                if (m.corners[4 * e + i] == n) {
                    for (int way = 1; way < c; way += c - 2) {
                        int q = m.corners[4 * e + (i + way) % c];
                        sumA += m.a[q];
                        sumB += m.b[q];
                        count++;
                        boolean same = m.curve[n] >= 0 && (m.curve[q] == m.curve[n] || m.otherCurve[q] == m.curve[n]);
                        if (same && q != c0 && q != c1) {
                            curveCount++;
                            if (c0 < 0) {
                                c0 = q;
                            } else {
                                c1 = q;
                            }
                        }
                    }
                }
            }
        }
        double oldA = m.a[n];
        double oldB = m.b[n];
        double ta = sumA / count;
        double tb = sumB / count;
        if (m.curve[n] >= 0) {
            if (curveCount != 2) {
                return false;
            }
            ta = (m.a[c0] + m.a[c1]) / 2;
            tb = (m.b[c0] + m.b[c1]) / 2;
        }
        for (double step : STEPS) {
            double na = m.holdA[n] != 0 ? oldA : oldA + step * (ta - oldA);
            double nb = m.holdB[n] != 0 ? oldB : oldB + step * (tb - oldB);
            if (m.curve[n] >= 0) {
                if (!CurveFoot.find(m.chart, curves[m.curve[n]].level(), na, nb, 1, foot)) {
                    continue;
                }
                na = foot[0];
                nb = foot[1];
            }
            if (Math.abs(na - oldA) + Math.abs(nb - oldB) < 1e-4) {
                return false;
            }
            m.move(n, na, nb);
            double after = 1;
            for (int k = start[n]; k < start[n + 1] && after > before; k++) {
                after = Math.min(after, ElementShape.of(m, round[k]));
            }
            if (after > before + 1e-4) {
                for (int k = start[n]; k < start[n + 1]; k++) {
                    known[round[k]] = false;
                }
                return true;
            }
        }
        m.move(n, oldA, oldB);
        return false;
    }
}
