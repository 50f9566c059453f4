// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/** Splits the elements that a curve still crosses after nodes have been moved onto it. */
final class CurveSplitter {
    private final PlaneMesh m;
    private final int id;
    private final CutCurve[] all;
    private final CutCurve curve;
    private double[] phi;
    private final byte[] inBand;
    private final double[] point = new double[3];

    /**
     * @param phi level of every node in the curve's bands, NaN elsewhere; shared with the cutter
     * @param inBand marks elements in the curve's bands
     */
    CurveSplitter(PlaneMesh m, int id, CutCurve[] all, double[] phi, byte[] inBand) {
        this.m = m;
        this.id = id;
        this.all = all;
        this.phi = phi;
        this.inBand = inBand;
        curve = all[id];
    }

    private double level(double a, double b) {
        m.chart.position(a, b, point);
        return curve.level().at(point[0], point[1], point[2]);
    }

    /** Fraction from p to q at which the curve crosses; a safeguarded false position. */
    double root(int p, int q) {
        double lo = 0;
        double hi = 1;
        double fl = phi[p];
        double fh = phi[q];
        int last = 0;
        for (int it = 0; it < 40; it++) {
            double s = (lo * fh - hi * fl) / (fh - fl);
            double f = level(m.a[p] + s * (m.a[q] - m.a[p]), m.b[p] + s * (m.b[q] - m.b[p]));
            if (f == 0 || hi - lo < 1e-13 || Math.abs(f) < 1e-13) {
                return s;
            }
            if ((f < 0) == (fl < 0)) {
                lo = s;
                fl = f;
                if (last == 1) {
                    fh /= 2;
                }
                last = 1;
            } else {
                hi = s;
                fh = f;
                if (last == 2) {
                    fl /= 2;
                }
                last = 2;
            }
        }
        return (lo + hi) / 2;
    }

    /** Splits the elements the curve still crosses, and their neighbours outside the bands that share a cut edge. */
    void split() {
        KeyMap cuts = new KeyMap(1024);
        int before = m.elements;
        boolean[] touched = new boolean[m.nodes];
        for (int e = 0; e < before; e++) {
            if (inBand[e] == 0) {
                continue;
            }
            int c = m.cornerCount(e);
            for (int i = 0; i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                if (phi[p] * phi[q] < 0 && cuts.get(KeyMap.pair(p, q)) < 0) {
                    int from = Math.min(p, q);
                    int to = Math.max(p, q);
                    double s = root(from, to);
                    double na = m.a[from] == m.a[to] ? m.a[from] : m.a[from] + s * (m.a[to] - m.a[from]);
                    double nb = m.b[from] == m.b[to] ? m.b[from] : m.b[from] + s * (m.b[to] - m.b[from]);
                    int n = m.addNode(na, nb);
                    if (m.a[from] == m.a[to]) {
                        m.holdA[n] = (byte) Math.min(m.holdA[from], m.holdA[to]);
                    }
                    if (m.b[from] == m.b[to]) {
                        m.holdB[n] = (byte) Math.min(m.holdB[from], m.holdB[to]);
                    }
                    m.curve[n] = id;
                    int along = common(from, to);
                    if (along >= 0) {
                        m.otherCurve[n] = along;
                        meet(n, along);
                    }
                    cuts.put(KeyMap.pair(p, q), n);
                    touched[from] = true;
                    touched[to] = true;
                }
            }
        }
        phi = Arrays.copyOf(phi, m.nodes);
        PolygonSplitter splitter = new PolygonSplitter(m);
        boolean[] gone = new boolean[before];
        int[] polygon = new int[8];
        for (int e = 0; e < before; e++) {
            int c = m.cornerCount(e);
            boolean some = false;
            boolean neg = false;
            boolean pos = false;
            for (int i = 0; i < c; i++) {
                int n = m.corners[4 * e + i];
                some |= touched[n];
                neg |= phi[n] < 0;
                pos |= phi[n] > 0;
            }
            if (!some && !(neg && pos && inBand[e] != 0)) {
                gone[e] = inBand[e] != 0 && c == 4 && splitAtCorner(splitter, e);
                continue;
            }
            int k = 0;
            boolean hanging = false;
            for (int i = 0; i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                polygon[k++] = p;
                int cut = cuts.get(KeyMap.pair(p, q));
                if (cut >= 0) {
                    polygon[k++] = cut;
                    hanging = true;
                }
            }
            if (inBand[e] != 0 && neg && pos) {
                gone[e] = true;
                separate(splitter, Arrays.copyOf(polygon, k));
            } else if (hanging) {
                gone[e] = true;
                splitter.split(Arrays.copyOf(polygon, k));
            } else {
                gone[e] = inBand[e] != 0 && c == 4 && splitAtCorner(splitter, e);
            }
        }
        boolean[] keep = new boolean[m.elements];
        boolean all = true;
        for (int e = 0; e < m.elements; e++) {
            keep[e] = e >= before || !gone[e];
            all &= keep[e];
        }
        if (!all) {
            // Node numbers stay: nothing is removed from the node list, every node is still used.
            m.keep(keep);
        }
    }

