// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.OptionalDouble;
import tubwright.numerics.Factorisation;
import tubwright.numerics.Parallel;

/** L D Lᵀ by supernodes, in the order of elimination. Never changes, so solves may run at once. */
final class JavaFactorisation implements Factorisation {
    private final Symbolic symbolic;
    private final double[][] factors;
    private final double[] pivots;
    private final double[] scale;
    private final int b;

    JavaFactorisation(Symbolic symbolic, double[][] factors, double[] pivots, double[] scale) {
        this.symbolic = symbolic;
        this.factors = factors;
        this.pivots = pivots;
        this.scale = scale;
        this.b = symbolic.pattern.blockSize();
    }

    @Override
    public int order() {
        return pivots.length;
    }

    @Override
    public void solveInPlace(double[] vector) {
        int n = order();
        if (vector.length != n) {
            throw new IllegalArgumentException("Need a vector of length " + n);
        }
        double[] x = new double[n];
        for (int k = 0; k < symbolic.nodeAt.length; k++) {
            int node = symbolic.nodeAt[k] * b;
            for (int r = 0; r < b; r++) {
                x[k * b + r] = vector[node + r] * scale[node + r];
            }
        }
        double[] y = new double[n];
        for (int s = 0; s < factors.length; s++) {
            forward(s, x, y);
        }
        for (int s = factors.length - 1; s >= 0; s--) {
            backward(s, x, y);
        }
        for (int k = 0; k < symbolic.nodeAt.length; k++) {
            int node = symbolic.nodeAt[k] * b;
            for (int r = 0; r < b; r++) {
                vector[node + r] = x[k * b + r] * scale[node + r];
            }
        }
    }

    @Override
    public void solveInPlace(double[][] vectors) {
        Parallel.run(vectors.length, k -> solveInPlace(vectors[k]));
    }

    /** Takes the pivots of a supernode out of the rows below; what is left in x is D⁻¹ times the solution so far. */
    private void forward(int s, double[] x, double[] y) {
        int[] nodes = symbolic.rows[s];
        int width = symbolic.width(s);
        int m = nodes.length * b;
        gather(nodes, x, y);
        int base = symbolic.first[s] * b;
        double[] factor = factors[s];
        int row = 0;
        for (int k = 0; k < width; k++) {
            double z = y[k] / pivots[base + k];
            y[k] = z;
            subtract(y, k + 1, m, factor, row - k, z);
            row += m - k;
        }
        scatter(nodes, nodes.length, y, x);
    }

    private void backward(int s, double[] x, double[] y) {
        int[] nodes = symbolic.rows[s];
        int width = symbolic.width(s);
        int m = nodes.length * b;
        gather(nodes, x, y);
        int base = symbolic.first[s] * b;
        double[] factor = factors[s];
        int row = factor.length;
        for (int k = width - 1; k >= 0; k--) {
            row -= m - k;
            y[k] -= dot(factor, row - k, y, k + 1, m) / pivots[base + k];
        }
        scatter(nodes, width / b, y, x);
    }

    /** y minus z times a row of the factor whose column j lies at {@code offset + j}. */
    private static void subtract(double[] y, int from, int to, double[] factor, int offset, double z) {
        for (int j = from; j < to; j++) {
            y[j] -= z * factor[offset + j];
        }
    }

    private static double dot(double[] factor, int offset, double[] y, int from, int to) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int j = from;
        for (; j + 4 <= to; j += 4) {
            s0 += factor[offset + j] * y[j];
            s1 += factor[offset + j + 1] * y[j + 1];
            s2 += factor[offset + j + 2] * y[j + 2];
            s3 += factor[offset + j + 3] * y[j + 3];
        }
        for (; j < to; j++) {
            s0 += factor[offset + j] * y[j];
        }
        return s0 + s1 + (s2 + s3);
    }

    private void gather(int[] nodes, double[] x, double[] y) {
        for (int k = 0; k < nodes.length; k++) {
            System.arraycopy(x, nodes[k] * b, y, k * b, b);
        }
    }

    private void scatter(int[] nodes, int count, double[] y, double[] x) {
        for (int k = 0; k < count; k++) {
            System.arraycopy(y, k * b, x, nodes[k] * b, b);
        }
    }

    /** Blocks of the inverse. */
    LocalInverses localInverses() {
        return LocalInverses.of(symbolic, factors, pivots, scale);
    }

    @Override
    public long factorEntries() {
        return symbolic.factorEntries();
    }

    @Override
    public double flops() {
        return symbolic.totalFlops();
    }

    @Override
    public int negativePivots() {
        int negative = 0;
        for (double pivot : pivots) {
            negative += pivot < 0 ? 1 : 0;
        }
        return negative;
    }

    @Override
    public OptionalDouble logAbsDeterminant() {
        double sum = 0;
        for (int i = 0; i < pivots.length; i++) {
            sum += Math.log(Math.abs(pivots[i])) - 2 * Math.log(scale[i]);
        }
        return OptionalDouble.of(sum);
    }

    @Override
    public void close() {}
}
