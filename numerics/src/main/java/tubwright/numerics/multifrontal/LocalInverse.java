// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;

/**
 * Rows and columns of the inverse at a few nodes that lie near one another. The columns are eliminated along the way from
 * these nodes up to a front that holds all that is left; from there on the inverse is known.
 *
 * <p>With X the eliminated rows and Y what arrives at the front, Z the inverse there: the block is XᵀD⁻¹X + YᵀZY.
 */
public final class LocalInverse {
    private final SharedColumns columns;
    private final Symbolic symbolic;
    private final double[] scale;
    private final int b;
    private final LocalInverses.Place place;
    /** Loaded nodes in the order of elimination: positions, and places in the caller's list. */
    private final int[] positions;

    private final int[] caller;
    private final int[] path;
    /** Positions of the rows that this place reaches, rising. */
    private final int[] reached;
    /** Of each supernode of the path its own rows, this place's columns below it only. */
    private final double[][][] eliminated;
    /** Of the reached rows of the front: places among the reached, what arrives, and the inverse times that. */
    private final int[] frontPlaces;

    private final double[][] arriving;
    private final double[][] atFront;

    LocalInverse(
            SharedColumns columns,
            double[] scale,
            LocalInverses.Place place,
            int[] path,
            int[] positions,
            int[] reached) {
        this.columns = columns;
        this.scale = scale;
        this.place = place;
        this.path = path;
        this.positions = positions;
        this.reached = reached;
        symbolic = columns.symbolic;
        b = symbolic.pattern.blockSize();
        caller = new int[positions.length];
        for (int i = 0; i < caller.length; i++) {
            caller[Arrays.binarySearch(positions, symbolic.positionOf[place.loaded()[i]])] = i;
        }
        int[] own = Arrays.stream(positions)
                .map(p -> Arrays.binarySearch(columns.positions, p))
                .toArray();
        eliminated = new double[path.length][][];
        for (int p = 0; p < path.length; p++) {
            int s = path[p];
            int[] below = columns.below(s, positions);
            double[][] rows = new double[symbolic.width(s)][];
            for (int k = 0; k < rows.length; k++) {
                int row = columns.at(symbolic.rows[s][k / b]) * b + k % b;
                rows[k] = gathered(columns.x[row], own, below[0], below[1]);
            }
            eliminated[p] = rows;
        }
        int[] places = new int[reached.length];
        int count = 0;
        for (int i = 0; i < reached.length; i++) {
            if (!columns.eliminated(columns.at(reached[i]))) {
                places[count++] = i;
            }
        }
        frontPlaces = Arrays.copyOf(places, count);
        arriving = new double[count * b][];
        atFront = new double[count * b][];
        for (int i = 0; i < count; i++) {
            int row = columns.at(reached[places[i]]) * b;
            for (int r = 0; r < b; r++) {
                arriving[i * b + r] = gathered(columns.x[row + r], own, 0, own.length);
                atFront[i * b + r] = gathered(columns.atFront[row + r], own, 0, own.length);
            }
        }
    }

    private double[] gathered(double[] row, int[] own, int from, int to) {
        double[] some = new double[(to - from) * b];
        for (int i = from; i < to; i++) {
            System.arraycopy(row, own[i] * b, some, (i - from) * b, b);
        }
        return some;
    }

    private int at(int position) {
        return Arrays.binarySearch(reached, position);
    }

