// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/**
 * Cuts a mesh along a curve: nodes close to the curve are moved onto it, the elements the curve still crosses are split.
 * The moving before the cutting is what keeps elements well shaped (Labelle & Shewchuk, "Isosurface stuffing", ACM
 * Transactions on Graphics 26 (2007), article 57; here in the plane and for quadrilaterals).
 */
final class CurveCutter {
    /** Part of an edge within which its end moves onto the curve. */
    private static final double SNAP = 0.38;
    /** Part of the shortest edge within which a node leaves a held line for the curve. */
    private static final double LEAVE = 0.16;

    /** Part of an edge within which a patch's edge is taken to pass through a node that cannot move. */
    private static final double PASS = 0.3;

    private final PlaneMesh m;
    private final int id;
    private final CutCurve[] all;
    private final CutCurve curve;
    private final double[] point = new double[3];
    private double[] phi;
    private byte[] inBand;
    private int[] start;
    private int[] round;
    private CurveSplitter splitter;
    private final double[] foot = new double[2];

    private CurveCutter(PlaneMesh m, int id, CutCurve[] all) {
        this.m = m;
        this.id = id;
        this.all = all;
        curve = all[id];
    }

    /** Cuts along curve number {@code id}; those before it have been cut already. */
    static void cut(PlaneMesh m, int id, CutCurve[] all) {
        new CurveCutter(m, id, all).run();
    }

    private void run() {
        phi = new double[m.nodes];
        Arrays.fill(phi, Double.NaN);
        inBand = new byte[m.elements];
        boolean crosses = false;
        boolean touches = false;
        for (int e = 0; e < m.elements; e++) {
            if (curve.covers(m.centreA(e), m.centreB(e))) {
                inBand[e] = 1;
                boolean neg = false;
                boolean pos = false;
                for (int i = 0; i < m.cornerCount(e); i++) {
                    int n = m.corners[4 * e + i];
                    if (Double.isNaN(phi[n])) {
                        phi[n] = level(n);
                    }
                    touches |= Math.abs(phi[n]) < 1e-10;
                    neg |= phi[n] < 0;
                    pos |= phi[n] > 0;
                }
                crosses |= neg && pos;
            }
        }
        // An edge that runs along the lines of the grid crosses no element, and yet its nodes must stay on it.
        boolean along = touches && curve.away() != CutCurve.Away.NOTHING;
        if (!crosses && !along) {
            remove();
            return;
        }
        int[][] rounds = m.elementsOfNodes();
        start = rounds[0];
        round = rounds[1];
        splitter = new CurveSplitter(m, id, all, phi, inBand);
        zeroes();
        snapCorners();
        snap(true);
        if (curve.away() != CutCurve.Away.NOTHING) {
            leaveLines();
        }
        snap(false);
        if (curve.away() == CutCurve.Away.NOTHING) {
            passThrough();
        }
        splitter.split();
        remove();
    }

    private double level(int n) {
        return curve.level().at(m.xyz[3 * n], m.xyz[3 * n + 1], m.xyz[3 * n + 2]);
    }

