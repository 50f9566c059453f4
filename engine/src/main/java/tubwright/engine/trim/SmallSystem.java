// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Optional;
import tubwright.numerics.SmallCholesky;

/** Small dense symmetric systems by Cholesky on a matrix scaled to unit diagonal. */
final class SmallSystem {
    /** Lifts the diagonal of reduced systems, whose fields may be all but dependent. */
    private static final double LIFT = 1e-13;

    private SmallSystem() {}

    /**
     * The inverse of a positive definite matrix.
     *
     * @param a n × n row-major
     * @throws IllegalArgumentException if it is not positive definite
     */
    static double[] inverse(double[] a, int n) {
        double[] scale = scale(a, n);
        double[][] scaled = factor(a, n, scale, 0)
                .orElseThrow(
                        () -> new IllegalArgumentException("a laminate or part has no stiffness in some direction"))
                .inverse();
        double[] inverse = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i * n + j] = scale[i] * scaled[i][j] * scale[j];
            }
        }
        return inverse;
    }

    /**
     * A solution good enough to enter a bound, which holds whatever the coefficients are.
     *
     * @param a n × n row-major, positive semi-definite
     * @param b right-hand side
     */
    static double[] nearSolution(double[] a, double[] b, int n) {
        return nearSolution(a, b, n, LIFT);
    }

    /**
     * The same with the scaled diagonal lifted by at least so much, which keeps the coefficients of all but dependent
     * fields small.
     */
    static double[] nearSolution(double[] a, double[] b, int n, double least) {
        double[] scale = scale(a, n);
        Optional<SmallCholesky> root = Optional.empty();
        // Dependent fields: lift the diagonal more.
        for (double lift = least; root.isEmpty() && lift < 1; lift *= 100) {
            root = factor(a, n, scale, lift);
        }
        double[] x = new double[n];
        if (root.isEmpty()) {
            return x;
        }
        double[] r = b.clone();
        // Refined towards the system as it is, but not where it was lifted on purpose.
        for (int step = 0; step < (least > LIFT ? 1 : 3); step++) {
            for (int i = 0; i < n; i++) {
                r[i] *= scale[i];
            }
            root.get().solve(r);
            for (int i = 0; i < n; i++) {
                x[i] += scale[i] * r[i];
            }
            for (int i = 0; i < n; i++) {
                double sum = b[i];
                for (int j = 0; j < n; j++) {
                    sum -= a[i * n + j] * x[j];
                }
                r[i] = sum;
            }
        }
        return x;
    }

    private static double[] scale(double[] a, int n) {
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            double d = a[i * n + i];
            scale[i] = d > 0 ? 1 / Math.sqrt(d) : 1;
        }
        return scale;
    }

    private static Optional<SmallCholesky> factor(double[] a, int n, double[] scale, double lift) {
        double[][] rows = SmallCholesky.rows(a, n);
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                rows[i][j] *= scale[i] * scale[j];
            }
            rows[i][i] += lift;
        }
        return SmallCholesky.of(rows, 1e-15);
    }
}
