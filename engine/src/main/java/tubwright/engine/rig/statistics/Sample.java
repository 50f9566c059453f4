// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

import java.util.Arrays;

/**
 * Results of specimens taken as one normal sample.
 *
 * @param values at least two, one a specimen; not to be modified
 */
public record Sample(double[] values) {
    public Sample {
        if (values.length < 2) {
            throw new IllPosedException("a sample needs at least two specimens, not " + values.length);
        }
        values = values.clone();
    }

    /** Mean. */
    public double mean() {
        return Arrays.stream(values).average().orElseThrow();
    }

    /** Standard deviation with n − 1. */
    public double deviation() {
        double mean = mean();
        double sum = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        return Math.sqrt(sum / (values.length - 1));
    }

    /** Value that nine of ten of the population exceed, with 95 % confidence. */
    public double bBasis() {
        return mean() - ToleranceFactor.bBasis(values.length) * deviation();
    }

    /** The mean with the uncertainty of a mean of so many. */
    public Uncertainty ofTheMean() {
        return new Uncertainty(java.util.List.of(new Uncertainty.Contribution(
                "scatter of the specimens", deviation() / Math.sqrt(values.length), values.length - 1)));
    }
}
