// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Legs of a tee as a beam on elastic bedding: limits by Hetényi (1946, from memory), the rest by finite differences. */
class TeeLegsTest {
    private static final double KAPPA = 400;

    @Test
    void legsFarApartEachCarryTheirOwn() {
        double d = 0.05;
        double alone = (1000 / 2.0 + 60 / d) * KAPPA / 2;
        assertEquals(1, new TeeLegs(KAPPA, d).peel(1000, 60) / alone, 1e-6);
    }

    /** M κ² e^(−κx) sin κx is largest at κx = π/4: 0.3224 M κ². */
    @Test
    void aWallWithoutThicknessTurnsTheBeamAtOneLine() {
        double most = Math.exp(-Math.PI / 4) * Math.sin(Math.PI / 4) * 60 * KAPPA * KAPPA;
        assertEquals(1, new TeeLegs(KAPPA, 0).peel(0, 60) / most, 1e-3);
        assertEquals(1, new TeeLegs(KAPPA, 0).peel(1000, 0) / (1000 * KAPPA / 2), 1e-5);
    }

    @Test
    void aThickerWallPeelsItsLegsLess() {
        double before = Double.POSITIVE_INFINITY;
        for (double d : new double[] {0, 1e-3, 2e-3, 5e-3, 1e-2, 2e-2}) {
            double peel = new TeeLegs(KAPPA, d).peel(0, 60);
            assertTrue(peel < before, d + " m: " + peel + " after " + before);
            before = peel;
        }
    }

    @Test
    void aWallThatOnlyPushesPeelsNothing() {
        assertEquals(0, new TeeLegs(KAPPA, 0.02).peel(-1000, 0));
    }

    /** Fourth derivative of w + 4 κ⁴ w = p (D = 1) by central differences on a long beam; the pressure is 4 κ⁴ w. */
    @Test
    void finiteDifferencesSayTheSameOfAWallBetweenThickAndThin() {
        double d = 0.004;
        double normal = 1000;
        double moment = 5;
        int n = 801;
        double h = 0.08 / (n - 1);
        double k = 4 * Math.pow(KAPPA, 4);
        double[][] a = new double[n][n];
        double[] p = new double[n];
        double[] stencil = {1, -4, 6, -4, 1};
        for (int i = 0; i < n; i++) {
            for (int s = -2; s <= 2; s++) {
                if (i + s >= 0 && i + s < n) {
                    a[i][i + s] += stencil[s + 2] / Math.pow(h, 4);
                }
            }
            a[i][i] += k;
        }
        int half = (int) Math.round(d / 2 / h);
        p[n / 2 + half] += (normal / 2 + moment / d) / h;
        p[n / 2 - half] += (normal / 2 - moment / d) / h;
        double most = 0;
        for (double w : solve(a, p)) {
            most = Math.max(most, k * w);
        }
        assertEquals(1, new TeeLegs(KAPPA, d).peel(normal, moment) / most, 2e-3);
    }

    /** Elimination within the band of two; the matrix is positive definite. */
    private static double[] solve(double[][] a, double[] b) {
        int n = b.length;
        for (int c = 0; c < n; c++) {
            for (int r = c + 1; r < Math.min(n, c + 3); r++) {
                double f = a[r][c] / a[c][c];
                for (int j = c; j < Math.min(n, c + 3); j++) {
                    a[r][j] -= f * a[c][j];
                }
                b[r] -= f * b[c];
            }
        }
        for (int c = n - 1; c >= 0; c--) {
            for (int j = c + 1; j < Math.min(n, c + 3); j++) {
                b[c] -= a[c][j] * b[j];
            }
            b[c] /= a[c][c];
        }
        return b;
    }
}
