// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Gamma;

/**
 * One-sided tolerance factors of a normal sample: mean − k · standard deviation is exceeded by a share of the
 * population with a given confidence. The basis values of material allowables are defined so (CMH-17 vol. 1, ch. 8): A
 * basis 99 %, B basis 90 %, both at 95 % confidence.
 *
 * <p>k √n is a quantile of Student's t with non-centrality z √n (Owen 1968), whose distribution is integrated over the
 * distribution of the sample standard deviation.
 */
public final class ToleranceFactor {
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private ToleranceFactor() {}

    /** Factor of the B basis for {@code n} specimens. */
    public static double bBasis(int n) {
        return of(n, 0.90, 0.95);
    }

    /** Factor of the A basis for {@code n} specimens. */
    public static double aBasis(int n) {
        return of(n, 0.99, 0.95);
    }

    /**
     * The factor k.
     *
     * @param n specimens, at least two
     * @param share of the population that exceeds the value
     * @param confidence of that statement
     */
    public static double of(int n, double share, double confidence) {
        if (n < 2) {
            throw new IllPosedException("a tolerance factor needs at least two specimens, not " + n);
        }
        double shift = NORMAL.inverseCumulativeProbability(share) * Math.sqrt(n);
        UnivariateFunction miss = t -> nonCentral(t, n - 1, shift) - confidence;
        double high = Math.max(4, 2 * shift);
        while (miss.value(high) < 0) {
            high *= 2;
        }
        return new BrentSolver(1e-11, 1e-11).solve(500, miss, shift, high) / Math.sqrt(n);
    }

    /** Chance that Student's t with {@code freedom} and non-centrality {@code shift} is at most {@code t}. */
    static double nonCentral(double t, int freedom, double shift) {
        double half = freedom / 2.0;
        double constant = Math.log(2) + half * Math.log(half) - Gamma.logGamma(half);
        // s is the sample standard deviation over the true one: f(s) = 2 (ν/2)^(ν/2) / Γ(ν/2) s^(ν−1) exp(−ν s²/2).
        UnivariateFunction integrand = s -> s <= 0
                ? 0
                : NORMAL.cumulativeProbability(t * s - shift)
                        * Math.exp(constant + (freedom - 1) * Math.log(s) - half * s * s);
        double spread = 1 / Math.sqrt(2.0 * freedom);
        double from = Math.max(0, 1 - 10 * spread);
        double to = 1 + 10 * spread;
        int pieces = 40;
        var rule = new IterativeLegendreGaussIntegrator(12, 1e-11, 1e-14);
        double sum = 0;
        for (int i = 0; i < pieces; i++) {
            double a = from + (to - from) * i / pieces;
            double b = from + (to - from) * (i + 1) / pieces;
            sum += rule.integrate(100_000, integrand, a, b);
        }
        return sum;
    }
}
