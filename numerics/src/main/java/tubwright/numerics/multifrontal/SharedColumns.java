// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;

/**
 * Unit columns at the nodes of several places near one another, eliminated along the way up to one front, and what they do
 * there. Places that overlap share them.
 */
final class SharedColumns {
    final Symbolic symbolic;
    final double[][] factors;
    final double[] pivots;
    final int b;
    /** Loaded nodes, as positions, rising; column b·i + r is unknown r of the i-th. */
    final int[] positions;
    /** Rows that are reached, as positions, rising. */
    final int[] reached;

    /** The eliminated rows, and those that arrive at the front. */
    final double[][] x;
    /** The inverse at the front times what arrives there; empty for rows that were eliminated. */
    final double[][] atFront;

    private final int[] firstBelow;
    private final boolean[] eliminated;

    /**
     * @param path supernodes below the front on the way up from the nodes, children first
     * @param positions loaded nodes, rising
     * @param reached all rows wanted at the front or below it, rising
     */
    SharedColumns(LocalInverses of, int[] path, int[] positions, int[] reached, int top, double[][] front) {
        symbolic = of.symbolic;
        factors = of.factors;
        pivots = of.pivots;
        firstBelow = of.firstBelow;
        b = symbolic.pattern.blockSize();
        this.positions = positions;
        this.reached = reached;
        eliminated = new boolean[reached.length];
        x = new double[reached.length * b][positions.length * b];
        for (int i = 0; i < positions.length; i++) {
            int at = at(positions[i]) * b;
            for (int r = 0; r < b; r++) {
                x[at + r][i * b + r] = 1;
            }
        }
        for (int s : path) {
            forward(s);
        }
        atFront = new double[x.length][];
        front(top, front);
    }

    /** Place of a position among the reached. */
    int at(int position) {
        return Arrays.binarySearch(reached, position);
    }

    /** Whether the row of a reached position was eliminated below the front. */
    boolean eliminated(int place) {
        return eliminated[place];
    }

    /** Range of places in rising positions that lie in a supernode's subtree: from, to. */
    int[] below(int s, int[] rising) {
        return new int[] {lower(rising, firstBelow[s]), lower(rising, symbolic.first[s + 1])};
    }

    private static int lower(int[] rising, int position) {
        int i = Arrays.binarySearch(rising, position);
        return i < 0 ? -i - 1 : i;
    }

    private double[][] rows(int s) {
        int[] nodes = symbolic.rows[s];
        double[][] rows = new double[nodes.length * b][];
        for (int k = 0; k < nodes.length; k++) {
            System.arraycopy(x, at(nodes[k]) * b, rows, k * b, b);
        }
        return rows;
    }

    private void forward(int s) {
        int w = symbolic.width(s);
        for (int k = 0; k < w / b; k++) {
            eliminated[at(symbolic.rows[s][k])] = true;
        }
        int[] columns = below(s, positions);
        int from = columns[0] * b;
        int to = columns[1] * b;
        if (from == to) {
            return;
        }
        double[][] y = rows(s);
        int m = y.length;
        int base = symbolic.first[s] * b;
        double[] factor = factors[s];
        int k = 0;
        while (k < w && zero(y[k], from, to)) {
            k++;
        }
        for (; k < w; k += 3) {
            int end = Math.min(w, k + 3);
            for (int i = k; i < end; i++) {
                for (int j = i + 1; j < end; j++) {
                    Kernel.oneByOne(y[j], y[i], -entry(factor, m, i, j) / pivots[base + i], from, to);
                }
            }
            int j = end;
            if (end == k + 3) {
                double d0 = -1 / pivots[base + k];
                double d1 = -1 / pivots[base + k + 1];
                double d2 = -1 / pivots[base + k + 2];
                int r0 = row(m, k);
                int r1 = row(m, k + 1);
                int r2 = row(m, k + 2);
                for (; j + 3 <= m; j += 3) {
                    Kernel.threeByThree(
                            y[j],
                            y[j + 1],
                            y[j + 2],
                            y[k],
                            y[k + 1],
                            y[k + 2],
                            factor[r0 + j] * d0,
                            factor[r1 + j] * d1,
                            factor[r2 + j] * d2,
                            factor[r0 + j + 1] * d0,
                            factor[r1 + j + 1] * d1,
                            factor[r2 + j + 1] * d2,
                            factor[r0 + j + 2] * d0,
                            factor[r1 + j + 2] * d1,
                            factor[r2 + j + 2] * d2,
                            from,
                            to);
                }
            }
            for (; j < m; j++) {
                for (int i = k; i < end; i++) {
                    Kernel.oneByOne(y[j], y[i], -entry(factor, m, i, j) / pivots[base + i], from, to);
                }
            }
        }
    }