    private double edgeLength(int i, int j) {
        double dx = m.xyz[3 * i] - m.xyz[3 * j];
        double dy = m.xyz[3 * i + 1] - m.xyz[3 * j + 1];
        double dz = m.xyz[3 * i + 2] - m.xyz[3 * j + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    /** Shortest element side at a node. */
    private double shortest(int n) {
        double h = Double.POSITIVE_INFINITY;
        for (int k = start[n]; k < start[n + 1]; k++) {
            int e = round[k];
            int c = m.cornerCount(e);
            for (int i = 0; i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                if (p == n || q == n) {
                    h = Math.min(h, edgeLength(p, q));
                }
            }
        }
        return h;
    }

    private void onCurve(int n) {
        phi[n] = 0;
        if (m.curve[n] < 0) {
            m.curve[n] = id;
        } else if (m.curve[n] != id) {
            m.otherCurve[n] = id;
        }
    }

    /** Nodes the curve passes through already, or so nearly that nothing fits between. */
    private void zeroes() {
        for (int n = 0; n < phi.length; n++) {
            if (Math.abs(phi[n]) < 1e-10) {
                onCurve(n);
            } else if (Math.abs(phi[n]) < 1e-3 && Math.abs(phi[n]) < 2e-3 * shortest(n)) {
                boolean edge = m.onEdgeA(n) || m.onEdgeB(n);
                if (!edge && m.curve[n] < 0 && project(n) && tryMove(n, foot[0], foot[1])) {
                    letGo(n);
                }
                onCurve(n);
            }
        }
    }

    /** Releases a node from the lines it is no longer on. */
    private void letGo(int n) {
        if (m.a[n] != Math.rint(m.a[n])) {
            m.holdA[n] = 0;
        }
        if (m.b[n] != Math.rint(m.b[n])) {
            m.holdB[n] = 0;
        }
    }

    /** The nearest free node moves to every sharp corner of the curve. */
    private void snapCorners() {
        double[] s = curve.sharp();
        for (int c = 0; c < s.length; c += 3) {
            int best = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int n = 0; n < phi.length; n++) {
                if (!Double.isNaN(phi[n]) && m.otherCurve[n] < 0 && (m.curve[n] < 0 || m.curve[n] == id)) {
                    double d = Math.hypot(
                            Math.hypot(m.xyz[3 * n] - s[c], m.xyz[3 * n + 1] - s[c + 1]), m.xyz[3 * n + 2] - s[c + 2]);
                    if (d < least) {
                        least = d;
                        best = n;
                    }
                }
            }
            if (best < 0 || least > 2 * shortest(best)) {
                continue;
            }
            double a = m.a[best];
            double b = m.b[best];
            for (int it = 0; it < 12; it++) {
                // Gauss-Newton for the chart point nearest the corner.
                double h = 1e-5;
                m.chart.position(a, b, point);
                double rx = s[c] - point[0];
                double ry = s[c + 1] - point[1];
                double rz = s[c + 2] - point[2];
                double[] pa = new double[3];
                double[] pb = new double[3];
                double sa = a + h > m.chart.cellsA() ? -h : h;
                double sb = b + h > m.chart.cellsB() ? -h : h;
                m.chart.position(a + sa, b, pa);
                m.chart.position(a, b + sb, pb);
                for (int i = 0; i < 3; i++) {
                    pa[i] = (pa[i] - point[i]) / sa;
                    pb[i] = (pb[i] - point[i]) / sb;
                }
                double aa = pa[0] * pa[0] + pa[1] * pa[1] + pa[2] * pa[2];
                double bb = pb[0] * pb[0] + pb[1] * pb[1] + pb[2] * pb[2];
                double ab = pa[0] * pb[0] + pa[1] * pb[1] + pa[2] * pb[2];
                double ga = pa[0] * rx + pa[1] * ry + pa[2] * rz;
                double gb = pb[0] * rx + pb[1] * ry + pb[2] * rz;
                double det = aa * bb - ab * ab;
                if (!(det > 0)) {
                    break;
                }
                double da = (bb * ga - ab * gb) / det;
                double db = (aa * gb - ab * ga) / det;
                a = Math.clamp(a + da, 0.0, m.chart.cellsA());
                b = Math.clamp(b + db, 0.0, m.chart.cellsB());
                if (Math.abs(da) + Math.abs(db) < 1e-12) {
                    break;
                }
            }
            boolean staysA = m.holdA[best] == 0 || Math.abs(a - m.a[best]) < 1e-7;
            boolean staysB = m.holdB[best] == 0 || Math.abs(b - m.b[best]) < 1e-7;
            boolean free = (staysA || !m.onEdgeA(best)) && (staysB || !m.onEdgeB(best));
            if (free
                    && tryMove(
                            best,
                            staysA && m.holdA[best] != 0 ? m.a[best] : a,
                            staysB && m.holdB[best] != 0 ? m.b[best] : b)) {
                if (!staysA) {
                    m.holdA[best] = 0;
                }
                if (!staysB) {
                    m.holdB[best] = 0;
                }
                m.curve[best] = id;
                m.otherCurve[best] = -2;
                phi[best] = 0;
            }
        }
    }

    /** Moves a node if all elements round it stay the right way round. */
    private boolean tryMove(int n, double a, double b) {
        double oldA = m.a[n];
        double oldB = m.b[n];
        m.a[n] = a;
        m.b[n] = b;
        for (int k = start[n]; k < start[n + 1]; k++) {
            if (!sound(round[k])) {
                m.a[n] = oldA;
                m.b[n] = oldB;
                return false;
            }
        }
        m.move(n, a, b);
        return true;
    }

    /** Whether every corner of an element turns left, with some room. */
    private boolean sound(int e) {
        int c = m.cornerCount(e);
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        for (int i = 0; i < c; i++) {
            int p = m.corners[4 * e + (i + c - 1) % c];
            int q = m.corners[4 * e + i];
            int r = m.corners[4 * e + (i + 1) % c];
            double ua = m.a[q] - m.a[p];
            double ub = m.b[q] - m.b[p];
            double va = m.a[r] - m.a[q];
            double vb = m.b[r] - m.b[q];
            double cross = ua * vb - ub * va;
            // A quadrilateral may open out to a straight corner: it will be split there.
            double room = c == 4 ? -0.05 : 0.1;
            double u = ua * ua + ub * ub;
            shortest = Math.min(shortest, u);
            longest = Math.max(longest, u);
            if (cross < room * Math.sqrt(u * (va * va + vb * vb))) {
                return false;
            }
        }
        return shortest > 0.02 * longest;
    }

    private boolean held(int n) {
        return m.holdA[n] >= 2 || m.holdB[n] >= 2 || m.holdA[n] == 1 || m.holdB[n] == 1;
    }

    /** Whether node n may move along the edge to node q: not fixed by a curve, and along every line that holds it. */
    private boolean mayMove(int n, int q) {
        if (m.curve[n] >= 0) {
            return false;
        }
        return (m.holdA[n] == 0 || m.a[n] == m.a[q] && m.holdA[q] != 0)
                && (m.holdB[n] == 0 || m.b[n] == m.b[q] && m.holdB[q] != 0);
    }

    private void snap(boolean heldOnly) {
        for (int pass = 0; pass < 4; pass++) {
            double[] best = new double[phi.length];
            double[] toA = new double[phi.length];
            double[] toB = new double[phi.length];
            Arrays.fill(best, 2);
            Ints candidates = new Ints();
            for (int e = 0; e < m.elements; e++) {
                if (inBand[e] == 0) {
                    continue;
                }
                int c = m.cornerCount(e);
                for (int i = 0; i < c; i++) {
                    int p = m.corners[4 * e + i];
                    int q = m.corners[4 * e + (i + 1) % c];
                    if (!(phi[p] * phi[q] < 0)) {
                        continue;
                    }
                    double s = splitter.root(p, q);
                    offer(p, q, s, s, heldOnly, best, toA, toB, candidates);
                    offer(q, p, 1 - s, s, heldOnly, best, toA, toB, candidates);
                }
            }
            int[] order = Arrays.stream(candidates.toArray())
                    .distinct()
                    .boxed()
                    .sorted((i, j) -> best[i] != best[j] ? Double.compare(best[i], best[j]) : Integer.compare(i, j))
                    .mapToInt(Integer::intValue)
                    .toArray();
            boolean moved = false;
            for (int n : order) {
                if (stillCrossed(n)) {
                    boolean done = false;
                    if (!held(n) && project(n)) {
                        done = tryMove(n, foot[0], foot[1]);
                    }
                    if (!done) {
                        done = tryMove(n, toA[n], toB[n]);
                    }
                    if (done) {
                        onCurve(n);
                        moved = true;
                    }
                }
            }
            if (!moved) {
                return;
            }
        }
    }

    private void offer(
            int n,
            int q,
            double part,
            double s,
            boolean heldOnly,
            double[] best,
            double[] toA,
            double[] toB,
            Ints candidates) {
        if (part < SNAP && part < best[n] && held(n) == heldOnly && mayMove(n, q)) {
            best[n] = part;
            toA[n] = m.a[n] == m.a[q] ? m.a[n] : m.a[n] + part * (m.a[q] - m.a[n]);
            toB[n] = m.b[n] == m.b[q] ? m.b[n] : m.b[n] + part * (m.b[q] - m.b[n]);
            candidates.add(n);
        }
    }

    private boolean stillCrossed(int n) {
        if (phi[n] == 0) {
            return false;
        }
        for (int k = start[n]; k < start[n + 1]; k++) {
            int e = round[k];
            if (inBand[e] == 0) {
                continue;
            }
            int c = m.cornerCount(e);
            for (int i = 0; i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                if ((p == n || q == n) && phi[p] * phi[q] < 0) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Foot of a node on the curve by Newton steps down the gradient of the level set in the chart. */
    private boolean project(int n) {
        double a = m.a[n];
        double b = m.b[n];
        boolean ok = CurveFoot.find(m.chart, curve.level(), a, b, 0.6, foot);
        return ok;
    }

    /** Nodes held by a line that runs very close along the curve leave the line for the curve. */
    private void leaveLines() {
        for (int n = 0; n < phi.length; n++) {
            if (Double.isNaN(phi[n]) || phi[n] == 0 || m.curve[n] >= 0 || !held(n)) {
                continue;
            }
            if (m.onEdgeA(n) || m.onEdgeB(n)) {
                continue;
            }
            boolean soft = m.holdA[n] < 2 && m.holdB[n] < 2;
            double reach = (soft ? SNAP : LEAVE) * shortest(n);
            if (Math.abs(phi[n]) < 2 * reach
                    && nearCurve(n)
                    && CurveFoot.find(m.chart, curve.level(), m.a[n], m.b[n], 0.6, foot)) {
                m.chart.position(foot[0], foot[1], point);
                double d = Math.hypot(
                        Math.hypot(point[0] - m.xyz[3 * n], point[1] - m.xyz[3 * n + 1]), point[2] - m.xyz[3 * n + 2]);
                if (d < reach && tryMove(n, foot[0], foot[1])) {
                    letGo(n);
                    onCurve(n);
                }
            }
        }
    }

    /**
     * Where the edge of a patch crosses close by a node that cannot move, it is taken to pass through the node: a patch
     * need not be exact there, and slivers would be worse.
     */
    private void passThrough() {
        for (int e = 0; e < m.elements; e++) {
            if (inBand[e] == 0) {
                continue;
            }
            int c = m.cornerCount(e);
            for (int i = 0; i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                if (phi[p] * phi[q] < 0) {
                    double s = splitter.root(p, q);
                    int near = s < 0.5 ? p : q;
                    if (Math.min(s, 1 - s) < PASS) {
                        onCurve(near);
                    }
                }
            }
        }
    }

    private boolean nearCurve(int n) {
        boolean any = false;
        for (int k = start[n]; k < start[n + 1]; k++) {
            any |= inBand[round[k]] != 0;
        }
        return any;
    }

    private void remove() {
        if (curve.away() == CutCurve.Away.NOTHING) {
            return;
        }
        boolean[] keep = new boolean[m.elements];
        boolean all = true;
        for (int e = 0; e < m.elements; e++) {
            keep[e] = true;
            double ca = m.centreA(e);
            double cb = m.centreB(e);
            if (curve.covers(ca, cb)) {
                double most = inside(m, e, curve.level());
                keep[e] = curve.away() == CutCurve.Away.INSIDE ? most > 0 : most < 0;
            }
            all &= keep[e];
        }
        if (!all) {
            m.keep(keep);
        }
    }

    /**
     * Level of an element: that of its corner farthest from the curve. Far from the curve the level of the centre tells
     * as much, and is cheaper.
     */
    static double inside(PlaneMesh m, int e, CutCurve.Level level) {
        int c = m.cornerCount(e);
        double x = 0;
        double y = 0;
        double z = 0;
        for (int i = 0; i < c; i++) {
            int n = 3 * m.corners[4 * e + i];
            x += m.xyz[n] / c;
            y += m.xyz[n + 1] / c;
            z += m.xyz[n + 2] / c;
        }
        double centre = level.at(x, y, z);
        double reach = 0;
        for (int i = 0; i < c; i++) {
            int n = 3 * m.corners[4 * e + i];
            reach = Math.max(reach, Math.abs(m.xyz[n] - x) + Math.abs(m.xyz[n + 1] - y) + Math.abs(m.xyz[n + 2] - z));
        }
        if (Math.abs(centre) > 2 * reach) {
            return centre;
        }
        double most = 0;
        for (int i = 0; i < c; i++) {
            int n = 3 * m.corners[4 * e + i];
            double f = level.at(m.xyz[n], m.xyz[n + 1], m.xyz[n + 2]);
            if (Math.abs(f) > Math.abs(most)) {
                most = f;
            }
        }
        return Math.abs(most) > 1e-9 ? most : centre;
    }
}
