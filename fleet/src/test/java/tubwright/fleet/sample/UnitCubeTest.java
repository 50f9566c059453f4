// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.sample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The properties that name a Latin hypercube, a Sobol sequence and a grid. */
class UnitCubeTest {
    private static final long SEED = 7;

    @Test
    void everySliceOfALatinHypercubeHoldsOnePoint() {
        int n = 37;
        List<double[]> points = UnitCube.latin(n, 5, SEED);
        for (int d = 0; d < 5; d++) {
            int[] held = new int[n];
            for (double[] point : points) {
                held[(int) (n * point[d])]++;
            }
            for (int slice : held) {
                assertEquals(1, slice, "seed " + SEED + ", coordinate " + d);
            }
        }
        assertArrayEquals(points.get(3), UnitCube.latin(n, 5, SEED).get(3));
    }

    /**
     * Sobol's property A (Sobol 1976): of the first 2^d points each of the 2^d halves-in-all-coordinates holds one. Joe and
     * Kuo (2008) chose their numbers so that it holds.
     */
    @Test
    void theFirstPointsOfASobolSequenceLieOneInEachOrthant() {
        for (int d = 1; d <= 8; d++) {
            boolean[] held = new boolean[1 << d];
            for (double[] point : UnitCube.sobol(1 << d, d)) {
                int orthant = 0;
                for (double each : point) {
                    orthant = 2 * orthant + (each < 0.5 ? 0 : 1);
                }
                assertTrue(!held[orthant], "two points in one orthant of " + d + " dimensions");
                held[orthant] = true;
            }
        }
    }

    /** In two dimensions it is a (0, 2)-sequence: 2^m points, one in every box of volume 2^-m with sides 2^-a and 2^-b. */
    @Test
    void inTwoDimensionsEveryElementaryBoxHoldsOnePoint() {
        int m = 6;
        List<double[]> points = UnitCube.sobol(1 << m, 2);
        for (int a = 0; a <= m; a++) {
            boolean[] held = new boolean[1 << m];
            for (double[] p : points) {
                int box = ((int) (p[0] * (1 << a)) << m - a) + (int) (p[1] * (1 << m - a));
                assertTrue(!held[box]);
                held[box] = true;
            }
        }
    }

    @Test
    void aSobolSequenceFillsMoreEvenlyThanALatinHypercubeAndThatMoreThanChance() {
        int n = 256;
        SplittableRandom random = new SplittableRandom(SEED);
        List<double[]> chance = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            chance.add(random.doubles(3).toArray());
        }
        double sobol = UnitCube.discrepancy(UnitCube.sobol(n, 3));
        double latin = UnitCube.discrepancy(UnitCube.latin(n, 3, SEED));
        double drawn = UnitCube.discrepancy(chance);
        assertTrue(sobol < 0.5 * latin, sobol + " against " + latin);
        assertTrue(latin < drawn, latin + " against " + drawn + ", seed " + SEED);
        // Chance: E[D²] = (2^-d − 3^-d)/n for independent uniform points.
        assertEquals(Math.sqrt((1 / 8.0 - 1 / 27.0) / n), drawn, 0.5 * drawn);
    }

    /** Warnock's formula for one point at the middle of a line: ∫ (1[x > ½] − x)² dx = 1/12. */
    @Test
    void theDiscrepancyOfOnePointInTheMiddleIsKnown() {
        assertEquals(Math.sqrt(1 / 12.0), UnitCube.discrepancy(List.of(new double[] {0.5})), 1e-15);
    }

    @Test
    void aGridHasAllCombinations() {
        List<double[]> points = UnitCube.grid(new int[] {3, 1, 2}, 100);
        assertEquals(6, points.size());
        assertArrayEquals(new double[] {0, 0.5, 1}, points.get(1));
        assertArrayEquals(new double[] {1, 0.5, 0}, points.get(4));
        assertThrows(IllegalArgumentException.class, () -> UnitCube.grid(new int[] {100, 100}, 100));
    }
}
