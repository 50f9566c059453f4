// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.Arrays;
import java.util.Optional;

/**
 * A = UᵀU of a small dense positive definite matrix, a few hundred unknowns (Golub & Van Loan 2013, Matrix Computations,
 * §4.2). Rows are arrays of their own and four of them are taken together, so that the inner loops run over neighbours and
 * the processor's vector units are used.
 */
public final class SmallCholesky {
    /** Upper triangle; what stands below the diagonal has no meaning. */
    private final double[][] upper;

    private SmallCholesky(double[][] upper) {
        this.upper = upper;
    }

    /**
     * Decomposes a matrix; nothing where it is not positive definite.
     *
     * @param rows its upper triangle, overwritten and kept
     * @param least pivots, squared diagonal entries of U, must be greater
     */
    public static Optional<SmallCholesky> of(double[][] rows, double least) {
        int n = rows.length;
        for (int k = 0; k < n; k += 4) {
            int end = Math.min(n, k + 4);
            for (int p = k; p < end; p++) {
                for (int q = k; q < p; q++) {
                    takeOne(rows[p], rows[q], rows[q][p], p, n);
                }
                if (!(rows[p][p] > least)) {
                    return Optional.empty();
                }
                double scale = 1 / Math.sqrt(rows[p][p]);
                for (int j = p; j < n; j++) {
                    rows[p][j] *= scale;
                }
            }
            if (end == k + 4) {
                double[] a = rows[k];
                double[] b = rows[k + 1];
                double[] c = rows[k + 2];
                double[] d = rows[k + 3];
                for (int i = end; i < n; i++) {
                    takeFour(rows[i], a, b, c, d, -a[i], -b[i], -c[i], -d[i], i, n);
                }
            }
        }
        return Optional.of(new SmallCholesky(rows));
    }

    private static void takeOne(double[] row, double[] other, double factor, int from, int end) {
        for (int j = from; j < end; j++) {
            row[j] -= factor * other[j];
        }
    }

    private static void takeFour(
            double[] row,
            double[] a,
            double[] b,
            double[] c,
            double[] d,
            double ofA,
            double ofB,
            double ofC,
            double ofD,
            int from,
            int end) {
        for (int j = from; j < end; j++) {
            row[j] += ofA * a[j] + ofB * b[j] + ofC * c[j] + ofD * d[j];
        }
    }

    /** Solves A x = b in place. */
    public void solve(double[] x) {
        int n = upper.length;
        for (int i = 0; i < n; i++) {
            x[i] /= upper[i][i];
            takeOne(x, upper[i], x[i], i + 1, n);
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int j = i + 1; j < n; j++) {
                sum -= upper[i][j] * x[j];
            }
            x[i] = sum / upper[i][i];
        }
    }

    /** A⁻¹, both triangles. */
    public double[][] inverse() {
        int n = upper.length;
        double[][] root = new double[n][n];
        double[] nothing = new double[n];
        for (int i = 0; i < n; i++) {
            double[] row = root[i];
            for (int k = 0; k < i; k += 4) {
                double[] b = k + 1 < i ? root[k + 1] : nothing;
                double[] c = k + 2 < i ? root[k + 2] : nothing;
                double[] d = k + 3 < i ? root[k + 3] : nothing;
                double ofB = k + 1 < i ? -upper[k + 1][i] : 0;
                double ofC = k + 2 < i ? -upper[k + 2][i] : 0;
                double ofD = k + 3 < i ? -upper[k + 3][i] : 0;
                takeFour(row, root[k], b, c, d, -upper[k][i], ofB, ofC, ofD, 0, Math.min(i, k + 4));
            }
            row[i] = 1;
            double scale = 1 / upper[i][i];
            for (int j = 0; j <= i; j++) {
                row[j] *= scale;
            }
        }
        double[][] inverse = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = i; k < n; k += 4) {
                double[] b = k + 1 < n ? root[k + 1] : nothing;
                double[] c = k + 2 < n ? root[k + 2] : nothing;
                double[] d = k + 3 < n ? root[k + 3] : nothing;
                takeFour(inverse[i], root[k], b, c, d, root[k][i], b[i], c[i], d[i], 0, i + 1);
            }
            for (int j = 0; j < i; j++) {
                inverse[j][i] = inverse[i][j];
            }
        }
        return inverse;
    }

    /** A copy of a matrix held in one array, rows one after another, as rows. */
    public static double[][] rows(double[] a, int n) {
        double[][] rows = new double[n][];
        for (int i = 0; i < n; i++) {
            rows[i] = Arrays.copyOfRange(a, i * n, (i + 1) * n);
        }
        return rows;
    }
}
