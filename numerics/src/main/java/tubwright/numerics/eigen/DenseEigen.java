// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * All eigenpairs of a small dense symmetric matrix by cyclic Jacobi rotations (Golub and Van Loan 2013, Matrix
 * Computations, §8.5).
 *
 * @param values in falling order
 * @param vectors orthonormal, {@code vectors[k]} belongs to {@code values[k]}
 */
public record DenseEigen(double[] values, double[][] vectors) {
    private static final int MAX_SWEEPS = 60;

    /** Decomposes the leading n × n part of a full symmetric matrix, which is left alone. */
    public static DenseEigen of(double[][] matrix, int n) {
        double[][] a = new double[n][];
        double[][] v = new double[n][n];
        double all = 0;
        for (int i = 0; i < n; i++) {
            a[i] = Arrays.copyOf(matrix[i], n);
            v[i][i] = 1;
            for (double entry : a[i]) {
                all += entry * entry;
            }
        }
        for (int sweep = 0; sweep < MAX_SWEEPS && offDiagonal(a) > 1e-34 * all; sweep++) {
            for (int p = 0; p < n; p++) {
                for (int q = p + 1; q < n; q++) {
                    rotate(a, v, p, q);
                }
            }
        }
        int[] order = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -a[i][i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] values = new double[n];
        double[][] vectors = new double[n][];
        for (int k = 0; k < n; k++) {
            values[k] = a[order[k]][order[k]];
            vectors[k] = v[order[k]];
        }
        return new DenseEigen(values, vectors);
    }

    private static double offDiagonal(double[][] a) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            for (int j = i + 1; j < a.length; j++) {
                sum += 2 * a[i][j] * a[i][j];
            }
        }
        return sum;
    }

    /** Clears entry (p, q). Rows of v are the eigenvectors. */
    private static void rotate(double[][] a, double[][] v, int p, int q) {
        double apq = a[p][q];
        if (apq == 0) {
            return;
        }
        double ratio = (a[q][q] - a[p][p]) / (2 * apq);
        double t = Math.copySign(1, ratio) / (Math.abs(ratio) + Math.hypot(ratio, 1));
        double c = 1 / Math.hypot(t, 1);
        double s = t * c;
        for (int k = 0; k < a.length; k++) {
            double x = a[k][p];
            double y = a[k][q];
            a[k][p] = c * x - s * y;
            a[k][q] = s * x + c * y;
        }
        for (int k = 0; k < a.length; k++) {
            double x = a[p][k];
            double y = a[q][k];
            a[p][k] = c * x - s * y;
            a[q][k] = s * x + c * y;
            x = v[p][k];
            y = v[q][k];
            v[p][k] = c * x - s * y;
            v[q][k] = s * x + c * y;
        }
    }
}
