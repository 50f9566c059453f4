// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import tubwright.engine.rig.ReadingsReader;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReduction;
import tubwright.engine.rig.statistics.Uncertainty;

/**
 * A tub whose laminate, joints and rig are known is tested a thousand times, from the gauge in its file to the region of
 * the factors. Truths are drawn from the prior, gauges scatter and stand a little off their places, the scale is off by
 * what is said of it: by Bayes' rule the 95 % region then holds the truth in 95 % of tests, if every step from readings
 * to covariance is right and the Gaussian with the posterior's moments is good enough.
 */
class SimulatedTestsTest {
    /** Flexibilities in series, from the held end on: shell, a joint, shell, a joint, shell; rad/(N·m). */
    private static final double[] FLEXIBILITY = {1.2e-6, 0.5e-6, 1.0e-6, 0.8e-6, 1.5e-6};

    private static final double[] STATIONS = {0.2, 1.0, 1.2, 1.8, 2.0};
    private static final double HELD = 2.4;
    private static final int TESTS = 1000;
    private static final double SCALE = 0.005;
    private static final double PLACE = 1e-3;

    /** What a dial gauge of a hundredth and one of a thousandth scatter by, m. */
    private static final double COARSE = 4e-5;

    private static final double FINE = 5e-6;

    /** Load steps of one cycle, N·m. */
    private static final double[] MANY = {0, 500, 1000, 1500, 2000, 1500, 1000, 500, 0};

    private static final double[] FEW = {0, 1000, 2000, 1000, 0};

    /** Degrees of freedom of the scatter pooled over five pairs of few readings. */
    private static final int FEW_FREEDOM = 5 * (FEW.length - 2);

    private final List<Doubt> doubts;

    /** Whether the region and each interval hold the truth, and how much was learnt. */
    private record Trial(boolean inside, boolean[] each, double[] learnt) {}

    /** The same counted over all tests. */
    private record Outcome(int region, int[] each, double[] learnt) {}

    SimulatedTestsTest() {
        doubts = List.of(
                new Doubt(Doubt.Kind.LAMINATE, "cloth", Doubts.LAMINATE),
                new Doubt(Doubt.Kind.JOINT, "rear joint", Doubts.JOINT),
                new Doubt(Doubt.Kind.JOINT, "front joint", Doubts.JOINT));
    }

    /** Angles over torque at the stations for given factors, and what the rig gives as a share of the whole twist. */
    private static double[] read(double[] theta, List<Doubt> all) {
        double shell = Math.exp(-theta[0]);
        double[] soft = {shell, Math.exp(-theta[1]), shell, Math.exp(-theta[2]), shell};
        double[] angles = new double[soft.length];
        double sum = 0;
        for (int k = 0; k < soft.length; k++) {
            sum += soft[k] * FLEXIBILITY[k];
            angles[soft.length - 1 - k] = sum;
        }
        double scale = 1;
        double give = 0;
        for (int i = 3; i < theta.length; i++) {
            if (all.get(i).is(Doubt.Kind.TORQUE_SCALE)) {
                scale = Math.exp(theta[i]);
            } else {
                give = theta[i] * sum;
            }
        }
        for (int k = 0; k < angles.length; k++) {
            angles[k] = scale * (angles[k] + give);
        }
        return angles;
    }

    /** The file of a test: pairs about a metre apart, dial gauges of a thousandth, bodily motion, two cycles. */
    private static TorsionReading readings(
            double[] angles, boolean heldRead, double rigGive, double noise, boolean few, Random random) {
        int pairs = angles.length + (heldRead ? 1 : 0);
        StringBuilder text = new StringBuilder("held station, 2400 mm\nloaded station, 200 mm\n");
        text.append("torque uncertainty, 0.5 %\ngauge spacing uncertainty, 1 mm\ngauge resolution, 0.001 mm\n");
        StringBuilder header = new StringBuilder("cycle, torque [N·m]");
        double[][] levers = new double[pairs][2];
        for (int k = 0; k < pairs; k++) {
            for (int side = 0; side < 2; side++) {
                double y = side == 0 ? 0.5 : -0.5;
                levers[k][side] = y + PLACE * random.nextGaussian();
                double x = k < angles.length ? STATIONS[k] : HELD;
                String name = "g" + k + (side == 0 ? "R" : "L");
                text.append(
                        String.format(Locale.ROOT, "gauge, %s, %.0f mm, z, %.0f mm, 0 mm%n", name, 1000 * x, 1000 * y));
                header.append(", ").append(name).append(" [mm]");
            }
        }
        text.append(header).append('\n');
        for (int cycle = 1; cycle <= (few ? 1 : 2); cycle++) {
            for (double torque : few ? FEW : MANY) {
                text.append(cycle).append(", ").append(torque);
                for (int k = 0; k < pairs; k++) {
                    double angle = torque * ((k < angles.length ? angles[k] : 0) + rigGive);
                    for (int side = 0; side < 2; side++) {
                        double moves = 1e-7 * torque + levers[k][side] * angle + noise * random.nextGaussian();
                        text.append(String.format(Locale.ROOT, ", %.3f", 1000 * moves));
                    }
                }
                text.append('\n');
            }
        }
        return TorsionReduction.of(ReadingsReader.read("t.csv", text.toString()), false);
    }

