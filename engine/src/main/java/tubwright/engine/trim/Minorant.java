// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Arrays;
import java.util.Optional;
import tubwright.numerics.SmallCholesky;

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
        while (start > 1e-9 && below(gramian, q, n, start).isEmpty()) {
            start /= 2;
        }
        Arrays.fill(q, start > 1e-9 ? start / 2 : 1e-9);
        if (!(sum > 0)) {
            return q;
        }
        SmallCholesky root = below(gramian, q, n, 0).orElseThrow();
        double mu = n;
        for (int step = 0; step < STEPS; step++) {
            double[][] hessian = root.inverse();
            double[] gradient = new double[n];
            for (int i = 0; i < n; i++) {
                gradient[i] = mu * worth[i] / sum - hessian[i][i] + 1 / q[i];
                for (int j = 0; j < n; j++) {
                    hessian[i][j] *= hessian[i][j];
                }
                hessian[i][i] += 1 / (q[i] * q[i]);
            }
            Optional<SmallCholesky> newton = SmallCholesky.of(hessian, 0);
            if (newton.isEmpty()) {
                return q;
            }
            double[] d = gradient.clone();
            newton.get().solve(d);
            double decrement = LoadedTub.dot(d, gradient);
            double[] next = q.clone();
            Optional<SmallCholesky> lower = Optional.empty();
            for (double t = decrement > 0.25 ? 1 / (1 + Math.sqrt(decrement)) : 1;
                    lower.isEmpty() && t > 1e-9;
                    t /= 2) {
                boolean positive = true;
                for (int i = 0; i < n; i++) {
                    next[i] = q[i] + t * d[i];
                    positive &= next[i] > 0;
                }
                lower = positive ? below(gramian, next, n, 0) : lower;
            }
            if (lower.isEmpty()) {
                return q;
            }
            q = next;
            root = lower.get();
            if (decrement < 0.5) {
                if (mu > LAST * n) {
                    break;
                }
                mu *= GROWTH;
            }
        }
        return q;
    }

    /** G − diag(q) − more, decomposed; nothing where that is not positive definite. */
    private static Optional<SmallCholesky> below(double[] gramian, double[] q, int n, double more) {
        double[][] rows = SmallCholesky.rows(gramian, n);
        for (int i = 0; i < n; i++) {
            rows[i][i] -= q[i] + more;
        }
        return SmallCholesky.of(rows, 1e-10);
    }
}
