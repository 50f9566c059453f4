// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

import java.util.Arrays;

/**
 * Least squares of observations that are linear in their coefficients.
 *
 * <p>Solved by Householder reflections on columns scaled to unit length (Golub 1965), never by the normal equations,
 * which lose half the digits. Arrays are not to be modified.
 *
 * @param coefficients one a column
 * @param standardErrors of the coefficients
 * @param covariance of the coefficients, row by row
 * @param residuals observed less fitted, in the unit of the observations (not weighted)
 * @param leverages diagonal of the hat matrix
 * @param residualDeviation residual standard deviation: of unit weight where weights were given
 * @param rSquared share of the variation about the mean (about zero, without a constant column) that the fit explains
 * @param degreesOfFreedom observations less coefficients
 */
public record LinearFit(
        double[] coefficients,
        double[] standardErrors,
        double[][] covariance,
        double[] residuals,
        double[] leverages,
        double residualDeviation,
        double rSquared,
        int degreesOfFreedom) {

    /** A column that keeps less than this of its length when made orthogonal to those before it says nothing new. */
    private static final double DEPENDENT = 1e-13;

    /** Rounds in which the solution is corrected by the fit of what it leaves. */
    private static final int REFINEMENTS = 2;

    /**
     * Fits {@code y ≈ X b}.
     *
     * @param design X, a row per observation
     * @param y observations
     * @throws IllPosedException if there are not more observations than coefficients or columns depend on each other
     */
    public static LinearFit of(double[][] design, double[] y) {
        double[] even = new double[y.length];
        Arrays.fill(even, 1);
        return weighted(design, y, even);
    }

    /**
     * Fits {@code y ≈ X b} with weights proportional to 1/variance of each observation.
     *
     * @throws IllPosedException as {@link #of}
     */
    public static LinearFit weighted(double[][] design, double[] y, double[] weights) {
        int n = y.length;
        int p = n == 0 ? 0 : design[0].length;
        if (n <= p || p == 0) {
            throw new IllPosedException(n + (n == 1 ? " reading" : " readings") + " cannot settle " + p
                    + " unknowns and their scatter; at least " + (p + 1) + " are needed");
        }
        double[] scale = new double[p];
        double[][] a = new double[n][];
        double[] b = new double[n];
        for (int i = 0; i < n; i++) {
            double root = Math.sqrt(weights[i]);
            a[i] = design[i].clone();
            for (int j = 0; j < p; j++) {
                a[i][j] *= root;
                scale[j] = Math.hypot(scale[j], a[i][j]);
            }
            b[i] = y[i] * root;
        }
        for (int j = 0; j < p; j++) {
            if (!(scale[j] > 0)) {
                throw new IllPosedException("unknown " + (j + 1) + " has no influence on any reading");
            }
            for (double[] row : a) {
                row[j] /= scale[j];
            }
        }
        double[][] scaled = copy(a);
        double[] c = b.clone();
        reduce(a, c, p);
        double[] solution = back(a, c, p);
        for (int round = 0; round < REFINEMENTS; round++) {
            double[][] again = copy(scaled);
            double[] left = new double[n];
            for (int i = 0; i < n; i++) {
                left[i] = exactResidual(scaled[i], solution, b[i]);
            }
            reduce(again, left, p);
            double[] correction = back(again, left, p);
            for (int j = 0; j < p; j++) {
                solution[j] += correction[j];
            }
        }
        double[][] inverse = inverse(a, p);
        return finish(design, y, weights, scaled, scale, solution, inverse);
    }

    /** A straight line {@code y = b0 + b1 x}. */
    public static LinearFit line(double[] x, double[] y) {
        return polynomial(x, y, 1);
    }

    /** A polynomial {@code y = b0 + b1 x + ... + bm x^m} of the degree given. */
    public static LinearFit polynomial(double[] x, double[] y, int degree) {
        double[][] design = new double[x.length][degree + 1];
        for (int i = 0; i < x.length; i++) {
            double power = 1;
            for (int j = 0; j <= degree; j++) {
                design[i][j] = power;
                power *= x[i];
            }
        }
        return of(design, y);
    }

    /** {@code b − row · x} with products and sums carried in twice the digits (Dekker 1971; Ogita, Rump & Oishi 2005). */
    private static double exactResidual(double[] row, double[] x, double b) {
        double sum = b;
        double rest = 0;
        for (int j = 0; j < x.length; j++) {
            double product = -row[j] * x[j];
            double lost = Math.fma(-row[j], x[j], -product);
            double next = sum + product;
            double part = next - sum;
            rest += (sum - (next - part)) + (product - part) + lost;
            sum = next;
        }
        return sum + rest;
    }

    /** Residuals over their own standard deviation as estimated without the observation itself (Cook & Weisberg 1982). */
    public double[] studentised() {
        double[] result = new double[residuals.length];
        double sum = residualDeviation * residualDeviation * degreesOfFreedom;
        for (int i = 0; i < result.length; i++) {
            double room = Math.max(1 - leverages[i], 1e-12);
            double without = (sum - residuals[i] * residuals[i] / room) / (degreesOfFreedom - 1);
            result[i] = without > 0
                    ? residuals[i] / Math.sqrt(without * room)
                    : residuals[i] == 0 ? 0 : Double.POSITIVE_INFINITY * Math.signum(residuals[i]);
        }
        return result;
    }

    /** Turns {@code a} into its upper triangle and {@code b} with it. */
    private static void reduce(double[][] a, double[] b, int p) {
        int n = b.length;
        for (int k = 0; k < p; k++) {
            double norm = 0;
            for (int i = k; i < n; i++) {
                norm = Math.hypot(norm, a[i][k]);
            }
            if (norm < DEPENDENT) {
                throw new IllPosedException("the readings cannot tell unknown " + (k + 1) + " from those before it");
            }
            double pivot = a[k][k] > 0 ? -norm : norm;
            double[] v = new double[n];
            for (int i = k; i < n; i++) {
                v[i] = a[i][k];
            }
            v[k] -= pivot;
            double square = 0;
            for (int i = k; i < n; i++) {
                square += v[i] * v[i];
            }
            for (int j = k; j < p; j++) {
                double dot = 0;
                for (int i = k; i < n; i++) {
                    dot += v[i] * a[i][j];
                }
                for (int i = k; i < n; i++) {
                    a[i][j] -= 2 * dot / square * v[i];
                }
            }
            double dot = 0;
            for (int i = k; i < n; i++) {
                dot += v[i] * b[i];
            }
            for (int i = k; i < n; i++) {
                b[i] -= 2 * dot / square * v[i];
            }
        }
    }

    private static double[] back(double[][] r, double[] b, int p) {
        double[] x = new double[p];
        for (int i = p - 1; i >= 0; i--) {
            double sum = b[i];
            for (int j = i + 1; j < p; j++) {
                sum -= r[i][j] * x[j];
            }
            x[i] = sum / r[i][i];
        }
        return x;
    }

    /** (XᵀX)⁻¹ of the scaled columns, from their triangle. */
    private static double[][] inverse(double[][] r, int p) {
        double[][] columns = new double[p][];
        for (int k = 0; k < p; k++) {
            double[] unit = new double[p];
            unit[k] = 1;
            columns[k] = back(r, unit, p);
        }
        double[][] result = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                for (int k = Math.max(i, j); k < p; k++) {
                    result[i][j] += columns[k][i] * columns[k][j];
                }
            }
        }
        return result;
    }

    private static LinearFit finish(
            double[][] design,
            double[] y,
            double[] weights,
            double[][] scaled,
            double[] scale,
            double[] solution,
            double[][] inverse) {
        int n = y.length;
        int p = solution.length;
        double[] residuals = new double[n];
        double[] leverages = new double[n];
        double sum = 0;
        double weight = 0;
        double mean = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    leverages[i] += scaled[i][j] * inverse[j][k] * scaled[i][k];
                }
            }
            double root = Math.sqrt(weights[i]);
            residuals[i] = exactResidual(scaled[i], solution, y[i] * root) / root;
            sum += weights[i] * residuals[i] * residuals[i];
            weight += weights[i];
            mean += weights[i] * y[i];
        }
        mean = hasConstant(design) ? mean / weight : 0;
        double total = 0;
        for (int i = 0; i < n; i++) {
            total += weights[i] * (y[i] - mean) * (y[i] - mean);
        }
        double variance = sum / (n - p);
        double[] coefficients = new double[p];
        double[] errors = new double[p];
        double[][] covariance = new double[p][p];
        for (int j = 0; j < p; j++) {
            coefficients[j] = solution[j] / scale[j];
            for (int k = 0; k < p; k++) {
                covariance[j][k] = variance * inverse[j][k] / (scale[j] * scale[k]);
            }
            errors[j] = Math.sqrt(covariance[j][j]);
        }
        double explained = total > 0 ? 1 - sum / total : 1;
        return new LinearFit(
                coefficients, errors, covariance, residuals, leverages, Math.sqrt(variance), explained, n - p);
    }

    private static boolean hasConstant(double[][] design) {
        for (int j = 0; j < design[0].length; j++) {
            int column = j;
            if (Arrays.stream(design).allMatch(row -> row[column] == design[0][column])) {
                return true;
            }
        }
        return false;
    }

    private static double[][] copy(double[][] matrix) {
        return Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
    }
}
