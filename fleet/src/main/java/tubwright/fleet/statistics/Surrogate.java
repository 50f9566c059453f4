// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.statistics;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * What lies between computed points: a Gaussian process with a constant mean, a squared-exponential kernel with one length
 * for each input, and noise for what the mesh adds (Rasmussen and Williams 2006, chapters 2 and 5). Lengths and noise are
 * those of greatest likelihood, found by steps up and down. How far it is off is told by leaving each point out in turn
 * (their equation 5.12).
 */
public final class Surrogate {
    private static final double[] LENGTHS = {0.15, 0.25, 0.4, 0.7, 1.2, 2, 4, 8};
    private static final double[] NOISES = {1e-10, 1e-8, 1e-6, 1e-4, 1e-3, 1e-2, 1e-1};
    private static final int ROUNDS = 3;

    private final double[][] points;
    private final double mean;
    private final double scale;
    private final int[] lengths;
    private final double variance;
    private final double noise;
    private final double[] weights;
    private final RealMatrix inverse;
    private final double[] leftOut;
    private final double stretched;

    /** A value with its standard deviation. */
    public record Guess(double value, double deviation) {}

    /** Everything that follows from lengths and noise. */
    private record Fit(double likelihood, double variance, double[] weights, RealMatrix inverse) {}

    private Surrogate(double[][] points, double[] scaled, double mean, double scale, int[] lengths, int noise) {
        Fit fit = fit(points, scaled, lengths, NOISES[noise]);
        this.points = points;
        this.mean = mean;
        this.scale = scale;
        this.lengths = lengths;
        this.noise = NOISES[noise];
        variance = fit.variance;
        weights = fit.weights;
        inverse = fit.inverse;
        leftOut = new double[points.length];
        double[] spread = new double[points.length];
        for (int i = 0; i < points.length; i++) {
            double own = inverse.getEntry(i, i);
            leftOut[i] = scale * weights[i] / own;
            spread[i] = scale * Math.sqrt(variance / own);
        }
        // Of greatest likelihood it is often too sure of itself: stretched until 95 % of the points left out lie within
        // two.
        double[] off = new double[points.length];
        for (int i = 0; i < off.length; i++) {
            off[i] = Math.abs(leftOut[i]) / spread[i];
        }
        Arrays.sort(off);
        stretched = Math.max(1, off[(int) Math.ceil(0.95 * off.length) - 1] / 2);
    }

    /**
     * @param points in the unit cube
     * @param values of them; those that are not finite are left out
     * @throws IllegalArgumentException with fewer points than inputs and two more
     */
    public static Surrogate of(List<double[]> points, double[] values) {
        int d = points.getFirst().length;
        int[] finite = java.util.stream.IntStream.range(0, values.length)
                .filter(i -> Double.isFinite(values[i]))
                .toArray();
        if (finite.length < d + 2) {
            throw new IllegalArgumentException(
                    "between " + finite.length + " values in " + d + " dimensions nothing can be told");
        }
        double[][] x = Arrays.stream(finite).mapToObj(points::get).toArray(double[][]::new);
        double[] y = Arrays.stream(finite).mapToDouble(i -> values[i]).toArray();
        double mean = Arrays.stream(y).average().orElseThrow();
        double scale = Math.sqrt(
                Arrays.stream(y).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
        double unit = scale > 0 ? scale : 1;
        double[] scaled = Arrays.stream(y).map(v -> (v - mean) / unit).toArray();
        int[] lengths = new int[d];
        Arrays.fill(lengths, 4);
        int noise = 2;
        double best = likelihood(x, scaled, lengths, noise);
        for (int round = 0; round < ROUNDS; round++) {
            double before = best;
            for (int k = 0; k <= d; k++) {
                int count = k < d ? LENGTHS.length : NOISES.length;
                for (int at = 0; at < count; at++) {
                    int[] tried = lengths.clone();
                    int triedNoise = k < d ? noise : at;
                    if (k < d) {
                        tried[k] = at;
                    }
                    double likelihood = likelihood(x, scaled, tried, triedNoise);
                    if (likelihood > best) {
                        best = likelihood;
                        lengths = tried;
                        noise = triedNoise;
                    }
                }
            }
            if (best == before) {
                break;
            }
        }
        return new Surrogate(x, scaled, mean, unit, lengths, noise);
    }

    private static double likelihood(double[][] x, double[] y, int[] lengths, int noise) {
        try {
            return fit(x, y, lengths, NOISES[noise]).likelihood;
        } catch (MathRuntimeException indefinite) {
            return Double.NEGATIVE_INFINITY;
        }
    }

    private static Fit fit(double[][] x, double[] y, int[] lengths, double noise) {
        int n = x.length;
        double[][] k = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                k[i][j] = kernel(x[i], x[j], lengths);
                k[j][i] = k[i][j];
            }
            k[i][i] += noise;
        }
        CholeskyDecomposition cholesky = new CholeskyDecomposition(new Array2DRowRealMatrix(k, false), 1e-9, 1e-14);
        RealMatrix inverse = cholesky.getSolver().getInverse();
        double[] weights = inverse.operate(y);
        double quadratic = 0;
        double logs = 0;
        for (int i = 0; i < n; i++) {
            quadratic += y[i] * weights[i];
            logs += Math.log(cholesky.getL().getEntry(i, i));
        }
        double variance = Math.max(quadratic / n, 1e-300);
        return new Fit(-0.5 * n * Math.log(variance) - logs, variance, weights, inverse);
    }

    private static double kernel(double[] a, double[] b, int[] lengths) {
        double sum = 0;
        for (int d = 0; d < a.length; d++) {
            double step = (a[d] - b[d]) / LENGTHS[lengths[d]];
            sum += step * step;
        }
        return Math.exp(-0.5 * sum);
    }

    /** The value at a point of the unit cube, and how sure: never surer than it was of the points left out. */
    public Guess at(double[] point) {
        double[] k = new double[points.length];
        for (int i = 0; i < k.length; i++) {
            k[i] = kernel(point, points[i], lengths);
        }
        double value = 0;
        double[] back = inverse.operate(k);
        double known = 0;
        for (int i = 0; i < k.length; i++) {
            value += k[i] * weights[i];
            known += k[i] * back[i];
        }
        double own = stretched * scale * Math.sqrt(variance * Math.max(0, 1 + noise - known));
        return new Guess(mean + scale * value, Math.hypot(own, error()));
    }

    /** Root mean square of what each point is off when it is left out, in the unit of the values. */
    public double error() {
        return Math.sqrt(Arrays.stream(leftOut).map(e -> e * e).average().orElseThrow());
    }

    /** Share of the values' variance that the left-out guesses explain: 1 at best. */
    public double explained() {
        return 1 - error() * error() / (scale * scale);
    }

    /** By how much its own idea of how sure it is had to be stretched; 1 where it knew itself. */
    public double stretched() {
        return stretched;
    }

    /** Slope in each input at a point, value over the whole range. */
    public double[] slope(double[] point) {
        double[] slope = new double[point.length];
        double step = 1e-3;
        for (int d = 0; d < slope.length; d++) {
            double[] up = point.clone();
            double[] down = point.clone();
            up[d] += step;
            down[d] -= step;
            slope[d] = (at(up).value - at(down).value) / (2 * step);
        }
        return slope;
    }
}