    /** The earlier curve both ends of an edge lie on, -1 where there is none. */
    private int common(int p, int q) {
        if (m.curve[p] >= 0 && (m.curve[p] == m.curve[q] || m.curve[p] == m.otherCurve[q])) {
            return m.curve[p];
        }
        return m.otherCurve[p] >= 0 && (m.otherCurve[p] == m.curve[q] || m.otherCurve[p] == m.otherCurve[q])
                ? m.otherCurve[p]
                : -1;
    }

    /** Moves a new node on an edge along an earlier curve to where that curve and this one meet: Newton in two unknowns. */
    private void meet(int n, int along) {
        CutCurve.Level other = all[along].level();
        double a = m.a[n];
        double b = m.b[n];
        double h = 1e-6;
        for (int it = 0; it < 12; it++) {
            double f = level(a, b);
            double g = other.at(point[0], point[1], point[2]);
            if (Math.abs(f) + Math.abs(g) < 1e-12) {
                break;
            }
            double fa = (level(a + h, b) - f) / h;
            double ga = (other.at(point[0], point[1], point[2]) - g) / h;
            double fb = (level(a, b + h) - f) / h;
            double gb = (other.at(point[0], point[1], point[2]) - g) / h;
            double det = fa * gb - fb * ga;
            // Curves that meet at a small angle: only the earlier one, down its gradient.
            boolean steep = Math.abs(det) > 0.2 * Math.sqrt((fa * fa + fb * fb) * (ga * ga + gb * gb));
            double da = steep ? (fb * g - gb * f) / det : -g * ga / (ga * ga + gb * gb);
            double db = steep ? (ga * f - fa * g) / det : -g * gb / (ga * ga + gb * gb);
            a += da;
            b += db;
        }
        if (Math.hypot(a - m.a[n], b - m.b[n]) < 0.2
                && a >= 0
                && b >= 0
                && a <= m.chart.cellsA()
                && b <= m.chart.cellsB()
                && m.holdA[n] == 0
                && m.holdB[n] == 0) {
            m.move(n, a, b);
        }
    }

    /** An element with three corners on the curve may hold a corner of the curve: then it is split there. */
    private boolean splitAtCorner(PolygonSplitter splitter, int e) {
        int[] polygon = Arrays.copyOfRange(m.corners, 4 * e, 4 * e + 4);
        double level = 0;
        for (int n : polygon) {
            level += phi[n];
        }
        return splitAtCorner(splitter, polygon, level != 0 ? level : middle(polygon[0], polygon[1], polygon[2]));
    }

    /**
     * Splits a polygon that lies on one side of the curve but for a triangle of three of its corners, all on the curve.
     *
     * @param level sign of the side the polygon is taken to be on
     */
    private boolean splitAtCorner(PolygonSplitter splitter, int[] polygon, double level) {
        int n = polygon.length;
        for (int i = 0; n > 3 && i < n - 2; i++) {
            for (int j = i + 1; j < n - 1; j++) {
                for (int k = j + 1; k < n; k++) {
                    if (otherSide(polygon[i], polygon[j], polygon[k], level)) {
                        splitter.split(new int[] {polygon[i], polygon[j], polygon[k]});
                        rim(splitter, polygon, i, j);
                        rim(splitter, polygon, j, k);
                        rim(splitter, polygon, k, i + n);
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static void rim(PolygonSplitter splitter, int[] polygon, int from, int to) {
        if (to - from >= 2) {
            int[] part = new int[to - from + 1];
            for (int i = from; i <= to; i++) {
                part[i - from] = polygon[i % polygon.length];
            }
            splitter.split(part);
        }
    }

    /** Whether three nodes on the curve span a triangle that lies on the other side of it than a level. */
    private boolean otherSide(int p, int q, int r, double level) {
        return phi[p] == 0
                && phi[q] == 0
                && phi[r] == 0
                && ElementShape.triangle(m, p, q, r) > 0.15
                && middle(p, q, r) * level < 0;
    }

    /** Level in the middle of three nodes. */
    private double middle(int p, int q, int r) {
        return level((m.a[p] + m.a[q] + m.a[r]) / 3, (m.b[p] + m.b[q] + m.b[r]) / 3);
    }

    /** Cuts off every run of negative nodes; what remains is the positive side. */
    private void separate(PolygonSplitter splitter, int[] polygon) {
        int n = polygon.length;
        int first = 0;
        while (first < n && phi[polygon[first]] < 0) {
            first++;
        }
        Ints rest = new Ints();
        for (int i = 0; i < n; ) {
            int at = polygon[(first + i) % n];
            if (phi[at] >= 0) {
                rest.add(at);
                i++;
                continue;
            }
            Ints run = new Ints();
            run.add(polygon[(first + i + n - 1) % n]);
            while (i < n && phi[polygon[(first + i) % n]] < 0) {
                run.add(polygon[(first + i) % n]);
                i++;
            }
            run.add(polygon[(first + i) % n]);
            splitter.split(run.toArray());
        }
        if (rest.size < 3) {
            return;
        }
        int[] left = rest.toArray();
        if (!splitAtCorner(splitter, left, 1)) {
            splitter.split(left);
        }
    }
}
