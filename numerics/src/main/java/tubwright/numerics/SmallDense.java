// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.stream.IntStream;

/** Small dense systems, a few hundred unknowns. Plain elimination; rows are arrays. */
public final class SmallDense {
    private SmallDense() {}

    /**
     * What is left of a symmetric matrix when some of its unknowns are eliminated: A_kk − A_kg A_gg⁻¹ A_gk.
     *
     * @param a both triangles; left alone
     * @param kept indices that stay, in the order of the result
     * @param gone indices that go; the matrix must be positive definite on them
     * @throws SingularMatrixException where it is not
     */
    public static double[][] condense(double[][] a, int[] kept, int[] gone) {
        int[] order = IntStream.concat(IntStream.of(gone), IntStream.of(kept)).toArray();
        int n = order.length;
        double[][] m = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                m[i][j] = a[order[i]][order[j]];
            }
        }
        for (int k = 0; k < gone.length; k++) {
            double pivot = m[k][k];
            if (!(pivot > 1e-14 * a[gone[k]][gone[k]])) {
                throw new SingularMatrixException(gone[k], "a pivot vanishes");
            }
            for (int i = k + 1; i < n; i++) {
                double factor = m[k][i] / pivot;
                if (factor != 0) {
                    subtract(m[i], m[k], factor, i);
                }
            }
        }
        double[][] rest = new double[kept.length][kept.length];
        for (int i = 0; i < kept.length; i++) {
            for (int j = i; j < kept.length; j++) {
                rest[i][j] = m[gone.length + i][gone.length + j];
                rest[j][i] = rest[i][j];
            }
        }
        return rest;
    }

    private static void subtract(double[] row, double[] pivotRow, double factor, int from) {
        for (int j = from; j < row.length; j++) {
            row[j] -= factor * pivotRow[j];
        }
    }

    private static void addFour(
            double[] row,
            double[] b0,
            double[] b1,
            double[] b2,
            double[] b3,
            double f0,
            double f1,
            double f2,
            double f3) {
        for (int j = 0; j < row.length; j++) {
            row[j] = Math.fma(f3, b3[j], Math.fma(f2, b2[j], Math.fma(f1, b1[j], Math.fma(f0, b0[j], row[j]))));
        }
    }

    /** The product of two matrices. */
    public static double[][] multiply(double[][] a, double[][] b) {
        int columns = b.length == 0 ? 0 : b[0].length;
        double[][] product = new double[a.length][columns];
        for (int i = 0; i < a.length; i++) {
            int k = 0;
            for (; k + 4 <= b.length; k += 4) {
                addFour(product[i], b[k], b[k + 1], b[k + 2], b[k + 3], a[i][k], a[i][k + 1], a[i][k + 2], a[i][k + 3]);
            }
            for (; k < b.length; k++) {
                subtract(product[i], b[k], -a[i][k], 0);
            }
        }
        return product;
    }

    /**
     * Solves a x = b for several right-hand sides, with exchange of rows.
     *
     * @param a overwritten
     * @param b right-hand sides, each a row; overwritten with the solutions
     * @return as {@link Eliminated#pivot()}
     */
    public static double solve(double[][] a, double[][] b) {
        Eliminated eliminated = eliminate(a);
        if (eliminated.pivot() > 0) {
            eliminated.solve(b);
        }
        return eliminated.pivot();
    }

    /**
     * A matrix made ready to solve with.
     *
     * @param rows below the diagonal the factors, on and above it what is left
     * @param order row that came to each place
     * @param pivot the smallest pivot over the largest entry the matrix had: nought where it is singular
     */
    public record Eliminated(double[][] rows, int[] order, double pivot) {
        /** Overwrites right-hand sides, each a row, with the solutions. */
        public void solve(double[][] b) {
            int n = rows.length;
            for (double[] each : b) {
                double[] x = new double[n];
                for (int i = 0; i < n; i++) {
                    double sum = each[order[i]];
                    for (int j = 0; j < i; j++) {
                        sum -= rows[i][j] * x[j];
                    }
                    x[i] = sum;
                }
                for (int i = n - 1; i >= 0; i--) {
                    double sum = x[i];
                    for (int j = i + 1; j < n; j++) {
                        sum -= rows[i][j] * x[j];
                    }
                    x[i] = sum / rows[i][i];
                }
                System.arraycopy(x, 0, each, 0, n);
            }
        }
    }

    /** Eliminates a square matrix with exchange of rows; it is overwritten and belongs to the result. */
    public static Eliminated eliminate(double[][] a) {
        int n = a.length;
        double largest = 0;
        for (double[] row : a) {
            for (double v : row) {
                largest = Math.max(largest, Math.abs(v));
            }
        }
        int[] order = IntStream.range(0, n).toArray();
        double smallest = largest;
        for (int k = 0; k < n; k++) {
            int p = k;
            for (int i = k + 1; i < n; i++) {
                if (Math.abs(a[i][k]) > Math.abs(a[p][k])) {
                    p = i;
                }
            }
            double[] swapped = a[k];
            a[k] = a[p];
            a[p] = swapped;
            int place = order[k];
            order[k] = order[p];
            order[p] = place;
            smallest = Math.min(smallest, Math.abs(a[k][k]));
            if (!(smallest > 0)) {
                return new Eliminated(a, order, 0);
            }
            for (int i = k + 1; i < n; i++) {
                double factor = a[i][k] / a[k][k];
                if (factor != 0) {
                    subtract(a[i], a[k], factor, k + 1);
                }
                a[i][k] = factor;
            }
        }
        return new Eliminated(a, order, n == 0 ? 1 : smallest / largest);
    }
}