    /**
     * The inverse between the loaded nodes: what unit loads on each of their unknowns do at each of them.
     *
     * @return square, unknowns in the order of the loaded nodes
     */
    public double[][] between() {
        int width = positions.length * b;
        double[][] sum = new double[width][width];
        for (int p = 0; p < path.length; p++) {
            int s = path[p];
            int base = symbolic.first[s] * b;
            double[] weights = new double[symbolic.width(s)];
            for (int k = 0; k < weights.length; k++) {
                weights[k] = 1 / columns.pivots[base + k];
            }
            int[] below = columns.below(s, positions);
            gram(sum, eliminated[p], eliminated[p], below[0] * b, below[1] * b, weights);
        }
        double[] ones = new double[arriving.length];
        Arrays.fill(ones, 1);
        gram(sum, arriving, atFront, 0, width, ones);
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

    /** Upper triangle from column {@code first} on plus Σ_k weight_k left_kᵀ right_k, whose columns begin there. */
    private static void gram(double[][] sum, double[][] left, double[][] right, int first, int end, double[] weights) {
        int n = end - first;
        double[][] square = new double[n][n];
        int rows = left.length;
        int k = 0;
        for (; k + 3 <= rows; k += 3) {
            double w0 = weights[k];
            double w1 = weights[k + 1];
            double w2 = weights[k + 2];
            double[] l0 = left[k];
            double[] l1 = left[k + 1];
            double[] l2 = left[k + 2];
            int from = Math.min(SharedColumns.first(l0), Math.min(SharedColumns.first(l1), SharedColumns.first(l2)));
            int to = Math.max(SharedColumns.last(l0), Math.max(SharedColumns.last(l1), SharedColumns.last(l2)));
            for (int a = from - from % 3; a < to; a += 3) {
                if (a + 3 <= n) {
                    Kernel.threeByThree(
                            square[a],
                            square[a + 1],
                            square[a + 2],
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
                            n);
                } else {
                    for (int i = a; i < n; i++) {
                        Kernel.oneByOne(square[i], right[k], w0 * l0[i], i, n);
                        Kernel.oneByOne(square[i], right[k + 1], w1 * l1[i], i, n);
                        Kernel.oneByOne(square[i], right[k + 2], w2 * l2[i], i, n);
                    }
                }
            }
        }
        for (; k < rows; k++) {
            for (int a = 0; a < n; a++) {
                Kernel.oneByOne(square[a], right[k], weights[k] * left[k][a], a, n);
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                sum[first + i][first + j] += square[i][j];
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
        double[][] scaled = new double[sets][width];
        double[][] v = new double[sets][reached.length * b];
        for (int c = 0; c < sets; c++) {
            for (int i = 0; i < width; i++) {
                int a = caller[i / b] * b + i % b;
                scaled[c][i] = loads[c][a] * scale[place.loaded()[a / b] * b + a % b];
            }
        }
        double[] sums = new double[sets];
        for (int i = 0; i < atFront.length; i++) {
            Dots.of(atFront[i], 0, scaled, 0, width, sums);
            for (int c = 0; c < sets; c++) {
                v[c][frontPlaces[i / b] * b + i % b] = sums[c];
            }
        }
        for (int p = path.length - 1; p >= 0; p--) {
            backward(p, v, scaled);
        }
        double[][] result = new double[sets][place.read().length * b];
        for (int i = 0; i < place.read().length; i++) {
            int node = place.read()[i];
            int row = at(symbolic.positionOf[node]) * b;
            for (int c = 0; c < sets; c++) {
                for (int r = 0; r < b; r++) {
                    result[c][i * b + r] = v[c][row + r] * scale[node * b + r];
                }
            }
        }
        return result;
    }

    private void backward(int p, double[][] v, double[][] scaled) {
        int s = path[p];
        int[] nodes = symbolic.rows[s];
        int m = nodes.length * b;
        int sets = scaled.length;
        double[][] y = new double[sets][m];
        int[] places = Arrays.stream(nodes).map(this::at).toArray();
        for (int c = 0; c < sets; c++) {
            for (int i = 0; i < places.length; i++) {
                System.arraycopy(v[c], places[i] * b, y[c], i * b, b);
            }
        }
        int[] below = columns.below(s, positions);
        int base = symbolic.first[s] * b;
        double[] loaded = new double[sets];
        double[] passed = new double[sets];
        for (int k = symbolic.width(s) - 1; k >= 0; k--) {
            Dots.of(eliminated[p][k], -below[0] * b, scaled, below[0] * b, below[1] * b, loaded);
            Dots.of(columns.factors[s], SharedColumns.row(m, k), y, k + 1, m, passed);
            for (int c = 0; c < sets; c++) {
                y[c][k] = (loaded[c] - passed[c]) / columns.pivots[base + k];
            }
        }
        for (int c = 0; c < sets; c++) {
            for (int i = 0; i < symbolic.width(s) / b; i++) {
                System.arraycopy(y[c], i * b, v[c], places[i] * b, b);
            }
        }
    }
}
