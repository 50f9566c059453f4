// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Where gauges tell most: from many places the next is always the one that adds most information about the doubts,
 * ½ log₂ of the ratio of the determinants of their covariance before and after (Bayesian D-optimality, Chaloner &
 * Verdinelli 1995, §2.2; choosing one by one is within 1 − 1/e of the best choice of as many, since information gain is
 * submodular: Krause, Singh & Guestrin 2008).
 */
final class GaugeChoice {
    /** A pair that adds less than this is not worth its two gauges, bits. */
    private static final double WORTH = 0.05;

    private final double[][] derivative;
    private final double[] deviations;
    private final double[] slope;
    private final Apart apart;
    private RealMatrix covariance;

    /**
     * @param derivative of the angle over torque at each place by each doubt, rad/(N·m)
     * @param deviations standard uncertainty of the angle over torque at each place, rad/(N·m)
     * @param spreads of the doubts before the test
     * @param slope of ln(stiffness) by the doubts
     * @param apart which two places may both have a pair
     */
    GaugeChoice(double[][] derivative, double[] deviations, double[] spreads, double[] slope, Apart apart) {
        this.apart = apart;
        this.derivative = derivative;
        this.deviations = deviations;
        this.slope = slope;
        this.covariance = MatrixUtils.createRealMatrix(spreads.length, spreads.length);
        for (int i = 0; i < spreads.length; i++) {
            covariance.setEntry(i, i, spreads[i] * spreads[i]);
        }
    }

    /** Whether two places may both have a pair. */
    @FunctionalInterface
    interface Apart {
        boolean both(int one, int other);
    }

    /**
     * A choice made.
     *
     * @param place index
     * @param gain bits
     * @param spread standard deviation of ln(stiffness) left
     */
    record Chosen(int place, double gain, double spread) {}

    /**
     * Chooses.
     *
     * @param fixed places taken first, whatever they tell
     * @param count places at most, those included
     */
    List<Chosen> choose(List<Integer> fixed, int count) {
        List<Chosen> result = new ArrayList<>();
        for (int place : fixed) {
            result.add(take(place));
        }
        while (result.size() < count) {
            int best = -1;
            double most = WORTH;
            for (int k = 0; k < derivative.length; k++) {
                int place = k;
                if (result.stream().allMatch(c -> c.place != place && apart.both(c.place, place)) && gain(k) > most) {
                    most = gain(k);
                    best = k;
                }
            }
            if (best < 0) {
                break;
            }
            result.add(take(best));
        }
        return result;
    }

    /** Standard deviations of the doubts with what was chosen so far. */
    double[] left() {
        double[] left = new double[slope.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = Math.sqrt(Math.max(0, covariance.getEntry(i, i)));
        }
        return left;
    }

    /** ½ log₂(1 + jᵀ C j / r²): one reading is a rank-one update. */
    private double gain(int place) {
        double[] j = derivative[place];
        double ratio = dot(j, covariance.operate(j)) / (deviations[place] * deviations[place]);
        return 0.5 * Math.log1p(ratio) / Math.log(2);
    }

    private Chosen take(int place) {
        double gain = gain(place);
        double[] j = derivative[place];
        double[] cj = covariance.operate(j);
        double below = deviations[place] * deviations[place] + dot(j, cj);
        for (int a = 0; a < cj.length; a++) {
            for (int b = 0; b < cj.length; b++) {
                covariance.addToEntry(a, b, -cj[a] * cj[b] / below);
            }
        }
        return new Chosen(place, gain, Math.sqrt(Math.max(0, dot(slope, covariance.operate(slope)))));
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** ln of the determinant of the covariance left; for checks. */
    double logDeterminant() {
        double sum = 0;
        RealMatrix l = new CholeskyDecomposition(covariance, 1e-9, 0).getL();
        for (int i = 0; i < slope.length; i++) {
            sum += 2 * Math.log(l.getEntry(i, i));
        }
        return sum;
    }
}