    private Outcome simulate(boolean heldRead, double noise, boolean few, long seed) {
        List<Doubt> all = new ArrayList<>(doubts);
        all.add(Doubt.of(Doubt.Kind.TORQUE_SCALE, SCALE));
        if (!heldRead) {
            all.add(Doubt.of(Doubt.Kind.RIG_GIVE, Explanation.GIVE));
        }
        int n = all.size();
        double limit = few
                ? n * Uncertainty.varianceRatio(0.95, n, FEW_FREEDOM) / Math.pow(widened(), 2)
                : new ChiSquaredDistribution(n).inverseCumulativeProbability(0.95);
        // Seeds drawn, not counted up: neighbouring seeds begin with nearly the same number.
        List<Trial> trials = new Random(seed)
                .longs(TESTS)
                .parallel()
                .mapToObj(s -> trial(heldRead, noise, few, all, limit, new Random(s)))
                .toList();
        int region = (int) trials.stream().filter(Trial::inside).count();
        int[] each = new int[n];
        double[] learnt = new double[n];
        for (Trial trial : trials) {
            for (int i = 0; i < n; i++) {
                each[i] += trial.each[i] ? 1 : 0;
                learnt[i] += trial.learnt[i] / TESTS;
            }
        }
        return new Outcome(region, each, learnt);
    }

    private static Trial trial(
            boolean heldRead, double noise, boolean few, List<Doubt> all, double limit, Random random) {
        int n = all.size();
        double[] truth = new double[n];
        for (int i = 0; i < n; i++) {
            truth[i] = all.get(i).spread() * random.nextGaussian();
            // A rig that turned against the load would not be one; the test settles it, so its prior matters little.
            truth[i] = all.get(i).is(Doubt.Kind.RIG_GIVE) ? Math.abs(truth[i]) : truth[i];
        }
        // With the held end read the rig turns all gauges, and its turning is read and subtracted.
        double rig = heldRead ? 0.3 * Math.abs(random.nextGaussian()) * 5e-6 : 0;
        TorsionReading reading = readings(read(truth, all), heldRead, rig, noise, few, random);
        Update update = Update.of(Measured.of(reading, 0), all, theta -> read(theta, all));
        double[] off = new double[n];
        boolean[] each = new boolean[n];
        double[] learnt = new double[n];
        for (int i = 0; i < n; i++) {
            off[i] = truth[i] - update.mean()[i];
            each[i] = Math.abs(off[i]) < 1.959964 * update.deviation(i);
            learnt[i] = update.learnt(i);
        }
        double[] solved = new CholeskyDecomposition(MatrixUtils.createRealMatrix(update.covariance()), 1e-9, 0)
                .getSolver()
                .solve(MatrixUtils.createRealVector(off))
                .toArray();
        double distance = 0;
        for (int i = 0; i < n; i++) {
            distance += off[i] * solved[i];
        }
        return new Trial(distance < limit, each, learnt);
    }

    /** By how much few readings widen each uncertainty of scatter, see {@code TorsionReduction}. */
    private static double widened() {
        return Uncertainty.studentFactor(0.95, FEW_FREEDOM) / Uncertainty.studentFactor(0.95, Double.POSITIVE_INFINITY);
    }

    private void holdsTheTruth(boolean heldRead, double noise, boolean few, long seed) {
        Outcome outcome = simulate(heldRead, noise, few, seed);
        String told = outcome.region + " in the region, " + Arrays.toString(outcome.each) + " singly, seed " + seed;
        System.out.println("simulated tests: " + told);
        assertEquals(0.95, outcome.region / (double) TESTS, 0.02, told);
        for (int each : outcome.each) {
            assertEquals(0.95, each / (double) TESTS, 0.02, told);
        }
        assertTrue(outcome.learnt[1] > 0.5 && outcome.learnt[2] > 0.5, "the joints are what gauges settle");
    }

    @Test
    void theRegionHoldsJointsAndLaminateWithTheHeldEndRead() {
        holdsTheTruth(true, COARSE, false, 20_261_126);
    }

    @Test
    void theRegionHoldsTheGiveOfTheRigTooWithTheHeldEndUnread() {
        holdsTheTruth(false, COARSE, false, 20_261_127);
    }

    @Test
    void fineGaugesClaimNoMoreThanTheyKnow() {
        holdsTheTruth(true, FINE, false, 20_261_128);
    }

    @Test
    void fineGaugesWithTheHeldEndUnreadClaimNoMoreThanTheyKnow() {
        holdsTheTruth(false, FINE, false, 20_261_129);
    }

    /**
     * Five readings a gauge: each interval is as wide as Student's t asks, and the region of several factors at once is
     * Fisher's.
     */
    @Test
    void fewReadingsClaimNoMoreThanTheyKnow() {
        holdsTheTruth(true, COARSE, true, 20_261_130);
    }
}
