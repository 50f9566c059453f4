// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import tubwright.fleet.sample.UnitCube;

/** Probabilities, indices, surrogates and fronts against what is known in closed form. */
class StatisticsTest {
    private static final long SEED = 11;

    private static double ishigami(double[] u) {
        double x = Math.PI * (2 * u[0] - 1);
        double y = Math.PI * (2 * u[1] - 1);
        double z = Math.PI * (2 * u[2] - 1);
        return Math.sin(x) + 7 * Math.sin(y) * Math.sin(y) + 0.1 * z * z * z * z * Math.sin(x);
    }

    /**
     * The function of Ishigami and Homma (1990) with a = 7, b = 0.1: D = a²/8 + bπ⁴/5 + b²π⁸/18 + ½, V₁ = ½(1 + bπ⁴/5)²,
     * V₂ = a²/8, V₁₃ = 8b²π⁸/225.
     */
    @Test
    void theIndicesOfTheIshigamiFunctionAreFound() {
        double b = 0.1;
        double p4 = Math.pow(Math.PI, 4);
        double variance = 49 / 8.0 + b * p4 / 5 + b * b * p4 * p4 / 18 + 0.5;
        double v1 = 0.5 * Math.pow(1 + b * p4 / 5, 2);
        double v13 = 8 * b * b * p4 * p4 / 225;
        double[] first = {v1 / variance, 49 / 8.0 / variance, 0};
        double[] total = {(v1 + v13) / variance, 49 / 8.0 / variance, v13 / variance};
        List<double[]> points = SobolIndices.points(4096, 3, SEED);
        SobolIndices found = SobolIndices.of(
                points.stream().mapToDouble(StatisticsTest::ishigami).toArray(), 3, SEED);
        assertArrayEquals(first, found.first(), 0.01);
        assertArrayEquals(total, found.total(), 0.01);
        for (int i = 0; i < 3; i++) {
            assertEquals(first[i], found.first()[i], 4 * found.firstError()[i] + 1e-9, "seed " + SEED);
            assertEquals(total[i], found.total()[i], 4 * found.totalError()[i] + 1e-9, "seed " + SEED);
        }
        // The values usually printed with it: 0.3139, 0.4424, 0; 0.5576, 0.4424, 0.2437 (Saltelli and others 2008).
        assertArrayEquals(new double[] {0.3139, 0.4424, 0}, first, 5e-5);
        assertArrayEquals(new double[] {0.5576, 0.4424, 0.2437}, total, 5e-5);
    }

    @Test
    void aRowThatCouldNotBeComputedIsLeftOut() {
        List<double[]> points = SobolIndices.points(1024, 3, SEED);
        double[] values = points.stream().mapToDouble(StatisticsTest::ishigami).toArray();
        values[17] = Double.NaN;
        values[1024 * 3 + 40] = Double.NaN;
        SobolIndices found = SobolIndices.of(values, 3, SEED);
        assertEquals(1022, found.rows());
        assertEquals(0.4424, found.first()[1], 0.03);
    }

    /**
     * The ends solve the binomial sums by which Clopper and Pearson (1934) define them; for none of ten the upper end is
     * 1 − 0.025^(1/10) = 0.3085.
     */
    @Test
    void theIntervalOfAShareIsThatOfClopperAndPearson() {
        Probability none = Probability.of(0, 10);
        assertEquals(0, none.low());
        assertEquals(1 - Math.pow(0.025, 0.1), none.high(), 1e-9);
        assertEquals(0.3085, none.high(), 5e-5);
        Probability some = Probability.of(7, 30);
        assertEquals(0.025, 1 - binomial(6, 30, some.low()), 1e-7);
        assertEquals(0.025, binomial(7, 30, some.high()), 1e-7);
        Probability unsure = Probability.of(7, 5, 30, 0.95);
        assertEquals(some.low(), unsure.low());
        assertEquals(Probability.of(12, 30).high(), unsure.high());
    }

