// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import org.hipparchus.special.Erf;

/**
 * A person's lengths by percentile, mean and standard deviation of a normal distribution each.
 *
 * <p>Source: the 2012 survey of U.S. Army personnel (Gordon et al. 2014, NATICK/TR-15/007; 4082 men, 1986 women), bare
 * and upright. Men's stature, sitting height, buttock-knee and foot length are verified against a copy of its data; the
 * others are from memory and held against percentiles that the report prints (see {@code BodyTest}). A person who is at one
 * percentile in every length does not exist: such a template is more than that percentile in whole.
 *
 * @param mean m, in the order of {@link Length}
 * @param deviation m
 */
public record Body(double[] mean, double[] deviation) {
    /** What is measured. */
    public enum Length {
        /** Floor to crown, standing. */
        STATURE,
        /** Seat to crown, upright. */
        SITTING_HEIGHT,
        /** Seat to the top of the shoulder. */
        SHOULDER_HEIGHT,
        /** Over the upper arms. */
        SHOULDER_BREADTH,
        /** Over the hips, sitting. */
        HIP_BREADTH,
        /** Breastbone to back. */
        CHEST_DEPTH,
        /** Back of the hips to front of the knee. */
        BUTTOCK_KNEE,
        /** Sole to top of the knee, sitting. */
        KNEE_HEIGHT,
        /** Seat to top of the thigh. */
        THIGH,
        /** Heel to toe. */
        FOOT,
        /** Over the ball of the foot. */
        FOOT_BREADTH,
        /** Forehead to back of the head. */
        HEAD_LENGTH,
        /** Over the ears. */
        HEAD_BREADTH
    }

    private static final Body MEN = new Body(
            new double[] {
                1.75621, 0.91829, 0.603, 0.5104, 0.379, 0.254, 0.61795, 0.557, 0.179, 0.27118, 0.102, 0.199, 0.154
            },
            new double[] {
                0.06854, 0.03569, 0.028, 0.033, 0.030, 0.026, 0.03058, 0.0275, 0.014, 0.01310, 0.0053, 0.007, 0.0055
            });

    private static final Body WOMEN = new Body(
            new double[] {1.6285, 0.8565, 0.563, 0.450, 0.400, 0.247, 0.589, 0.514, 0.169, 0.246, 0.093, 0.187, 0.148},
            new double[] {0.0642, 0.0331, 0.027, 0.029, 0.034, 0.027, 0.030, 0.026, 0.015, 0.0123, 0.005, 0.007, 0.0052
            });

    /** Whom the percentiles count. */
    public enum People {
        MEN,
        WOMEN
    }

    /** The survey's men or women. */
    public static Body of(People people) {
        return people == People.MEN ? MEN : WOMEN;
    }

    /**
     * A length that a share of these people stay below.
     *
     * @param share between 0 and 1
     * @return m
     */
    public double at(Length length, double share) {
        double z = Math.sqrt(2) * Erf.erfInv(2 * share - 1);
        return mean[length.ordinal()] + z * deviation[length.ordinal()];
    }
}
