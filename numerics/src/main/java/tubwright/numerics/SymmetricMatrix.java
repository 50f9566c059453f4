// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.Arrays;

/** A sparse symmetric matrix: values on a {@link SymmetricPattern}. Mutable; not for concurrent writing. */
public final class SymmetricMatrix {
    /** Below this many entries a second thread costs more than it saves. */
    private static final int PARALLEL_ENTRIES = 200_000;

    private final SymmetricPattern pattern;
    private final double[] values;

    /** The zero matrix on a pattern. */
    public SymmetricMatrix(SymmetricPattern pattern) {
        this(pattern, new double[pattern.entries()]);
    }

    /** Wraps the values (no copy), laid out as {@link SymmetricPattern} says. */
    public SymmetricMatrix(SymmetricPattern pattern, double[] values) {
        if (values.length != pattern.entries()) {
            throw new IllegalArgumentException(
                    "The pattern has " + pattern.entries() + " entries, the values are " + values.length);
        }
        this.pattern = pattern;
        this.values = values;
    }

    /** Where the entries are. */
    public SymmetricPattern pattern() {
        return pattern;
    }

    /** The live values, in the order of the pattern. */
    public double[] values() {
        return values;
    }

    /** Number of unknowns. */
    public int order() {
        return pattern.order();
    }

    /** Entry (row, column); zero outside the pattern. */
    public double get(int row, int column) {
        int position = pattern.position(row, column);
        return position < 0 ? 0 : values[position];
    }

    /**
     * Adds to entry (row, column) and, being the same number, (column, row).
     *
     * @throws IllegalArgumentException if the pattern has no such entry
     */
    public void add(int row, int column, double value) {
        int position = pattern.position(row, column);
        if (position < 0) {
            throw new IllegalArgumentException("The pattern has no entry (" + row + ", " + column + ")");
        }
        values[position] += value;
    }

    /** The diagonal, one number for each unknown (a new array). */
    public double[] diagonal() {
        int b = pattern.blockSize();
        double[] diagonal = new double[order()];
        for (int node = 0; node < pattern.nodes(); node++) {
            for (int r = 0; r < b; r++) {
                diagonal[node * b + r] = values[pattern.rowStart(node, r)];
            }
        }
        return diagonal;
    }

    /** An independent copy on the same pattern. */
    public SymmetricMatrix copy() {
        return new SymmetricMatrix(pattern, values.clone());
    }

    /**
     * This matrix plus {@code factor} times another on the same pattern, as a new matrix.
     *
     * @throws IllegalArgumentException if the patterns differ
     */
    public SymmetricMatrix plus(double factor, SymmetricMatrix other) {
        if (!pattern.sameAs(other.pattern)) {
            throw new IllegalArgumentException("The matrices have different patterns");
        }
        double[] sum = new double[values.length];
        Parallel.chunks(sum.length, (from, to) -> {
            for (int k = from; k < to; k++) {
                sum[k] = values[k] + factor * other.values[k];
            }
        });
        return new SymmetricMatrix(pattern, sum);
    }

    /** The product with a vector, as a new array. */
    public double[] multiply(double[] x) {
        double[] y = new double[order()];
        multiply(x, y);
        return y;
    }

    /**
     * Overwrites {@code y} with the product of this matrix and {@code x}. The same bits whatever the number of threads.
     *
     * @param x length {@link #order()}, left alone
     * @param y length {@link #order()}, another array than {@code x}
     */
    public void multiply(double[] x, double[] y) {
        int n = order();
        if (x.length != n || y.length != n || x == y) {
            throw new IllegalArgumentException("Need two different vectors of length " + n);
        }
        Arrays.fill(y, 0);
        if (values.length < PARALLEL_ENTRIES) {
            multiplyRows(0, pattern.nodes(), x, y);
            return;
        }
        int half = Arrays.binarySearch(pattern.valueStart(), values.length / 2);
        int middle = half < 0 ? -half - 1 : half;
        double[] second = new double[n];
        Parallel.run(2, part -> {
            if (part == 0) {
                multiplyRows(0, middle, x, y);
            } else {
                multiplyRows(middle, pattern.nodes(), x, second);
            }
        });
        for (int i = middle * pattern.blockSize(); i < n; i++) {
            y[i] += second[i];
        }
    }

