// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmallCholeskyTest {
    /** Choi (1983), Tricks or treats with the Hilbert matrix, Amer. Math. Monthly 90: inverses have whole entries. */
    @Test
    void theHilbertMatrixHasAnInverseOfWholeNumbers() {
        int n = 5;
        double[][] hilbert = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                hilbert[i][j] = 1.0 / (i + j + 1);
            }
        }
        double[][] inverse = SmallCholesky.of(hilbert, 0).orElseThrow().inverse();
        assertEquals(25, inverse[0][0], 1e-8);
        assertEquals(-300, inverse[0][1], 1e-7);
        assertEquals(630, inverse[4][0], 1e-6);
        assertEquals(179200, inverse[3][3], 1e-4);
        assertEquals(44100, inverse[4][4], 1e-4);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 7, 8, 31, 66})
    void aSolutionAndTheInverseGiveTheRightHandSideBack(int n) {
        Random random = new Random(n);
        double[][] root = new double[n][n];
        for (double[] row : root) {
            for (int j = 0; j < n; j++) {
                row[j] = random.nextGaussian();
            }
        }
        double[] a = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i * n + j] = i == j ? 1 : 0;
                for (int k = 0; k < n; k++) {
                    a[i * n + j] += root[k][i] * root[k][j];
                }
            }
        }
        SmallCholesky factor = SmallCholesky.of(SmallCholesky.rows(a, n), 1e-12).orElseThrow();
        double[] b = random.doubles(n).toArray();
        double[] x = b.clone();
        factor.solve(x);
        double[][] inverse = factor.inverse();
        for (int i = 0; i < n; i++) {
            double back = 0;
            double same = 0;
            for (int j = 0; j < n; j++) {
                back += a[i * n + j] * x[j];
                same += inverse[i][j] * b[j];
            }
            assertEquals(b[i], back, 1e-10);
            assertEquals(x[i], same, 1e-10);
        }
    }

    @Test
    void aMatrixThatIsNotPositiveDefiniteHasNone() {
        assertTrue(SmallCholesky.of(new double[][] {{1, 2, 0}, {2, 1, 0}, {0, 0, 1}}, 0)
                .isEmpty());
        assertTrue(SmallCholesky.of(new double[][] {{1e-20}}, 1e-15).isEmpty());
    }
}
