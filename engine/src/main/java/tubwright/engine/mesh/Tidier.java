// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/**
 * Tidies up after the cuts: splits quadrilaterals with a corner that is straight or nearly so, and collapses edges that
 * are tiny beside their neighbours.
 */
final class Tidier {
    private static final double POOR = 0.3;
    private static final double TINY = 0.12;

    private Tidier() {}

    /** Splits poor quadrilaterals at curves into two triangles where that is better. */
    static void splitPoor(PlaneMesh m) {
        int before = m.elements;
        for (int e = 0; e < before; e++) {
            int at = 4 * e;
            if (m.corners[at + 3] < 0 || !nearCurve(m, e)) {
                continue;
            }
            int p = m.corners[at];
            int q = m.corners[at + 1];
            int r = m.corners[at + 2];
            int s = m.corners[at + 3];
            double whole = ElementShape.quad(m, p, q, r, s);
            if (whole >= POOR) {
                continue;
            }
            double one = Math.min(ElementShape.triangle(m, p, q, r), ElementShape.triangle(m, p, r, s));
            double two = Math.min(ElementShape.triangle(m, q, r, s), ElementShape.triangle(m, q, s, p));
            if (Math.max(one, two) > whole) {
                if (one >= two) {
                    set(m, e, p, q, r);
                    m.addElement(p, r, s, -1);
                } else {
                    set(m, e, q, r, s);
                    m.addElement(q, s, p, -1);
                }
            }
        }
    }

    private static boolean nearCurve(PlaneMesh m, int e) {
        for (int i = 0; i < m.cornerCount(e); i++) {
            if (m.curve[m.corners[4 * e + i]] != -1) {
                return true;
            }
        }
        return false;
    }

    private static void set(PlaneMesh m, int e, int p, int q, int r) {
        m.corners[4 * e] = p;
        m.corners[4 * e + 1] = q;
        m.corners[4 * e + 2] = r;
        m.corners[4 * e + 3] = -1;
    }

    /** Collapses tiny edges: one end moves into the other where nothing that holds it is lost. */
    static void collapse(PlaneMesh m) {
        int[][] rounds = m.elementsOfNodes();
        int[] start = rounds[0];
        int[] round = rounds[1];
        boolean[] dead = new boolean[m.elements];
        boolean[] touched = new boolean[m.nodes];
        boolean any = false;
        for (int e = 0; e < m.elements; e++) {
            if (dead[e] || !nearCurve(m, e)) {
                continue;
            }
            int c = m.cornerCount(e);
            double longest = 0;
            for (int i = 0; i < c; i++) {
                longest = Math.max(longest, length(m, m.corners[4 * e + i], m.corners[4 * e + (i + 1) % c]));
            }
            for (int i = 0; i < c && !dead[e]; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                double l = length(m, p, q);
                if (l < TINY * longest && !touched[p] && !touched[q]) {
                    boolean force = l < 0.02 * longest;
                    int gone =
                            mayGo(m, p, q) ? p : mayGo(m, q, p) ? q : force && !m.onEdgeA(p) && !m.onEdgeB(p) ? p : -1;
                    int stays = gone == p ? q : p;
                    if (gone >= 0 && sound(m, start, round, dead, gone, stays)) {
                        for (int k = start[gone]; k < start[gone + 1]; k++) {
                            int f = round[k];
                            if (!dead[f]) {
                                dead[f] = replace(m, f, gone, stays);
                            }
                            for (int j = 0; j < 4; j++) {
                                int n = m.corners[4 * f + j];
                                if (n >= 0) {
                                    touched[n] = true;
                                }
                            }
                        }
                        any = true;
                        break;
                    }
                }
            }
        }
        if (any) {
            boolean[] keep = new boolean[m.elements];
            for (int e = 0; e < m.elements; e++) {
                keep[e] = !dead[e];
            }
            m.keep(keep);
        }
    }

    /** Whether everything that holds node p also holds q. */
    private static boolean mayGo(PlaneMesh m, int p, int q) {
        boolean lineA = m.holdA[p] == 0 || m.holdA[q] != 0 && m.a[p] == m.a[q];
        boolean lineB = m.holdB[p] == 0 || m.holdB[q] != 0 && m.b[p] == m.b[q];
        boolean curve = m.curve[p] < 0 || m.curve[p] == m.curve[q] || m.curve[p] == m.otherCurve[q];
        return lineA && lineB && curve && m.otherCurve[p] == -1;
    }

    private static double length(PlaneMesh m, int p, int q) {
        double dx = m.xyz[3 * p] - m.xyz[3 * q];
        double dy = m.xyz[3 * p + 1] - m.xyz[3 * q + 1];
        double dz = m.xyz[3 * p + 2] - m.xyz[3 * q + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    /** Whether the elements round p stay sound, or at least get no worse, with p put into q. */
    private static boolean sound(PlaneMesh m, int[] start, int[] round, boolean[] dead, int p, int q) {
        double before = 1;
        double after = 1;
        for (int k = start[p]; k < start[p + 1]; k++) {
            int e = round[k];
            if (dead[e]) {
                continue;
            }
            before = Math.min(before, ElementShape.of(m, e));
            int[] old = Arrays.copyOfRange(m.corners, 4 * e, 4 * e + 4);
            boolean dies = replace(m, e, p, q);
            if (!dies) {
                after = Math.min(after, ElementShape.of(m, e));
            }
            System.arraycopy(old, 0, m.corners, 4 * e, 4);
        }
        return after > Math.min(before, 0.2) && after > 0;
    }

    /** Puts q for p; returns whether the element vanishes. */
    private static boolean replace(PlaneMesh m, int e, int p, int q) {
        int[] c = new int[4];
        int n = 0;
        for (int i = 0; i < m.cornerCount(e); i++) {
            int k = m.corners[4 * e + i];
            k = k == p ? q : k;
            boolean twice = false;
            for (int j = 0; j < n; j++) {
                twice |= c[j] == k;
            }
            if (!twice) {
                c[n++] = k;
            }
        }
        for (int i = 0; i < 4; i++) {
            m.corners[4 * e + i] = i < n ? c[i] : -1;
        }
        return n < 3;
    }
}
