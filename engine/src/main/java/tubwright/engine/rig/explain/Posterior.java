// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Mean and covariance of the doubts after the test, with the bend of the model in them.
 *
 * <p>About the most probable point the Gaussian of least squares is symmetric; what a soft spring adds is not, and the
 * region of that Gaussian holds the truth in 93 % of tests instead of 95. Here the model's readings follow each doubt as
 * its own curve: J (1 − e^(−κΔ))/κ, κ = 1 for a spring in series with the rest, 0 for a straight line, down to −1 for one
 * that carries little beside others; the torque's scale multiplies everything. The moments come from points drawn about
 * the Gaussian and weighted by what the posterior really is there (importance sampling: Robert &amp; Casella 2004, ch. 3).
 * The same points weighted as the Gaussian must give that Gaussian's moments back; what they miss is taken out, so that a
 * straight model keeps its textbook answer to the last digit.
 *
 * @param mean θ
 * @param covariance of θ
 */
record Posterior(double[] mean, double[][] covariance) {
    private static final int POINTS = 4_000;

    /**
     * Least share of the points that must count (their effective number, Kong 1992). Where two doubts are nearly one the
     * posterior is a thin bent ridge that points drawn about a straight one do not find; the Gaussian is then kept.
     */
    private static final double COUNT = 0.05;

    /** Points are drawn this much wider than the Gaussian, so that none of them weighs too much. */
    private static final double WIDER = 1.1;

    private static final long SEED = 20_261_126L;

    /**
     * The model about a point, near the most probable one.
     *
     * @param theta the point
     * @param reads what the model reads there
     * @param derivative J there
     * @param bend κ of each doubt
     * @param doubts what is in doubt
     */
    record Curves(double[] theta, double[] reads, double[][] derivative, double[] bend, List<Doubt> doubts) {
        /** What is read at another point. */
        double[] at(double[] other) {
            double[] read = reads.clone();
            double scale = 1;
            for (int i = 0; i < other.length; i++) {
                double step = other[i] - theta[i];
                if (doubts.get(i).is(Doubt.Kind.TORQUE_SCALE)) {
                    scale = Math.exp(step);
                    continue;
                }
                double gone = Math.abs(bend[i]) < 1e-9 ? step : -Math.expm1(-bend[i] * step) / bend[i];
                for (int k = 0; k < read.length; k++) {
                    read[k] += derivative[k][i] * gone;
                }
            }
            for (int k = 0; k < read.length; k++) {
                read[k] *= scale;
            }
            return read;
        }
    }

    /**
     * Moments of the posterior.
     *
     * @param measured readings
     * @param weight inverse of their covariance
     * @param curves the model
     * @param centre of the Gaussian
     * @param gaussian its covariance
     */
    static Posterior of(Measured measured, RealMatrix weight, Curves curves, double[] centre, RealMatrix gaussian) {
        int n = centre.length;
        double[][] root = root(gaussian.getData());
        double[][] inverse = weight.getData();
        Random random = new Random(SEED);
        double[][] points = new double[POINTS][n];
        double[] asPosterior = new double[POINTS];
        double[] asGaussian = new double[POINTS];
        double[] theta = new double[n];
        for (int p = 0; p < POINTS; p++) {
            double square = 0;
            for (int i = 0; i < n; i++) {
                // In pairs about the centre.
                points[p][i] = p % 2 == 0 ? WIDER * random.nextGaussian() : -points[p - 1][i];
                square += points[p][i] * points[p][i];
            }
            for (int i = 0; i < n; i++) {
                theta[i] = centre[i];
                for (int j = 0; j <= i; j++) {
                    theta[i] += root[i][j] * points[p][j];
                }
            }
            double drawn = -square / (2 * WIDER * WIDER);
            asPosterior[p] = logarithm(measured.angles(), inverse, curves, theta) - drawn;
            asGaussian[p] = -square / 2 - drawn;
        }
        if (effective(asPosterior) < COUNT * POINTS) {
            return new Posterior(centre.clone(), gaussian.getData());
        }
        double[] mean = new double[n];
        double[][] spread = moments(points, asPosterior, mean);
        double[] off = new double[n];
        double[][] reference = moments(points, asGaussian, off);
        RealMatrix straight = MatrixUtils.inverse(MatrixUtils.createRealMatrix(root(reference)));
        RealMatrix out = MatrixUtils.createRealMatrix(root).multiply(straight);
        double[] shift = new double[n];
        for (int i = 0; i < n; i++) {
            shift[i] = mean[i] - off[i];
        }
        double[] moved = MatrixUtils.createRealMatrix(root).operate(shift);
        for (int i = 0; i < n; i++) {
            moved[i] += centre[i];
        }
        return new Posterior(
                moved,
                out.multiply(MatrixUtils.createRealMatrix(spread))
                        .multiply(out.transpose())
                        .getData());
    }

    /** How many points of equal weight would say as much. */
    private static double effective(double[] logarithms) {
        double most = Arrays.stream(logarithms).max().orElse(0);
        double sum = 0;
        double squares = 0;
        for (double logarithm : logarithms) {
            double weight = Math.exp(logarithm - most);
            sum += weight;
            squares += weight * weight;
        }
        return sum * sum / squares;
    }

    /** Mean and covariance of weighted points; weights come as logarithms. */
    private static double[][] moments(double[][] points, double[] logarithms, double[] mean) {
        int n = mean.length;
        double most = Arrays.stream(logarithms).max().orElse(0);
        double sum = 0;
        double[][] square = new double[n][n];
        for (int p = 0; p < points.length; p++) {
            double weight = Math.exp(logarithms[p] - most);
            sum += weight;
            for (int i = 0; i < n; i++) {
                double part = weight * points[p][i];
                mean[i] += part;
                for (int j = 0; j <= i; j++) {
                    square[i][j] += part * points[p][j];
                }
            }
        }
        for (int i = 0; i < n; i++) {
            mean[i] /= sum;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                square[i][j] = square[i][j] / sum - mean[i] * mean[j];
                square[j][i] = square[i][j];
            }
        }
        return square;
    }

    /** Logarithm of the posterior's density but for a constant. */
    private static double logarithm(double[] y, double[][] inverse, Curves curves, double[] theta) {
        double[] left = curves.at(theta);
        for (int k = 0; k < y.length; k++) {
            left[k] = y[k] - left[k];
        }
        double sum = 0;
        for (int k = 0; k < y.length; k++) {
            for (int l = 0; l < y.length; l++) {
                sum += left[k] * inverse[k][l] * left[l];
            }
        }
        for (int i = 0; i < theta.length; i++) {
            double t = theta[i] / curves.doubts().get(i).spread();
            sum += t * t;
        }
        return -sum / 2;
    }

    private static double[][] root(double[][] covariance) {
        return new CholeskyDecomposition(MatrixUtils.createRealMatrix(covariance), 1e-9, 0)
                .getL()
                .getData();
    }
}
