// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.rig.statistics.Uncertainty.Contribution;

class UncertaintyTest {
    /** JCGM 100:2008, example H.1, end-gauge calibration: u_c = 32 nm, 16 degrees of freedom, U99 = 93 nm (from memory). */
    @Test
    void theEndGaugeOfTheGuideComesTo93Nanometres() {
        Uncertainty gauge = new Uncertainty(List.of(
                new Contribution("standard", 25, 18),
                new Contribution("difference of lengths", 9.7, 25.6),
                new Contribution("difference of expansions", 2.9, 50),
                new Contribution("difference of temperatures", 16.6, 2)));
        assertEquals(31.7, gauge.combined(), 0.1);
        assertEquals(16, Math.floor(gauge.effectiveDegreesOfFreedom()), 0);
        assertEquals(2.92, gauge.coverageFactor(0.99), 0.005);
        assertEquals(93, gauge.expanded(0.99), 0.8);
    }

    /** JCGM 100:2008, example H.3, calibration of a thermometer by a straight line (from memory). */
    @Test
    void theThermometerOfTheGuideHasItsLine() {
        double[] t = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
        double[] b = {-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160};
        double[] x = new double[t.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = t[i] - 20;
        }
        LinearFit fit = LinearFit.line(x, b);
        assertEquals(-0.1712, fit.coefficients()[0], 5e-5);
        assertEquals(0.00218, fit.coefficients()[1], 5e-6);
        assertEquals(0.0029, fit.standardErrors()[0], 5e-5);
        assertEquals(0.00067, fit.standardErrors()[1], 5e-6);
        assertEquals(0.0035, fit.residualDeviation(), 5e-5);
        double correlation = fit.covariance()[0][1] / (fit.standardErrors()[0] * fit.standardErrors()[1]);
        assertEquals(-0.930, correlation, 5e-4);
    }

    /** Student's t at 95 % two-sided, JCGM 100 table G.2 (from memory). */
    @Test
    void studentsFactorIsThatOfTheTable() {
        assertEquals(12.71, Uncertainty.studentFactor(0.95, 1), 0.005);
        assertEquals(2.57, Uncertainty.studentFactor(0.95, 5), 0.005);
        assertEquals(2.09, Uncertainty.studentFactor(0.95, 20), 0.005);
        assertEquals(1.960, Uncertainty.studentFactor(0.95, Double.POSITIVE_INFINITY), 0.0005);
    }

    /** Upper 5 % points of F, any table (from memory). */
    @Test
    void theRatioOfVariancesIsThatOfTheTable() {
        assertEquals(161.4, Uncertainty.varianceRatio(0.95, 1, 1), 0.1);
        assertEquals(4.10, Uncertainty.varianceRatio(0.95, 2, 10), 0.005);
    }

    /** Factors for the B basis of normal samples, table of CMH-17 vol. 1 ch. 8 (from memory). */
    @Test
    void theBBasisFactorsAreThoseOfTheTable() {
        int[] n = {2, 3, 4, 5, 6, 8, 10, 15, 20, 30};
        double[] k = {20.581, 6.157, 4.163, 3.408, 3.007, 2.583, 2.355, 2.068, 1.927, 1.778};
        for (int i = 0; i < n.length; i++) {
            assertEquals(k[i], ToleranceFactor.bBasis(n[i]), 0.0025, "n = " + n[i]);
        }
    }

    @Test
    void theBasisFactorFallsTowardsTheNormalQuantile() {
        double many = ToleranceFactor.bBasis(5000);
        assertTrue(many > 1.2816 && many < 1.33, "k = " + many);
        assertTrue(ToleranceFactor.aBasis(10) > ToleranceFactor.bBasis(10));
    }

    @Test
    void weightsActAsRepeatedReadings() {
        LinearFit repeated = LinearFit.line(new double[] {0, 1, 1, 2, 3}, new double[] {0.1, 1.2, 1.2, 1.9, 3.2});
        double[][] design = {{1, 0}, {1, 1}, {1, 2}, {1, 3}};
        LinearFit weighted = LinearFit.weighted(design, new double[] {0.1, 1.2, 1.9, 3.2}, new double[] {1, 2, 1, 1});
        assertEquals(repeated.coefficients()[1], weighted.coefficients()[1], 1e-14);
    }

    @Test
    void whatCannotBeToldApartIsCalledSo() {
        double[][] twice = {{1, 2}, {2, 4}, {3, 6}, {4, 8}};
        assertThrows(IllPosedException.class, () -> LinearFit.of(twice, new double[] {1, 2, 3, 4}));
        assertThrows(IllPosedException.class, () -> LinearFit.line(new double[] {0, 1}, new double[] {0, 1}));
    }
}
