// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.List;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import tubwright.engine.rig.ReadingsException;

/**
 * What readings say about the doubts: the most probable factors and their covariance, prior and readings both taken as
 * Gaussian in the logarithms (Tarantola 2005, ch. 3: the quasi-Newton solution of the least-squares inverse problem).
 *
 * <p>With y the readings, R their covariance, P that of the prior, g(θ) the model and J its derivative, θ minimises
 * (y − g)ᵀR⁻¹(y − g) + θᵀP⁻¹θ; about the minimum the covariance is (JᵀR⁻¹J + P⁻¹)⁻¹ but for the bend of g, which
 * {@link Posterior} puts in. The derivative is taken by differences at the start of each round and follows by Broyden's
 * rule (1965) within it, so that a model that needs a full solution for each answer is asked about 2n + 5 times for n
 * doubts; the rounds end where a step with the true derivative is nothing to speak of.
 *
 * @param doubts what was in doubt
 * @param mean θ after the test
 * @param covariance of θ after the test
 * @param before what the model reads at θ = 0
 * @param after what it reads at the mean
 * @param derivative J at the most probable point: one row a station, one column a doubt
 * @param misfit (y − g)ᵀR⁻¹(y − g) at the most probable point
 * @param converged whether the steps came to rest
 */
public record Update(
        List<Doubt> doubts,
        double[] mean,
        double[][] covariance,
        double[] before,
        double[] after,
        double[][] derivative,
        double misfit,
        boolean converged) {
    private static final int ROUNDS = 5;
    private static final int STEPS = 8;
    private static final double SHORTEST = 0.02;

    /**
     * A step is nothing to speak of when it moves the factors by less than a quarter of their standard deviation after
     * the test, in whatever direction: its square in the metric of the covariance (the Newton decrement). The last such
     * step is taken without asking the model again. Never by their spread before the test: good gauges leave a
     * hundredth of it.
     */
    private static final double WORTHLESS = 0.05;

    /** A doubt known more closely than this (ln of the factor) runs straight over its range. */
    private static final double STRAIGHT = 0.1;

    /** A doubt whose whole range moves no reading by more than this share of its uncertainty bends nothing. */
    private static final double UNSEEN = 0.3;

    /**
     * Finds the most probable factors.
     *
     * @param measured readings
     * @param doubts with their spreads
     * @param model what is read for given factors
     * @throws ReadingsException if there is nothing to find or to find it with
     */
    public static Update of(Measured measured, List<Doubt> doubts, TwistModel model) {
        int n = doubts.size();
        if (n == 0) {
            throw new ReadingsException("nothing in the model is in doubt, so the readings can explain nothing");
        }
        RealMatrix weight = inverse(MatrixUtils.createRealMatrix(measured.covariance()));
        double[] y = measured.angles();
        double[] theta = new double[n];
        double[] before = model.read(theta);
        double[] g = before;
        double objective = objective(y, g, weight, theta, doubts);
        double[][] j = new double[0][];
        boolean converged = false;
        for (int round = 0; round < ROUNDS && !converged; round++) {
            j = model.derivative(theta);
            double[] left = move(y, g, j, weight, theta, doubts);
            converged = quadratic(left, normal(j, weight, doubts)) < WORTHLESS;
            double[][] following = MatrixUtils.createRealMatrix(j).getData();
            for (int step = 0; step < STEPS && !converged; step++) {
                double[] move = move(y, g, following, weight, theta, doubts);
                double length = 1;
                double[] next = plus(theta, length, move);
                double[] read = model.read(next);
                double better = objective(y, read, weight, next, doubts);
                while (better > objective && length > SHORTEST) {
                    length /= 3;
                    next = plus(theta, length, move);
                    read = model.read(next);
                    better = objective(y, read, weight, next, doubts);
                }
                if (better > objective) {
                    break;
                }
                broyden(following, minus(next, theta), minus(read, g));
                boolean still = quadratic(minus(next, theta), normal(following, weight, doubts)) < WORTHLESS / 10;
                theta = next;
                g = read;
                objective = better;
                if (still) {
                    break;
                }
            }
        }
        RealMatrix gaussian = inverse(normal(j, weight, doubts));
        double[] centre = plus(theta, 1, move(y, g, j, weight, theta, doubts));
        double[] bend = bend(measured, doubts, model, theta, j, gaussian);
        Posterior posterior =
                Posterior.of(measured, weight, new Posterior.Curves(theta, g, j, bend, doubts), centre, gaussian);
        return new Update(
                List.copyOf(doubts),
                posterior.mean(),
                posterior.covariance(),
                before,
                model.read(posterior.mean()),
                j,
                quadratic(minus(y, g), weight),
                converged);
    }

    /**
     * How the readings bend with each doubt, see {@link Posterior}: asked of the model one standard deviation softer,
     * where the doubt is known loosely enough for it to matter and the gauges see it at all.
     */
    private static double[] bend(
            Measured measured,
            List<Doubt> doubts,
            TwistModel model,
            double[] theta,
            double[][] j,
            RealMatrix gaussian) {
        double[] bend = new double[theta.length];
        for (int i = 0; i < bend.length; i++) {
            Doubt doubt = doubts.get(i);
            double deviation = Math.sqrt(gaussian.getEntry(i, i));
            int clearest = 0;
            double seen = 0;
            for (int k = 0; k < j.length; k++) {
                double here = Math.abs(j[k][i]) * deviation / measured.deviations()[k];
                if (here > seen) {
                    seen = here;
                    clearest = k;
                }
            }
            if (doubt.ofTheTest()) {
                bend[i] = 0;
            } else if (deviation < STRAIGHT || seen < UNSEEN) {
                bend[i] = 1;
            } else {
                double change = model.change(theta, i, -deviation)[clearest];
                bend[i] = bend(change / (-j[clearest][i] * deviation), deviation);
            }
        }
        return bend;
    }

    /** κ between −1 and 1 with (e^(κσ) − 1)/(κσ) as told, by halving. */
    private static double bend(double told, double deviation) {
        double low = -1;
        double high = 1;
        for (int step = 0; step < 40; step++) {
            double middle = (low + high) / 2;
            double x = middle * deviation;
            double here = Math.abs(x) < 1e-9 ? 1 : Math.expm1(x) / x;
            if (here < told) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Standard deviation of θ of a doubt after the test. */
    public double deviation(int doubt) {
        return Math.sqrt(covariance[doubt][doubt]);
    }

    /** Correlation of two doubts after the test. */
    public double correlation(int a, int b) {
        return covariance[a][b] / (deviation(a) * deviation(b));
    }

    /** Share of the doubt's spread that the test took away: 0 where it said nothing, near 1 where it settled it. */
    public double learnt(int doubt) {
        return Math.max(0, 1 - deviation(doubt) / doubts.get(doubt).spread());
    }

    private static double[] move(
            double[] y, double[] g, double[][] j, RealMatrix weight, double[] theta, List<Doubt> doubts) {
        int n = theta.length;
        double[] pull = MatrixUtils.createRealMatrix(j).transpose().operate(weight.operate(minus(y, g)));
        for (int i = 0; i < n; i++) {
            double spread = doubts.get(i).spread();
            pull[i] -= theta[i] / (spread * spread);
        }
        return new CholeskyDecomposition(normal(j, weight, doubts), 1e-9, 0)
                .getSolver()
                .solve(MatrixUtils.createRealVector(pull))
                .toArray();
    }

    private static RealMatrix normal(double[][] j, RealMatrix weight, List<Doubt> doubts) {
        RealMatrix matrix = MatrixUtils.createRealMatrix(j);
        RealMatrix normal = matrix.transpose().multiply(weight).multiply(matrix);
        for (int a = 0; a < doubts.size(); a++) {
            for (int b = 0; b < a; b++) {
                double mean = (normal.getEntry(a, b) + normal.getEntry(b, a)) / 2;
                normal.setEntry(a, b, mean);
                normal.setEntry(b, a, mean);
            }
            double spread = doubts.get(a).spread();
            normal.addToEntry(a, a, 1 / (spread * spread));
        }
        return normal;
    }

    private static RealMatrix inverse(RealMatrix symmetric) {
        return new CholeskyDecomposition(symmetric, 1e-9, 0).getSolver().getInverse();
    }

    private static void broyden(double[][] j, double[] step, double[] change) {
        double square = 0;
        for (double s : step) {
            square += s * s;
        }
        if (square == 0) {
            return;
        }
        for (int k = 0; k < j.length; k++) {
            double said = 0;
            for (int i = 0; i < step.length; i++) {
                said += j[k][i] * step[i];
            }
            for (int i = 0; i < step.length; i++) {
                j[k][i] += (change[k] - said) * step[i] / square;
            }
        }
    }

    private static double objective(double[] y, double[] g, RealMatrix weight, double[] theta, List<Doubt> doubts) {
        double sum = quadratic(minus(y, g), weight);
        for (int i = 0; i < theta.length; i++) {
            double t = theta[i] / doubts.get(i).spread();
            sum += t * t;
        }
        return sum;
    }

    private static double quadratic(double[] left, RealMatrix weight) {
        double[] weighted = weight.operate(left);
        double sum = 0;
        for (int k = 0; k < left.length; k++) {
            sum += left[k] * weighted[k];
        }
        return sum;
    }

    private static double[] plus(double[] a, double length, double[] b) {
        double[] sum = a.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += length * b[i];
        }
        return sum;
    }

    private static double[] minus(double[] a, double[] b) {
        return plus(a, -1, b);
    }
}
