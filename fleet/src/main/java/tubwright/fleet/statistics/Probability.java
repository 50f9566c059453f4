// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.statistics;

import org.hipparchus.distribution.continuous.BetaDistribution;

/**
 * A probability from counting, with the interval of Clopper and Pearson (1934): in at least that share of all samplings it
 * holds the truth. Draws of which it is not known whether they count widen it to both sides.
 *
 * @param low lower end
 * @param share of those known that count
 * @param high upper end
 * @param counted draws that count
 * @param unknown draws of which it is not known
 * @param all draws
 */
public record Probability(double low, double share, double high, int counted, int unknown, int all) {
    /** Confidence where none is said. */
    public static final double USUAL = 0.95;

    /** Where all draws are known, at the usual confidence. */
    public static Probability of(int counted, int all) {
        return of(counted, 0, all, USUAL);
    }

    /**
     * @param counted draws that surely count
     * @param unknown draws that may
     * @param all draws, at least one
     * @param confidence between 0 and 1
     */
    public static Probability of(int counted, int unknown, int all, double confidence) {
        if (all < 1 || counted < 0 || unknown < 0 || counted + unknown > all) {
            throw new IllegalArgumentException(counted + " and " + unknown + " of " + all);
        }
        double tail = (1 - confidence) / 2;
        int most = counted + unknown;
        double low = counted == 0
                ? 0
                : new BetaDistribution(counted, all - counted + 1.0).inverseCumulativeProbability(tail);
        double high = most == all
                ? 1
                : new BetaDistribution(most + 1.0, (double) all - most).inverseCumulativeProbability(1 - tail);
        int known = all - unknown;
        return new Probability(low, known == 0 ? Double.NaN : (double) counted / known, high, counted, unknown, all);
    }
}
