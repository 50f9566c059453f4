// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

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
        double[] l = factor(a, n, scale, 0);
        double[] inverse = new double[n * n];
        double[] column = new double[n];
        for (int j = 0; j < n; j++) {
            java.util.Arrays.fill(column, 0);
            column[j] = scale[j];
            substitute(l, n, column);
            for (int i = 0; i < n; i++) {
                inverse[i * n + j] = scale[i] * column[i];
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
        double[] l = new double[0];
        for (double lift = least; l.length < n * n && lift < 1; lift *= 100) {
            try {
                l = factor(a, n, scale, lift);
            } catch (IllegalArgumentException e) {
                // Dependent fields: lift the diagonal more.
            }
        }
        double[] x = new double[n];
        if (l.length < n * n) {
            return x;
        }
        double[] r = b.clone();
        // Refined towards the system as it is, but not where it was lifted on purpose.
        for (int step = 0; step < (least > LIFT ? 1 : 3); step++) {
            for (int i = 0; i < n; i++) {
                r[i] *= scale[i];
            }
            substitute(l, n, r);
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

    private static double[] factor(double[] a, int n, double[] scale, double lift) {
        double[] l = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i * n + j] * scale[i] * scale[j] + (i == j ? lift : 0);
                for (int k = 0; k < j; k++) {
                    sum -= l[i * n + k] * l[j * n + k];
                }
                if (i == j) {
                    if (!(sum > 1e-15)) {
                        throw new IllegalArgumentException("a laminate or part has no stiffness in some direction");
                    }
                    l[i * n + i] = Math.sqrt(sum);
                } else {
                    l[i * n + j] = sum / l[j * n + j];
                }
            }
        }
        return l;
    }

    private static void substitute(double[] l, int n, double[] x) {
        for (int i = 0; i < n; i++) {
            double sum = x[i];
            for (int k = 0; k < i; k++) {
                sum -= l[i * n + k] * x[k];
            }
            x[i] = sum / l[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < n; k++) {
                sum -= l[k * n + i] * x[k];
            }
            x[i] = sum / l[i * n + i];
        }
    }
}
