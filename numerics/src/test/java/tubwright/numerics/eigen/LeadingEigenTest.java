// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LeadingEigenTest {
    /** The matrix of least of two numbers has the eigenvalues 1 / (4 sin²(kπ / (4n + 2))), k odd (Fortiana & Cuadras 1997). */
    @Test
    void theMatrixOfTheLesserOfTwoNumbersHasItsKnownSpectrum() {
        int n = 60;
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = Math.min(i, j) + 1;
            }
        }
        LeadingEigen found = LeadingEigen.of(a, n, 5);
        for (int k = 0; k < 5; k++) {
            double sine = Math.sin((2 * k + 1) * Math.PI / (4 * n + 2));
            double value = 1 / (4 * sine * sine);
            assertEquals(value, found.values()[k], 1e-6 * value);
            for (int i = 0; i < n; i++) {
                double sum = 0;
                for (int j = 0; j < n; j++) {
                    sum += a[i][j] * found.vectors()[k][j];
                }
                assertEquals(value * found.vectors()[k][i], sum, 1e-3 * value);
            }
        }
    }

    @Test
    void aMatrixOfRankTwoHasTwo() {
        int n = 30;
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = (i % 2 == 0 && j % 2 == 0 ? 2 : 0) + (i % 2 == 1 && j % 2 == 1 ? 1 : 0);
            }
        }
        LeadingEigen found = LeadingEigen.of(a, n, 4);
        assertEquals(30, found.values()[0], 1e-10);
        assertEquals(15, found.values()[1], 1e-10);
        assertEquals(0, found.values()[2], 1e-9);
        assertEquals(0, found.values()[3], 1e-9);
    }
}
