// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * A measured value's uncertainty, put together after the GUM (JCGM 100:2008): contributions add by their squares
 * (eq. 10), their degrees of freedom after Welch and Satterthwaite (eq. G.2b), and the half-width of an interval is
 * Student's t times the combined standard uncertainty (G.3.2).
 *
 * @param contributions what it is made of, each already in the unit of the value
 */
public record Uncertainty(List<Contribution> contributions) {
    public Uncertainty {
        contributions = List.copyOf(contributions);
    }

    /**
     * One source of uncertainty.
     *
     * @param name for the reader
     * @param standard standard uncertainty (one standard deviation) in the unit of the result
     * @param degreesOfFreedom how well it is known; infinite if it is taken as exact
     */
    public record Contribution(String name, double standard, double degreesOfFreedom) {
        /** A contribution known well. */
        public static Contribution known(String name, double standard) {
            return new Contribution(name, standard, Double.POSITIVE_INFINITY);
        }
    }

    /** Combined standard uncertainty. */
    public double combined() {
        return Math.sqrt(contributions.stream()
                .mapToDouble(c -> c.standard() * c.standard())
                .sum());
    }

    /** Effective degrees of freedom, infinite where every contribution is known well. */
    public double effectiveDegreesOfFreedom() {
        double below = contributions.stream()
                .mapToDouble(c -> Math.pow(c.standard(), 4) / c.degreesOfFreedom())
                .sum();
        return below > 0 ? Math.pow(combined(), 4) / below : Double.POSITIVE_INFINITY;
    }

    /**
     * Coverage factor: Student's t for the effective degrees of freedom cut to a whole number, as G.4.1 advises.
     *
     * @param level chance that the interval holds the true value, for instance 0.95
     */
    public double coverageFactor(double level) {
        double freedom = effectiveDegreesOfFreedom();
        return studentFactor(level, freedom < 1e6 ? Math.max(1, Math.floor(freedom + 1e-9)) : freedom);
    }

    /** Half-width of the interval that holds the true value with the chance given. */
    public double expanded(double level) {
        return coverageFactor(level) * combined();
    }

    /** Ratio of two variances that chance alone exceeds in {@code 1 − level} of cases (Fisher's F). */
    public static double varianceRatio(double level, int above, int below) {
        return new FDistribution(above, below).inverseCumulativeProbability(level);
    }

    /** Student's t with {@code degreesOfFreedom} that leaves {@code 1 − level} outside ±t; the normal one if infinite. */
    public static double studentFactor(double level, double degreesOfFreedom) {
        return new TDistribution(Math.min(degreesOfFreedom, 1e7)).inverseCumulativeProbability((1 + level) / 2);
    }
}
