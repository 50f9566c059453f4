// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.rig.statistics.Uncertainty;

/**
 * Scatter of one gauge's reading, pooled over all pairs of a test.
 *
 * <p>Gauges of one kind scatter alike, and a dozen load steps tell the scatter of one pair only to a fifth: taken one by
 * one, what pairs read against one held pair have in common can come out greater than what they have at all. A pair of
 * spacing b has the angle's variance a = 2 s²/b²; angles e against a held pair have the covariance s² (diag a + a_h),
 * whose inverse is that of a rank-one change (Sherman & Morrison 1950). Hence s² = Σ eᵀA⁻¹e over the degrees of freedom.
 *
 * @param each standard deviation of one gauge's reading, m
 * @param freedom degrees of freedom it is known with
 */
record GaugeScatter(double each, int freedom) {
    /** A pair whose scatter exceeds the pooled one by more than chance (F-test) keeps its own. */
    private static final double LEVEL = 0.95;

    /**
     * Pools the residuals of all plain pairs but the held one, over the steps where all were read.
     *
     * @param lines of angle against torque, one a pair, in the order of {@code pairs}
     */
    static Optional<GaugeScatter> of(List<StationMotion> pairs, List<CycleFit> lines, Optional<StationMotion> held) {
        List<CycleFit> pooled = new ArrayList<>();
        List<Double> variance = new ArrayList<>();
        double ofHeld = held.map(GaugeScatter::unit).orElse(0.0);
        for (int m = 0; m < pairs.size(); m++) {
            if (plain(pairs.get(m)) && pairs.get(m) != held.orElse(null)) {
                pooled.add(lines.get(m));
                variance.add(unit(pairs.get(m)));
            }
        }
        if (pooled.size() < 2) {
            return Optional.empty();
        }
        int[] used = pooled.getFirst().used();
        if (pooled.stream().anyMatch(line -> !java.util.Arrays.equals(line.used(), used))) {
            return Optional.empty();
        }
        double inverse = variance.stream().mapToDouble(a -> 1 / a).sum();
        double sum = 0;
        for (int i = 0; i < used.length; i++) {
            double square = 0;
            double linear = 0;
            for (int m = 0; m < pooled.size(); m++) {
                double e = pooled.get(m).fit().residuals()[i];
                square += e * e / variance.get(m);
                linear += e / variance.get(m);
            }
            sum += square - ofHeld * linear * linear / (1 + ofHeld * inverse);
        }
        int freedom = pooled.size() * pooled.getFirst().fit().degreesOfFreedom();
        return Optional.of(new GaugeScatter(Math.sqrt(sum / freedom), freedom));
    }

    /**
     * Standard error of the slope of a pair's angle against the held one's: by the pooled scatter, or by its own where
     * that is greater than chance allows.
     */
    double standardError(StationMotion pair, CycleFit line, Optional<StationMotion> held) {
        double own = line.fit().residualDeviation();
        double here = each * Math.sqrt(unit(pair) + held.map(GaugeScatter::unit).orElse(0.0));
        double limit = Uncertainty.varianceRatio(LEVEL, line.fit().degreesOfFreedom(), freedom);
        return own == 0 || !plain(pair) || own * own > limit * here * here
                ? line.standardError()
                : line.standardError() * here / own;
    }

    /** The part of it that is the held pair's, rad/(N·m). */
    double standardErrorOfHeld(CycleFit line, StationMotion held) {
        double own = line.fit().residualDeviation();
        return own == 0 ? 0 : line.standardError() / own * each * Math.sqrt(unit(held));
    }

    private static boolean plain(StationMotion pair) {
        return Double.isFinite(pair.spacing()) && pair.spacing() > 0;
    }

    /** Variance of a pair's angle for a gauge's of one; none for an angle gauge, whose scatter is its own. */
    private static double unit(StationMotion pair) {
        return plain(pair) ? 2 / (pair.spacing() * pair.spacing()) : 0;
    }
}