    private static boolean zero(double[] row, int from, int to) {
        for (int i = from; i < to; i++) {
            if (row[i] != 0) {
                return false;
            }
        }
        return true;
    }

    /** Where row k of a supernode's packed factor would begin if it began at column 0; m is the front's height. */
    static int row(int m, int k) {
        return k * m - k * (k - 1) / 2 - k;
    }

    private static double entry(double[] factor, int m, int k, int j) {
        return factor[row(m, k) + j];
    }

    /** Z Y on the rows of the front that are reached. */
    private void front(int top, double[][] front) {
        int[] rows = symbolic.rows[top];
        int[] at = new int[reached.length];
        int[] place = new int[reached.length];
        int count = 0;
        for (int i = 0, k = 0; i < reached.length; i++) {
            if (!eliminated[i]) {
                while (rows[k] != reached[i]) {
                    k++;
                }
                place[count] = i;
                at[count++] = k;
            }
        }
        double[][] y = new double[count * b][];
        double[][] z = new double[count * b][count * b];
        for (int i = 0; i < count; i++) {
            for (int r = 0; r < b; r++) {
                y[i * b + r] = x[place[i] * b + r];
                for (int j = 0; j < count; j++) {
                    System.arraycopy(front[at[i] * b + r], at[j] * b, z[i * b + r], j * b, b);
                }
            }
        }
        double[][] product = new double[count * b][positions.length * b];
        accumulate(product, z, y);
        for (int i = 0; i < count; i++) {
            System.arraycopy(product, i * b, atFront, place[i] * b, b);
        }
    }

    /**
     * Rows of {@code into} plus coefficients (same number of rows) times rows {@code of}. What comes from one subtree fills one
     * run of columns only: three rows at a time, from the first to the last that is not nought.
     */
    private static void accumulate(double[][] into, double[][] coefficients, double[][] of) {
        int k = 0;
        for (; k + 3 <= of.length; k += 3) {
            int from = Math.min(first(of[k]), Math.min(first(of[k + 1]), first(of[k + 2])));
            int to = Math.max(last(of[k]), Math.max(last(of[k + 1]), last(of[k + 2])));
            if (from >= to) {
                continue;
            }
            int i = 0;
            for (; i + 3 <= into.length; i += 3) {
                double[] c0 = coefficients[i];
                double[] c1 = coefficients[i + 1];
                double[] c2 = coefficients[i + 2];
                Kernel.threeByThree(
                        into[i],
                        into[i + 1],
                        into[i + 2],
                        of[k],
                        of[k + 1],
                        of[k + 2],
                        c0[k],
                        c0[k + 1],
                        c0[k + 2],
                        c1[k],
                        c1[k + 1],
                        c1[k + 2],
                        c2[k],
                        c2[k + 1],
                        c2[k + 2],
                        from,
                        to);
            }
            for (; i < into.length; i++) {
                for (int r = k; r < k + 3; r++) {
                    Kernel.oneByOne(into[i], of[r], coefficients[i][r], from, to);
                }
            }
        }
        for (; k < of.length; k++) {
            int from = first(of[k]);
            int to = last(of[k]);
            for (int i = 0; i < into.length; i++) {
                Kernel.oneByOne(into[i], of[k], coefficients[i][k], from, to);
            }
        }
    }

    /** Place of the first entry that is not nought; the length where there is none. */
    static int first(double[] row) {
        int i = 0;
        while (i < row.length && row[i] == 0) {
            i++;
        }
        return i;
    }

    /** Place after the last entry that is not nought. */
    static int last(double[] row) {
        int i = row.length;
        while (i > 0 && row[i - 1] == 0) {
            i--;
        }
        return i;
    }
}