    private static double binomial(int most, int n, double p) {
        double sum = 0;
        double choose = 1;
        for (int k = 0; k <= most; k++) {
            sum += choose * Math.pow(p, k) * Math.pow(1 - p, n - k);
            choose = choose * (n - k) / (k + 1);
        }
        return sum;
    }

    /** A limit state R − S of two normal variables fails with Φ(−β), β = (μR − μS)/√(σR² + σS²) (Cornell 1969). */
    @Test
    void aNormalLimitStateFailsAsOftenAsItsReliabilityIndexSays() {
        NormalDistribution normal = new NormalDistribution();
        SplittableRandom random = new SplittableRandom(SEED);
        int n = 100_000;
        int fails = 0;
        double[] drawn = new double[n];
        for (int i = 0; i < n; i++) {
            double r = 5 + 0.5 * normal.inverseCumulativeProbability(random.nextDouble(1e-12, 1));
            double s = 3 + 1.2 * normal.inverseCumulativeProbability(random.nextDouble(1e-12, 1));
            drawn[i] = r - s;
            fails += r < s ? 1 : 0;
        }
        double exact = normal.cumulativeProbability(-2 / 1.3);
        Probability found = Probability.of(fails, 0, n, 0.999);
        assertTrue(found.low() < exact && exact < found.high(), found + " against " + exact + ", seed " + SEED);
        // Nine tenths of the draws lie within 1.2816 deviations, so scatter may be 2/(1.2816 · 1.3) as large.
        assertEquals(2 / (1.2815516 * 1.3), Suffices.factor(2, drawn, 0, true, 0.9), 0.02);
        assertEquals(0, Suffices.factor(-1, drawn, 0, true, 0.9));
    }

    @Test
    void aSurrogateTellsWhatLiesBetweenAndHowFarItIsOff() {
        List<double[]> points = UnitCube.sobol(40, 2);
        double[] values = points.stream()
                .mapToDouble(p -> Math.sin(3 * p[0]) + p[1] * p[1])
                .toArray();
        Surrogate surrogate = Surrogate.of(points, values);
        double worst = 0;
        int within = 0;
        List<double[]> others = UnitCube.latin(200, 2, SEED);
        for (double[] p : others) {
            Surrogate.Guess guess = surrogate.at(p);
            double off = Math.abs(guess.value() - Math.sin(3 * p[0]) - p[1] * p[1]);
            worst = Math.max(worst, off);
            within += off <= 2 * guess.deviation() ? 1 : 0;
        }
        assertTrue(worst < 0.01, "off by " + worst);
        assertTrue(within > 180, within + " of 200 within two deviations");
        assertTrue(surrogate.explained() > 0.999, () -> "explains " + surrogate.explained());
        assertArrayEquals(new double[] {3 * Math.cos(1.5), 1}, surrogate.slope(new double[] {0.5, 0.5}), 0.02);
    }

    @Test
    void aSurrogateOfNoiseDoesNotPretend() {
        SplittableRandom random = new SplittableRandom(SEED);
        List<double[]> points = UnitCube.sobol(60, 2);
        double[] values = points.stream().mapToDouble(_ -> random.nextDouble()).toArray();
        Surrogate surrogate = Surrogate.of(points, values);
        assertTrue(surrogate.explained() < 0.2, () -> "explains " + surrogate.explained() + " of noise, seed " + SEED);
        int within = 0;
        for (double[] p : UnitCube.latin(200, 2, SEED)) {
            Surrogate.Guess guess = surrogate.at(p);
            within += Math.abs(guess.value() - random.nextDouble()) <= 2 * guess.deviation() ? 1 : 0;
        }
        assertTrue(within > 180, within + " of 200 within two deviations, seed " + SEED);
    }

    @Test
    void theFrontHoldsWhatNothingBeats() {
        List<double[]> values = List.of(
                new double[] {3, 1},
                new double[] {1, 3},
                new double[] {2, 2},
                new double[] {2, 2},
                new double[] {3, 3},
                new double[] {0, Double.NaN});
        assertEquals(List.of(1, 2, 0), Front.of(values));
        assertEquals(List.of(1, 0), Front.some(Front.of(values), 2));
    }
}
