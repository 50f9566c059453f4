// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

/**
 * Splits small polygons (up to 8 corners) into quadrilaterals and triangles: of all ways the one whose worst element is
 * best, quadrilaterals preferred.
 */
final class PolygonSplitter {
    private final PlaneMesh m;
    private double best;
    private int[] bestElements = new int[0];
    private final int[] work = new int[64];

    PolygonSplitter(PlaneMesh m) {
        this.m = m;
    }

    void split(int[] polygon) {
        best = Double.NEGATIVE_INFINITY;
        bestElements = new int[0];
        search(new int[][] {polygon}, 0, 1e9);
        for (int i = 0; i < bestElements.length; i += 4) {
            m.addElement(bestElements[i], bestElements[i + 1], bestElements[i + 2], bestElements[i + 3]);
        }
    }

    /** Takes the last open polygon and tries every first element on its side 0-1. */
    private void search(int[][] open, int done, double worst) {
        if (worst <= best) {
            return;
        }
        if (open.length == 0) {
            best = worst;
            bestElements = java.util.Arrays.copyOf(work, done);
            return;
        }
        int[] p = open[open.length - 1];
        int n = p.length;
        if (n == 2) {
            search(java.util.Arrays.copyOf(open, open.length - 1), done, worst);
            return;
        }
        for (int i = 2; i < n; i++) {
            double q = ElementShape.triangle(m, p[0], p[1], p[i]);
            put(done, p[0], p[1], p[i], -1);
            search(next(open, part(p, 1, i), part(p, i, n)), done + 4, Math.min(worst, 0.75 * q));
            for (int j = i + 1; j < n; j++) {
                double r = ElementShape.quad(m, p[0], p[1], p[i], p[j]);
                put(done, p[0], p[1], p[i], p[j]);
                search(next(open, part(p, 1, i), part(p, i, j), part(p, j, n)), done + 4, Math.min(worst, r));
            }
        }
    }

    private void put(int at, int a, int b, int c, int d) {
        work[at] = a;
        work[at + 1] = b;
        work[at + 2] = c;
        work[at + 3] = d;
    }

    /** Corners from i to j inclusive; n means corner 0. */
    private static int[] part(int[] p, int i, int j) {
        int[] out = new int[j - i + 1];
        for (int k = i; k <= j; k++) {
            out[k - i] = p[k % p.length];
        }
        return out;
    }

    private static int[][] next(int[][] open, int[]... more) {
        int count = open.length - 1;
        for (int[] p : more) {
            count += p.length > 2 ? 1 : 0;
        }
        int[][] out = new int[count][];
        System.arraycopy(open, 0, out, 0, open.length - 1);
        int k = open.length - 1;
        for (int[] p : more) {
            if (p.length > 2) {
                out[k++] = p;
            }
        }
        return out;
    }
}
