// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;
import java.util.TreeSet;

/**
 * Rows and columns of the inverse at a few nodes that lie near one another. The columns are eliminated along the way from
 * these nodes up to a front that holds all that is left; from there on the inverse is known.
 *
 * <p>With X the eliminated rows and Y what arrives at the front, Z the inverse there: the block is XᵀD⁻¹X + YᵀZY.
 */
public final class LocalInverse {
    private final Symbolic symbolic;
    private final double[][] factors;
    private final double[] pivots;
    private final double[] scale;
    private final int b;
    private final LocalInverses.Place place;
    /** Loaded nodes in the order of elimination: positions, and places in the caller's list. */
    private final int[] positions;

    private final int[] caller;
    private final int[] path;
    private final int[] first;
    /** Positions of all rows that are reached, rising; the eliminated ones and those of the front. */
    private final int[] reached;

    private final boolean[] eliminated;
    private final double[][] x;
    private double[][] atFront = new double[0][];

    LocalInverse(
            Symbolic symbolic,
            double[][] factors,
            double[] pivots,
            double[] scale,
            int[] first,
            LocalInverses.Place place,
            int[] path,
            int top,
            double[][] front) {
        this.symbolic = symbolic;
        this.factors = factors;
        this.pivots = pivots;
        this.scale = scale;
        this.first = first;
        this.place = place;
        this.path = path;
        b = symbolic.pattern.blockSize();
        int count = place.loaded().length;
        Integer[] order = new Integer[count];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (i, j) -> symbolic.positionOf[place.loaded()[i]] - symbolic.positionOf[place.loaded()[j]]);
        caller = Arrays.stream(order).mapToInt(i -> i).toArray();
        positions = Arrays.stream(caller)
                .map(i -> symbolic.positionOf[place.loaded()[i]])
                .toArray();
        reached = reached();
        eliminated = new boolean[reached.length];
        x = new double[reached.length * b][count * b];
        for (int i = 0; i < count; i++) {
            int at = at(positions[i]) * b;
            for (int r = 0; r < b; r++) {
                x[at + r][i * b + r] = 1;
            }
        }
        for (int s : path) {
            forward(s);
        }
        front(top, front);
    }

    private int[] reached() {
        TreeSet<Integer> all = new TreeSet<>();
        for (int s : path) {
            for (int p : symbolic.rows[s]) {
                all.add(p);
            }
        }
        for (int p : positions) {
            all.add(p);
        }
        for (int node : place.read()) {
            all.add(symbolic.positionOf[node]);
        }
        return all.stream().mapToInt(p -> p).toArray();
    }

    private int at(int position) {
        return Arrays.binarySearch(reached, position);
    }

    /** Columns that a supernode's subtree loads: from, to. */
    private int[] columns(int s) {
        return new int[] {lower(first[s]) * b, lower(symbolic.first[s + 1]) * b};
    }

    private int lower(int position) {
        int i = Arrays.binarySearch(positions, position);
        return i < 0 ? -i - 1 : i;
    }

    private double[][] rows(int s, double[][] of) {
        int[] nodes = symbolic.rows[s];
        double[][] rows = new double[nodes.length * b][];
        for (int k = 0; k < nodes.length; k++) {
            int row = at(nodes[k]) * b;
            for (int r = 0; r < b; r++) {
                rows[k * b + r] = of[row + r];
            }
        }
        return rows;
    }

    private void forward(int s) {
        int w = symbolic.width(s);
        for (int k = 0; k < w / b; k++) {
            eliminated[at(symbolic.rows[s][k])] = true;
        }
        int[] columns = columns(s);
        int from = columns[0];
        int to = columns[1];
        if (from == to) {
            return;
        }
        double[][] y = rows(s, x);
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

    private static int row(int m, int k) {
        return k * m - k * (k - 1) / 2 - k;
    }

    private static double entry(double[] factor, int m, int k, int j) {
        return factor[row(m, k) + j];
    }

    /** Z Y on the rows of the front that are reached. */
    private void front(int top, double[][] front) {
        int[] rows = symbolic.rows[top];
        int[] local = new int[reached.length];
        int count = 0;
        for (int i = 0, k = 0; i < reached.length; i++) {
            local[i] = -1;
            if (!eliminated[i]) {
                while (rows[k] != reached[i]) {
                    k++;
                }
                local[i] = k;
                count++;
            }
        }
        double[][] y = new double[count * b][];
        double[][] z = new double[count * b][count * b];
        int[] at = new int[count];
        for (int i = 0, n = 0; i < reached.length; i++) {
            if (local[i] >= 0) {
                at[n] = local[i];
                for (int r = 0; r < b; r++) {
                    y[n * b + r] = x[i * b + r];
                }
                n++;
            }
        }
        for (int i = 0; i < count; i++) {
            for (int r = 0; r < b; r++) {
                for (int j = 0; j < count; j++) {
                    System.arraycopy(front[at[i] * b + r], at[j] * b, z[i * b + r], j * b, b);
                }
            }
        }
        int width = positions.length * b;
        atFront = new double[count * b][width];
        accumulate(atFront, z, y, 0, width);
    }

    /** Rows of {@code into} plus coefficients (same number of rows) times rows {@code of}. */
    private static void accumulate(double[][] into, double[][] coefficients, double[][] of, int from, int to) {
        int i = 0;
        for (; i + 3 <= into.length; i += 3) {
            int k = 0;
            double[] c0 = coefficients[i];
            double[] c1 = coefficients[i + 1];
            double[] c2 = coefficients[i + 2];
            for (; k + 3 <= of.length; k += 3) {
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
            for (; k < of.length; k++) {
                for (int r = i; r < i + 3; r++) {
                    Kernel.oneByOne(into[r], of[k], coefficients[r][k], from, to);
                }
            }
        }
        for (; i < into.length; i++) {
            for (int k = 0; k < of.length; k++) {
                Kernel.oneByOne(into[i], of[k], coefficients[i][k], from, to);
            }
        }
    }

    /**
     * The inverse between the loaded nodes: what unit loads on each of their unknowns do at each of them.
     *
     * @return square, unknowns in the order of the loaded nodes
     */
    public double[][] between() {
        int width = positions.length * b;
        double[][] sum = new double[width][width];
        for (int s : path) {
            int[] columns = columns(s);
            int w = symbolic.width(s);
            double[][] y = rows(s, x);
            int base = symbolic.first[s] * b;
            gram(sum, y, y, w, columns[0], columns[1], k -> 1 / pivots[base + k]);
        }
        double[][] y = new double[atFront.length][];
        for (int i = 0, n = 0; i < reached.length; i++) {
            if (!eliminated[i]) {
                for (int r = 0; r < b; r++) {
                    y[n++] = x[i * b + r];
                }
            }
        }
        gram(sum, y, atFront, y.length, 0, width, _ -> 1);
        double[][] result = new double[width][width];
        for (int i = 0; i < width; i++) {
            int a = caller[i / b] * b + i % b;
            double si = scale[place.loaded()[a / b] * b + a % b];
            for (int j = i; j < width; j++) {
                int c = caller[j / b] * b + j % b;
                result[a][c] = sum[i][j] * si * scale[place.loaded()[c / b] * b + c % b];
                result[c][a] = result[a][c];
            }
        }
        return result;
    }

    private interface Weight {
        double of(int k);
    }

    /** Upper triangle plus Σ_k weight_k left_kᵀ right_k. */
    private static void gram(
            double[][] sum, double[][] left, double[][] right, int rows, int from, int to, Weight weight) {
        int k = 0;
        for (; k + 3 <= rows; k += 3) {
            double w0 = weight.of(k);
            double w1 = weight.of(k + 1);
            double w2 = weight.of(k + 2);
            double[] l0 = left[k];
            double[] l1 = left[k + 1];
            double[] l2 = left[k + 2];
            int a = from;
            for (; a + 3 <= to; a += 3) {
                Kernel.threeByThree(
                        sum[a],
                        sum[a + 1],
                        sum[a + 2],
                        right[k],
                        right[k + 1],
                        right[k + 2],
                        w0 * l0[a],
                        w1 * l1[a],
                        w2 * l2[a],
                        w0 * l0[a + 1],
                        w1 * l1[a + 1],
                        w2 * l2[a + 1],
                        w0 * l0[a + 2],
                        w1 * l1[a + 2],
                        w2 * l2[a + 2],
                        a,
                        to);
            }
            for (; a < to; a++) {
                Kernel.oneByOne(sum[a], right[k], w0 * l0[a], a, to);
                Kernel.oneByOne(sum[a], right[k + 1], w1 * l1[a], a, to);
                Kernel.oneByOne(sum[a], right[k + 2], w2 * l2[a], a, to);
            }
        }
        for (; k < rows; k++) {
            for (int a = from; a < to; a++) {
                Kernel.oneByOne(sum[a], right[k], weight.of(k) * left[k][a], a, to);
            }
        }
    }

    /**
     * What loads on the loaded nodes do at the nodes that are read.
     *
     * @param loads any number of sets, unknowns in the order of the loaded nodes
     * @return as many, unknowns in the order of the nodes read
     */
    public double[][] spread(double[][] loads) {
        int sets = loads.length;
        int width = positions.length * b;
        double[][] scaled = new double[width][sets];
        for (int i = 0; i < width; i++) {
            int a = caller[i / b] * b + i % b;
            for (int c = 0; c < sets; c++) {
                scaled[i][c] = loads[c][a] * scale[place.loaded()[a / b] * b + a % b];
            }
        }
        double[][] v = new double[reached.length * b][];
        double[][] top = new double[atFront.length][sets];
        accumulate(top, atFront, scaled, 0, sets);
        for (int i = 0, n = 0; i < reached.length; i++) {
            for (int r = 0; r < b; r++) {
                v[i * b + r] = eliminated[i] ? new double[sets] : top[n++];
            }
        }
        for (int p = path.length - 1; p >= 0; p--) {
            backward(path[p], v, scaled);
        }
        double[][] result = new double[sets][place.read().length * b];
        for (int i = 0; i < place.read().length; i++) {
            int node = place.read()[i];
            int row = at(symbolic.positionOf[node]) * b;
            for (int r = 0; r < b; r++) {
                for (int c = 0; c < sets; c++) {
                    result[c][i * b + r] = v[row + r][c] * scale[node * b + r];
                }
            }
        }
        return result;
    }

    private void backward(int s, double[][] v, double[][] scaled) {
        double[][] own = rows(s, v);
        double[][] y = rows(s, x);
        int[] columns = columns(s);
        int m = own.length;
        int sets = scaled.length == 0 ? 0 : scaled[0].length;
        int base = symbolic.first[s] * b;
        for (int k = symbolic.width(s) - 1; k >= 0; k--) {
            double[] to = own[k];
            for (int a = columns[0]; a < columns[1]; a++) {
                Kernel.oneByOne(to, scaled[a], y[k][a], 0, sets);
            }
            int row = row(m, k);
            for (int j = k + 1; j < m; j++) {
                Kernel.oneByOne(to, own[j], -factors[s][row + j], 0, sets);
            }
            for (int c = 0; c < sets; c++) {
                to[c] /= pivots[base + k];
            }
        }
    }
}
