// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;

/** The update as a piece of statistics, on springs in series whose twist can be written down. */
class UpdateTest {
    /** Flexibilities in series, from the held end on: a length of shell, a joint, shell, a joint, shell; rad/(N·m). */
    private static final double[] FLEXIBILITY = {1.2e-6, 0.5e-6, 1.0e-6, 0.8e-6, 1.5e-6};

    private static final List<Doubt> DOUBTS = List.of(
            new Doubt(Doubt.Kind.LAMINATE, "cloth", 0.05),
            new Doubt(Doubt.Kind.JOINT, "rear joint", 0.4),
            new Doubt(Doubt.Kind.JOINT, "front joint", 0.4),
            Doubt.of(Doubt.Kind.TORQUE_SCALE, 0.01));

    /** Gauges before and behind each joint and at the front. */
    private static double[] read(double[] theta) {
        double shell = Math.exp(-theta[0]);
        double rear = Math.exp(-theta[1]);
        double front = Math.exp(-theta[2]);
        double scale = Math.exp(theta[3]);
        double[] gains = {
            FLEXIBILITY[0] * shell,
            FLEXIBILITY[1] * rear,
            FLEXIBILITY[2] * shell,
            FLEXIBILITY[3] * front,
            FLEXIBILITY[4] * shell
        };
        double[] angles = new double[gains.length];
        double sum = 0;
        for (int k = 0; k < gains.length; k++) {
            sum += gains[k];
            angles[k] = scale * sum;
        }
        return angles;
    }

    private static Measured measured(double[] angles, double deviation) {
        double[] stations = {2.0, 1.8, 1.2, 1.0, 0.2};
        double[] deviations = new double[angles.length];
        java.util.Arrays.fill(deviations, deviation);
        // Pairs of one kind: half of the variance against the held pair is the held pair's.
        return new Measured(stations, angles, deviations, deviation / Math.sqrt(2), OptionalDouble.of(2.4), 0);
    }

    @Test
    void theTruthLiesInTheNinetyFivePercentRegionInNinetyFiveOfAHundredTests() {
        // Truths drawn from the prior, noise from the covariance the update is told: then by construction of Bayes'
        // rule
        // the 95 % region holds the truth in 95 % of tests. What it checks is every step from readings to covariance,
        // and
        // that the Gaussian about the most probable point is good enough for joints of 40 % spread.
        long seed = 20_260_701;
        Random random = new Random(seed);
        double noise = 0.02e-6;
        double limit = new ChiSquaredDistribution(DOUBTS.size()).inverseCumulativeProbability(0.95);
        int inside = 0;
        int tests = 1000;
        int[] each = new int[DOUBTS.size()];
        for (int t = 0; t < tests; t++) {
            double[] truth = new double[DOUBTS.size()];
            for (int i = 0; i < truth.length; i++) {
                truth[i] = DOUBTS.get(i).spread() * random.nextGaussian();
            }
            double[] y = read(truth);
            double[][] root = new CholeskyDecomposition(
                            MatrixUtils.createRealMatrix(measured(y, noise).covariance()), 1e-9, 0)
                    .getL()
                    .getData();
            double[] white = new double[y.length];
            for (int k = 0; k < y.length; k++) {
                white[k] = random.nextGaussian();
            }
            for (int k = 0; k < y.length; k++) {
                for (int l = 0; l <= k; l++) {
                    y[k] += root[k][l] * white[l];
                }
            }
            Update update = Update.of(measured(y, noise), DOUBTS, UpdateTest::read);
            double[] off = new double[truth.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = truth[i] - update.mean()[i];
                each[i] += Math.abs(off[i]) < 1.959964 * update.deviation(i) ? 1 : 0;
            }
            double[] solved = new CholeskyDecomposition(MatrixUtils.createRealMatrix(update.covariance()), 1e-9, 0)
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(off))
                    .toArray();
            double distance = 0;
            for (int i = 0; i < off.length; i++) {
                distance += off[i] * solved[i];
            }
            inside += distance < limit ? 1 : 0;
        }
        assertEquals(0.95, inside / (double) tests, 0.02, "seed " + seed);
        for (int i = 0; i < each.length; i++) {
            assertEquals(0.95, each[i] / (double) tests, 0.02, DOUBTS.get(i).name() + ", seed " + seed);
        }
    }

    @Test
    void aLinearModelGivesTheTextbookPosterior() {
        // One factor, one reading, g = g0 + s θ: mean (s/r²)(y − g0)/(s²/r² + 1/p²), variance 1/(s²/r² + 1/p²)
        // (Gelman et al. 2013, eq. 2.11 to 2.12: precisions add).
        double g0 = 5e-6;
        double s = -2e-6;
        double r = 0.3e-6;
        double p = 0.25;
        double y = 5.4e-6;
        List<Doubt> doubts = List.of(new Doubt(Doubt.Kind.JOINT, "a", p));
        Update update = Update.of(
                new Measured(new double[] {0.2}, new double[] {y}, new double[] {r}, 0, OptionalDouble.empty(), 0),
                doubts,
                theta -> new double[] {g0 + s * theta[0]});
        double precision = s * s / (r * r) + 1 / (p * p);
        assertEquals(s / (r * r) * (y - g0) / precision, update.mean()[0], 1e-6);
        assertEquals(Math.sqrt(1 / precision), update.deviation(0), 1e-6);
        assertEquals(1 - Math.sqrt(1 / precision) / p, update.learnt(0), 1e-6);
    }

    @Test
    void twoJointsBetweenTheSameGaugesAreNotToldApart() {
        List<Doubt> doubts =
                new ArrayList<>(List.of(new Doubt(Doubt.Kind.JOINT, "a", 0.5), new Doubt(Doubt.Kind.JOINT, "b", 0.5)));
        TwistModel model = theta -> new double[] {1e-6, 1e-6 + 0.5e-6 * (Math.exp(-theta[0]) + Math.exp(-theta[1]))};
        Update update = Update.of(
                new Measured(
                        new double[] {1.5, 0.5},
                        new double[] {1e-6, 2.6e-6},
                        new double[] {1e-9, 1e-9},
                        1e-9 / Math.sqrt(2),
                        OptionalDouble.of(2.0),
                        0),
                doubts,
                model);
        assertTrue(update.correlation(0, 1) < -0.99, "correlation " + update.correlation(0, 1));
        assertEquals(update.mean()[0], update.mean()[1], 1e-6, "nothing favours either");
        // Each is known little better than before, by the square root of one half.
        assertEquals(1 - Math.sqrt(0.5), update.learnt(0), 0.03);
    }
}
