// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Arrays;

/**
 * The diagonal matrix below a positive definite one that is worth most: max Σ w q under diag(q) ⪯ G, by Newton's method on
 * μ Σ w q + log det(G − diag q) with μ growing (Boyd & Vandenberghe 2004, ch. 11). Any q that comes out lies strictly
 * below, however far the method got.
 */
final class Minorant {
    private static final int STEPS = 40;
    private static final double GROWTH = 8;
    private static final double LAST = 40;

    private Minorant() {}

    /**
     * @param gramian n × n, positive definite, with ones on its diagonal or near
     * @param worth of each entry, none negative
     * @return q, strictly below
     */
    static double[] of(double[] gramian, double[] worth, int n) {
        double sum = Arrays.stream(worth).sum();
        double[] q = new double[n];
        double start = 1;
        while (start > 1e-9 && below(gramian, q, n, start).length == 0) {
            start /= 2;
        }
        Arrays.fill(q, start > 1e-9 ? start / 2 : 1e-9);
        if (!(sum > 0)) {
            return q;
        }
        double[] root = below(gramian, q, n, 0);
        double mu = n;
        for (int step = 0; step < STEPS; step++) {
            double[] inverse = inverse(root, n);
            double[] gradient = new double[n];
            double[] hessian = new double[n * n];
            for (int i = 0; i < n; i++) {
                gradient[i] = mu * worth[i] / sum - inverse[i * n + i] + 1 / q[i];
                for (int j = 0; j < n; j++) {
                    hessian[i * n + j] = inverse[i * n + j] * inverse[i * n + j];
                }
                hessian[i * n + i] += 1 / (q[i] * q[i]);
            }
            double[] d = SmallSystem.nearSolution(hessian, gradient, n);
            double decrement = LoadedTub.dot(d, gradient);
            double[] next = q.clone();
            double[] lower = new double[0];
            for (double t = decrement > 0.25 ? 1 / (1 + Math.sqrt(decrement)) : 1;
                    lower.length == 0 && t > 1e-9;
                    t /= 2) {
                boolean positive = true;
                for (int i = 0; i < n; i++) {
                    next[i] = q[i] + t * d[i];
                    positive &= next[i] > 0;
                }
                lower = positive ? below(gramian, next, n, 0) : lower;
            }
            if (lower.length == 0) {
                return q;
            }
            q = next;
            root = lower;
            if (decrement < 0.5) {
                if (mu > LAST * n) {
                    break;
                }
                mu *= GROWTH;
            }
        }
        return q;
    }

    /** The Cholesky factor of G − diag(q) − more; empty where that is not positive definite. */
    private static double[] below(double[] gramian, double[] q, int n, double more) {
        double[] l = gramian.clone();
        for (int i = 0; i < n; i++) {
            l[i * n + i] -= q[i] + more;
            for (int j = 0; j <= i; j++) {
                double sum = l[i * n + j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i * n + k] * l[j * n + k];
                }
                if (i == j) {
                    if (!(sum > 1e-10)) {
                        return new double[0];
                    }
                    l[i * n + i] = Math.sqrt(sum);
                } else {
                    l[i * n + j] = sum / l[j * n + j];
                }
            }
        }
        return l;
    }

    /** (L Lᵀ)⁻¹. */
    private static double[] inverse(double[] l, int n) {
        double[] m = new double[n * n];
        for (int i = 0; i < n; i++) {
            int row = i * n;
            for (int k = 0; k < i; k++) {
                double factor = l[row + k];
                for (int j = 0; j <= k; j++) {
                    m[row + j] -= factor * m[k * n + j];
                }
            }
            m[row + i] = 1;
            for (int j = 0; j <= i; j++) {
                m[row + j] /= l[row + i];
            }
        }
        double[] inverse = new double[n * n];
        for (int k = 0; k < n; k++) {
            for (int i = 0; i <= k; i++) {
                double factor = m[k * n + i];
                for (int j = 0; j <= i; j++) {
                    inverse[i * n + j] += factor * m[k * n + j];
                }
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                inverse[j * n + i] = inverse[i * n + j];
            }
        }
        return inverse;
    }
}