    /** The products with several vectors, as new arrays; cheaper than one at a time. */
    public double[][] multiply(double[][] x) {
        double[][] y = new double[x.length][order()];
        for (double[] v : x) {
            if (v.length != order()) {
                throw new IllegalArgumentException("Need vectors of length " + order());
            }
        }
        int k = 0;
        for (; k + 4 <= x.length; k += 4) {
            multiplyFour(Arrays.copyOfRange(x, k, k + 4), Arrays.copyOfRange(y, k, k + 4));
        }
        for (; k < x.length; k++) {
            multiply(x[k], y[k]);
        }
        return y;
    }

    /** Four vectors, interleaved so that every value of the matrix is read once and serves eight times. */
    private void multiplyFour(double[][] x, double[][] y) {
        int n = order();
        double[] in = new double[4 * n];
        for (int i = 0; i < n; i++) {
            for (int c = 0; c < 4; c++) {
                in[4 * i + c] = x[c][i];
            }
        }
        double[] first = new double[4 * n];
        int half = Arrays.binarySearch(pattern.valueStart(), values.length / 2);
        int middle = half < 0 ? -half - 1 : half;
        if (values.length < PARALLEL_ENTRIES) {
            multiplyRowsFour(0, pattern.nodes(), in, first);
        } else {
            double[] second = new double[4 * n];
            Parallel.run(2, part -> {
                if (part == 0) {
                    multiplyRowsFour(0, middle, in, first);
                } else {
                    multiplyRowsFour(middle, pattern.nodes(), in, second);
                }
            });
            for (int i = 4 * middle * pattern.blockSize(); i < 4 * n; i++) {
                first[i] += second[i];
            }
        }
        for (int i = 0; i < n; i++) {
            for (int c = 0; c < 4; c++) {
                y[c][i] = first[4 * i + c];
            }
        }
    }

    private void multiplyRowsFour(int fromNode, int toNode, double[] x, double[] y) {
        int b = pattern.blockSize();
        int[] start = pattern.nodeStart();
        int[] columns = pattern.nodeColumns();
        int v = pattern.valueStart()[fromNode];
        for (int node = fromNode; node < toNode; node++) {
            for (int r = 0; r < b; r++) {
                int row = 4 * (node * b + r);
                double x0 = x[row];
                double x1 = x[row + 1];
                double x2 = x[row + 2];
                double x3 = x[row + 3];
                double d = values[v++];
                double s0 = d * x0;
                double s1 = d * x1;
                double s2 = d * x2;
                double s3 = d * x3;
                for (int p = start[node]; p < start[node + 1]; p++) {
                    int base = 4 * columns[p] * b;
                    for (int c = p == start[node] ? row + 4 : base; c < base + 4 * b; c += 4) {
                        double a = values[v++];
                        if (a == 0) {
                            // Geometric stiffness has three entries in thirty-six.
                            continue;
                        }
                        s0 = Math.fma(a, x[c], s0);
                        s1 = Math.fma(a, x[c + 1], s1);
                        s2 = Math.fma(a, x[c + 2], s2);
                        s3 = Math.fma(a, x[c + 3], s3);
                        y[c] = Math.fma(a, x0, y[c]);
                        y[c + 1] = Math.fma(a, x1, y[c + 1]);
                        y[c + 2] = Math.fma(a, x2, y[c + 2]);
                        y[c + 3] = Math.fma(a, x3, y[c + 3]);
                    }
                }
                y[row] += s0;
                y[row + 1] += s1;
                y[row + 2] += s2;
                y[row + 3] += s3;
            }
        }
    }

    private void multiplyRows(int fromNode, int toNode, double[] x, double[] y) {
        int b = pattern.blockSize();
        int[] start = pattern.nodeStart();
        int[] columns = pattern.nodeColumns();
        int v = pattern.valueStart()[fromNode];
        for (int node = fromNode; node < toNode; node++) {
            int base = node * b;
            for (int r = 0; r < b; r++) {
                int row = base + r;
                double xr = x[row];
                double sum = values[v++] * xr;
                for (int column = row + 1; column < base + b; column++) {
                    double a = values[v++];
                    sum += a * x[column];
                    y[column] += a * xr;
                }
                for (int p = start[node] + 1; p < start[node + 1]; p++) {
                    int column = columns[p] * b;
                    for (int s = 0; s < b; s++) {
                        double a = values[v++];
                        sum += a * x[column + s];
                        y[column + s] += a * xr;
                    }
                }
                y[row] += sum;
            }
        }
    }
}
