// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Arrays;
import tubwright.numerics.Parallel;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/** Rows of a symmetric matrix, both triangles, without its zeros. */
final class SparseRows implements Product {
    private static final int ROWS = 1 << 13;

    private final int[] start;
    private final int[] columns;
    private final double[] values;

    private SparseRows(int[] start, int[] columns, double[] values) {
        this.start = start;
        this.columns = columns;
        this.values = values;
    }

    static SparseRows of(SymmetricMatrix matrix) {
        int n = matrix.order();
        int[] start = new int[n + 1];
        visit(matrix, (row, column, value) -> {
            start[row + 1]++;
            if (row != column) {
                start[column + 1]++;
            }
        });
        Arrays.parallelPrefix(start, Integer::sum);
        int[] next = start.clone();
        int[] columns = new int[start[n]];
        double[] values = new double[start[n]];
        visit(matrix, (row, column, value) -> {
            columns[next[row]] = column;
            values[next[row]++] = value;
            if (row != column) {
                columns[next[column]] = row;
                values[next[column]++] = value;
            }
        });
        return new SparseRows(start, columns, values);
    }

    @FunctionalInterface
    private interface Visitor {
        void entry(int row, int column, double value);
    }

    /** All entries of the upper triangle that are not zero, row by row. */
    private static void visit(SymmetricMatrix matrix, Visitor visitor) {
        SymmetricPattern pattern = matrix.pattern();
        double[] all = matrix.values();
        int b = pattern.blockSize();
        for (int node = 0; node < pattern.nodes(); node++) {
            int from = pattern.nodeStart()[node];
            for (int r = 0; r < b; r++) {
                int v = pattern.rowStart(node, r);
                for (int p = from; p < pattern.nodeStart()[node + 1]; p++) {
                    for (int s = p == from ? r : 0; s < b; s++) {
                        double value = all[v++];
                        if (value != 0) {
                            visitor.entry(node * b + r, pattern.nodeColumns()[p] * b + s, value);
                        }
                    }
                }
            }
        }
    }

    @Override
    public int order() {
        return start.length - 1;
    }

    @Override
    public double[][] of(double[][] x) {
        int n = order();
        double[][] y = new double[x.length][n];
        Parallel.run((n + ROWS - 1) / ROWS, part -> {
            int to = Math.min(n, (part + 1) * ROWS);
            int k = 0;
            for (; k + 4 <= x.length; k += 4) {
                four(x[k], x[k + 1], x[k + 2], x[k + 3], y, k, part * ROWS, to);
            }
            for (; k < x.length; k++) {
                one(x[k], y[k], part * ROWS, to);
            }
        });
        return y;
    }

    private void one(double[] x, double[] y, int from, int to) {
        for (int row = from; row < to; row++) {
            double sum = 0;
            for (int e = start[row]; e < start[row + 1]; e++) {
                sum = Math.fma(values[e], x[columns[e]], sum);
            }
            y[row] = sum;
        }
    }

    private void four(double[] x0, double[] x1, double[] x2, double[] x3, double[][] y, int at, int from, int to) {
        for (int row = from; row < to; row++) {
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double s3 = 0;
            for (int e = start[row]; e < start[row + 1]; e++) {
                double a = values[e];
                int c = columns[e];
                s0 = Math.fma(a, x0[c], s0);
                s1 = Math.fma(a, x1[c], s1);
                s2 = Math.fma(a, x2[c], s2);
                s3 = Math.fma(a, x3[c], s3);
            }
            y[at][row] = s0;
            y[at + 1][row] = s1;
            y[at + 2][row] = s2;
            y[at + 3][row] = s3;
        }
    }
}
