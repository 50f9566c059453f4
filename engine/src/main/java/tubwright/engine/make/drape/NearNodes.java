// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import java.util.Arrays;

/** Points in space by boxes of one size, for the question whether one is near. */
final class NearNodes {
    private final double box;
    private int[] head = new int[1024];
    private int[] next = new int[256];
    private double[] at = new double[3 * 256];
    private int count;

    NearNodes(double box) {
        this.box = box;
        Arrays.fill(head, -1);
    }

    /** Adds a point; its number must be one more than the last's. */
    void add(int n, double[] p) {
        if (n != count) {
            throw new IllegalArgumentException("points are numbered in order");
        }
        if (count == next.length) {
            next = Arrays.copyOf(next, 2 * count);
            at = Arrays.copyOf(at, 6 * count);
        }
        System.arraycopy(p, 0, at, 3 * n, 3);
        count++;
        if (count > head.length) {
            head = new int[4 * head.length];
            Arrays.fill(head, -1);
            for (int each = 0; each < count; each++) {
                hang(each);
            }
        } else {
            hang(n);
        }
    }

    private void hang(int n) {
        int slot = slot(cell(at[3 * n]), cell(at[3 * n + 1]), cell(at[3 * n + 2]));
        next[n] = head[slot];
        head[slot] = n;
    }

    private int cell(double v) {
        return (int) Math.floor(v / box);
    }

    private int slot(int i, int j, int k) {
        int h = i * 73856093 ^ j * 19349663 ^ k * 83492791;
        return (h ^ h >>> 15) & head.length - 1;
    }

    /** The nearest point within a distance not larger than the box, or −1. */
    int nearest(double[] p, double within) {
        int best = -1;
        double least = within * within;
        int ci = cell(p[0]);
        int cj = cell(p[1]);
        int ck = cell(p[2]);
        for (int i = ci - 1; i <= ci + 1; i++) {
            for (int j = cj - 1; j <= cj + 1; j++) {
                for (int k = ck - 1; k <= ck + 1; k++) {
                    for (int n = head[slot(i, j, k)]; n >= 0; n = next[n]) {
                        double x = at[3 * n] - p[0];
                        double y = at[3 * n + 1] - p[1];
                        double z = at[3 * n + 2] - p[2];
                        double d = x * x + y * y + z * z;
                        if (d < least) {
                            least = d;
                            best = n;
                        }
                    }
                }
            }
        }
        return best;
    }

    /** Hears of a point and how far it is from the place asked for. */
    interface Heard {
        void of(int n, double apart);
    }

    /** Tells every point in the boxes round a place, itself and its neighbours, the nearest first. */
    void each(double[] p, Heard tell) {
        int first = nearest(p, box);
        if (first >= 0) {
            tell.of(first, apart(first, p));
        }
        int ci = cell(p[0]);
        int cj = cell(p[1]);
        int ck = cell(p[2]);
        for (int i = ci - 1; i <= ci + 1; i++) {
            for (int j = cj - 1; j <= cj + 1; j++) {
                for (int k = ck - 1; k <= ck + 1; k++) {
                    for (int n = head[slot(i, j, k)]; n >= 0; n = next[n]) {
                        boolean here = cell(at[3 * n]) == i && cell(at[3 * n + 1]) == j && cell(at[3 * n + 2]) == k;
                        if (here && n != first) {
                            tell.of(n, apart(n, p));
                        }
                    }
                }
            }
        }
    }

    private double apart(int n, double[] p) {
        double x = at[3 * n] - p[0];
        double y = at[3 * n + 1] - p[1];
        double z = at[3 * n + 2] - p[2];
        return Math.sqrt(x * x + y * y + z * z);
    }
}
