// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Joins pairs of triangles into quadrilaterals where these are well shaped; never across a line or a curve. */
final class TriangleMerger {
    private static final double WORTH = 0.5;

    private TriangleMerger() {}

    static void merge(PlaneMesh m) {
        KeyMap first = new KeyMap(1024);
        Ints one = new Ints();
        Ints two = new Ints();
        int[][] quads = new int[64][];
        double[] worth = new double[64];
        for (int e = 0; e < m.elements; e++) {
            if (m.corners[4 * e + 3] >= 0) {
                continue;
            }
            for (int i = 0; i < 3; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % 3];
                if (onSame(m, p, q)) {
                    continue;
                }
                long key = KeyMap.pair(p, q);
                int other = first.get(key);
                if (other < 0) {
                    first.put(key, 4 * e + i);
                    continue;
                }
                int f = other / 4;
                // p, q run along e; the quadrilateral is q, r (far corner of e), p, s (far corner of f).
                int r = m.corners[4 * e + (i + 2) % 3];
                int s = m.corners[4 * f + (other % 4 + 2) % 3];
                double w = ElementShape.quad(m, q, r, p, s);
                if (w > WORTH) {
                    if (one.size == quads.length) {
                        quads = Arrays.copyOf(quads, 2 * one.size);
                        worth = Arrays.copyOf(worth, 2 * one.size);
                    }
                    quads[one.size] = new int[] {q, r, p, s};
                    worth[one.size] = w;
                    one.add(e);
                    two.add(f);
                }
            }
        }
        double[] value = worth;
        int[] order = IntStream.range(0, one.size)
                .boxed()
                .sorted((i, j) -> value[i] != value[j] ? Double.compare(value[j], value[i]) : Integer.compare(i, j))
                .mapToInt(Integer::intValue)
                .toArray();
        boolean[] keep = new boolean[m.elements];
        boolean[] used = new boolean[m.elements];
        Arrays.fill(keep, true);
        for (int k : order) {
            int e = one.at[k];
            int f = two.at[k];
            if (!used[e] && !used[f]) {
                used[e] = true;
                used[f] = true;
                keep[f] = false;
                System.arraycopy(quads[k], 0, m.corners, 4 * e, 4);
            }
        }
        m.keep(keep);
    }

    /** Whether an edge lies along a line or a curve that elements must not straddle. */
    static boolean onSame(PlaneMesh m, int p, int q) {
        return m.holdA[p] != 0 && m.holdA[q] != 0 && m.a[p] == m.a[q]
                || m.holdB[p] != 0 && m.holdB[q] != 0 && m.b[p] == m.b[q]
                || m.curve[p] >= 0 && (m.curve[p] == m.curve[q] || m.curve[p] == m.otherCurve[q])
                || m.otherCurve[p] >= 0 && (m.otherCurve[p] == m.curve[q] || m.otherCurve[p] == m.otherCurve[q]);
    }
}
