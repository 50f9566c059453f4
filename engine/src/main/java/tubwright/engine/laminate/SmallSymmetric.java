// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.Optional;

/** Cholesky factorisation of small symmetric positive definite matrices, row-major in one array. */
final class SmallSymmetric {
    private SmallSymmetric() {}

    /** Lower factor L with A = L Lᵀ, or empty if the matrix is not positive definite. */
    static Optional<double[]> factor(double[] a, int n) {
        double[] l = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i * n + j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i * n + k] * l[j * n + k];
                }
                if (i == j) {
                    if (!(sum > 0)) {
                        return Optional.empty();
                    }
                    l[i * n + i] = Math.sqrt(sum);
                } else {
                    l[i * n + j] = sum / l[j * n + j];
                }
            }
        }
        return Optional.of(l);
    }

    /** Solution of L Lᵀ x = b. */
    static double[] solve(double[] l, int n, double[] b) {
        double[] x = b.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= l[i * n + k] * x[k];
            }
            x[i] /= l[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= l[k * n + i] * x[k];
            }
            x[i] /= l[i * n + i];
        }
        return x;
    }

    /** Inverse from the factor, symmetric to the last bit. */
    static double[] inverse(double[] l, int n) {
        double[] inverse = new double[n * n];
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            double[] column = solve(l, n, unit);
            for (int i = 0; i < n; i++) {
                inverse[i * n + j] = column[i];
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double mean = 0.5 * (inverse[i * n + j] + inverse[j * n + i]);
                inverse[i * n + j] = mean;
                inverse[j * n + i] = mean;
            }
        }
        return inverse;
    }
}
