// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.Arrays;

/** Eigenvalues of small dense symmetric matrices by Jacobi rotations. */
final class Eigenvalues {
    private Eigenvalues() {}

    /** Ascending eigenvalues of an n × n row-major symmetric matrix. */
    static double[] of(double[] matrix, int n) {
        double[] a = matrix.clone();
        for (int sweep = 0; sweep < 60; sweep++) {
            double off = 0;
            double all = 0;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    all += a[i * n + j] * a[i * n + j];
                    off += i == j ? 0 : a[i * n + j] * a[i * n + j];
                }
            }
            if (off <= 1e-32 * all) {
                break;
            }
            for (int p = 0; p < n; p++) {
                for (int q = p + 1; q < n; q++) {
                    rotate(a, n, p, q);
                }
            }
        }
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = a[i * n + i];
        }
        Arrays.sort(values);
        return values;
    }

    private static void rotate(double[] a, int n, int p, int q) {
        double apq = a[p * n + q];
        if (apq == 0) {
            return;
        }
        double theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
        double t = Math.copySign(1, theta) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        double c = 1 / Math.sqrt(t * t + 1);
        double s = t * c;
        for (int k = 0; k < n; k++) {
            double x = a[k * n + p];
            double y = a[k * n + q];
            a[k * n + p] = c * x - s * y;
            a[k * n + q] = s * x + c * y;
        }
        for (int k = 0; k < n; k++) {
            double x = a[p * n + k];
            double y = a[q * n + k];
            a[p * n + k] = c * x - s * y;
            a[q * n + k] = s * x + c * y;
        }
    }
}
