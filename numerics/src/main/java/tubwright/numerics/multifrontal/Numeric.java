// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Parallel;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * The numeric factorisation: for each supernode, children first, the front is summed from the matrix and the children's
 * Schur complements, and its pivots are eliminated. Subtrees run side by side; above them the work inside a front does.
 */
final class Numeric {
    /** A pivot this small against the diagonal it came from is rounding. */
    private static final double TINY = 1e-13;

    private final Symbolic symbolic;
    private final SymmetricMatrix matrix;
    private final boolean positiveDefinite;
    private final int b;
    private final double[] scale;
    private final double[][][] updates;
    private final double[][] factors;
    private final double[] pivots;

    Numeric(Symbolic symbolic, SymmetricMatrix matrix, Definiteness definiteness) {
        this.symbolic = symbolic;
        this.matrix = matrix;
        this.positiveDefinite = definiteness == Definiteness.POSITIVE_DEFINITE;
        this.b = symbolic.pattern.blockSize();
        this.scale = matrix.diagonal();
        for (int i = 0; i < scale.length; i++) {
            double a = Math.abs(scale[i]);
            scale[i] =
                    a > 0 && a < Double.POSITIVE_INFINITY ? Math.scalb(1.0, -Math.floorDiv(Math.getExponent(a), 2)) : 1;
        }
        int count = symbolic.rows.length;
        this.updates = new double[count][][];
        this.factors = new double[count][];
        this.pivots = new double[symbolic.pattern.order()];
    }

    JavaFactorisation factorise() {
        int count = symbolic.rows.length;
        double[] below = new double[count];
        for (int s = 0; s < count; s++) {
            below[s] += symbolic.flops[s] + 1;
            if (symbolic.parent[s] >= 0) {
                below[symbolic.parent[s]] += below[s];
            }
        }
        double limit = (symbolic.totalFlops() + count) / (6.0 * Parallel.threads());
        int[] firstOf = new int[count];
        for (int s = 0; s < count; s++) {
            firstOf[s] = symbolic.children[s].length == 0 ? s : firstOf[symbolic.children[s][0]];
        }
        int[] subtrees = java.util.stream.IntStream.range(0, count)
                .filter(s -> below[s] <= limit && (symbolic.parent[s] < 0 || below[symbolic.parent[s]] > limit))
                .boxed()
                .sorted((x, y) -> Double.compare(below[y], below[x]))
                .mapToInt(s -> s)
                .toArray();
        Parallel.run(subtrees.length, t -> {
            int[] local = new int[symbolic.nodeAt.length];
            for (int s = firstOf[subtrees[t]]; s <= subtrees[t]; s++) {
                eliminate(s, local);
            }
        });
        int[] local = new int[symbolic.nodeAt.length];
        for (int s = 0; s < count; s++) {
            if (below[s] > limit) {
                eliminate(s, local);
            }
        }
        return new JavaFactorisation(symbolic, factors, pivots, scale);
    }

    private void eliminate(int s, int[] local) {
        int[] rows = symbolic.rows[s];
        for (int k = 0; k < rows.length; k++) {
            local[rows[k]] = k;
        }
        int m = rows.length * b;
        int width = symbolic.width(s);
        double[][] f = new double[m][m];
        addMatrix(s, local, f);
        for (int child : symbolic.children[s]) {
            addUpdate(child, local, f);
        }
        double[] own = new double[width];
        double[] inverse = new double[width];
        Front.eliminate(f, width, own, inverse, (index, pivot) -> check(s, index, pivot));
        System.arraycopy(own, 0, pivots, symbolic.first[s] * b, width);
        factors[s] = packed(f, width);
        if (m > width) {
            updates[s] = Arrays.copyOfRange(f, width, m);
        }
    }

    /** The pivot rows from the diagonal on, one after the other: less memory, and nothing for the collector to move. */
    private static double[] packed(double[][] f, int width) {
        int m = f.length;
        double[] packed = new double[Math.toIntExact((long) width * m - (long) width * (width - 1) / 2)];
        int to = 0;
        for (int k = 0; k < width; k++) {
            System.arraycopy(f[k], k, packed, to, m - k);
            to += m - k;
        }
        return packed;
    }

    private void check(int s, int index, double pivot) {
        boolean good = positiveDefinite ? pivot > TINY : Math.abs(pivot) > TINY;
        if (!good) {
            int unknown = symbolic.nodeAt[symbolic.first[s] + index / b] * b + index % b;
            throw new SingularMatrixException(
                    unknown,
                    positiveDefinite && pivot < -TINY ? "a pivot is negative" : "a pivot vanishes (" + pivot + ")");
        }
    }

    /** Entries of the matrix in the pivot rows, in the order of elimination. */
    private void addMatrix(int s, int[] local, double[][] f) {
        SymmetricPattern pattern = symbolic.pattern;
        double[] values = matrix.values();
        for (int k = symbolic.first[s]; k < symbolic.first[s + 1]; k++) {
            int node = symbolic.nodeAt[k];
            int row = local[k] * b;
            for (int r = 0; r < b; r++) {
                int position = pattern.rowStart(node, r);
                double rowScale = scale[node * b + r];
                for (int q = r; q < b; q++) {
                    f[row + r][row + q] += values[position + q - r] * rowScale * scale[node * b + q];
                }
            }
            for (int p = symbolic.graph.start()[node]; p < symbolic.graph.start()[node + 1]; p++) {
                int other = symbolic.graph.neighbours()[p];
                if (symbolic.positionOf[other] > k) {
                    addBlock(node, row, other, local[symbolic.positionOf[other]] * b, f, values);
                }
            }
        }
    }

    private void addBlock(int node, int row, int other, int column, double[][] f, double[] values) {
        SymmetricPattern pattern = symbolic.pattern;
        boolean upper = node < other;
        int i = upper ? node : other;
        int offset = (pattern.find(i, upper ? other : node) - pattern.nodeStart()[i]) * b;
        for (int r = 0; r < b; r++) {
            int position = pattern.rowStart(i, r) + offset - r;
            for (int q = 0; q < b; q++) {
                double value = values[position + q];
                if (upper) {
                    f[row + r][column + q] += value * scale[node * b + r] * scale[other * b + q];
                } else {
                    f[row + q][column + r] += value * scale[node * b + q] * scale[other * b + r];
                }
            }
        }
    }

    /** Adds a child's Schur complement and lets go of it. */
    private void addUpdate(int child, int[] local, double[][] f) {
        double[][] update = updates[child];
        updates[child] = null;
        int[] rows = symbolic.rows[child];
        int own = symbolic.first[child + 1] - symbolic.first[child];
        for (int i = own; i < rows.length; i++) {
            for (int r = 0; r < b; r++) {
                double[] from = update[(i - own) * b + r];
                double[] to = f[local[rows[i]] * b + r];
                int j = i;
                while (j < rows.length) {
                    int first = j;
                    int column = local[rows[j]];
                    do {
                        j++;
                    } while (j < rows.length && local[rows[j]] == column + j - first);
                    addRun(from, first * b, to, column * b, (j - first) * b);
                }
            }
        }
    }

    private static void addRun(double[] from, int i, double[] to, int j, int length) {
        for (int k = 0; k < length; k++) {
            to[j + k] += from[i + k];
        }
    }
}
