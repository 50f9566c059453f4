// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import tubwright.fleet.sample.UnitCube;

/**
 * Which inputs matter: what share of a value's variance each explains alone (first) and together with others (total).
 *
 * <p>From two samples A and B and, for each input, A with that input from B: first order after Saltelli and others (2010),
 * total after Jansen (1999). Their uncertainty by drawing rows anew (bootstrap).
 *
 * @param first share explained by each input alone
 * @param firstError standard error of that
 * @param total share that would be left without it, interactions counted in
 * @param totalError standard error of that
 * @param rows base rows that all could be computed of
 */
public record SobolIndices(double[] first, double[] firstError, double[] total, double[] totalError, int rows) {
    private static final int REDRAWN = 200;

    /**
     * The points to compute: A, then B, then A with the first input from B, and so on; n(d+2) of them.
     *
     * @param rows n; a power of two suits the sequence
     */
    public static List<double[]> points(int rows, int inputs, long seed) {
        List<double[]> both = UnitCube.sobol(rows, 2 * inputs, seed);
        List<double[]> points = new ArrayList<>();
        for (int from = 0; from <= inputs; from += inputs) {
            for (double[] point : both) {
                points.add(java.util.Arrays.copyOfRange(point, from, from + inputs));
            }
        }
        for (int i = 0; i < inputs; i++) {
            for (double[] point : both) {
                double[] mixed = java.util.Arrays.copyOf(point, inputs);
                mixed[i] = point[inputs + i];
                points.add(mixed);
            }
        }
        return points;
    }

    /**
     * @param values in the order of {@link #points}; NaN where there is none, its base row is then left out
     * @param inputs d
     * @param seed of the redrawing
     */
    public static SobolIndices of(double[] values, int inputs, long seed) {
        int n = values.length / (inputs + 2);
        List<Integer> whole = new ArrayList<>();
        for (int j = 0; j < n; j++) {
            boolean all = true;
            for (int k = 0; k < inputs + 2; k++) {
                all &= Double.isFinite(values[k * n + j]);
            }
            if (all) {
                whole.add(j);
            }
        }
        int[] rows = whole.stream().mapToInt(Integer::intValue).toArray();
        if (rows.length < 2) {
            throw new IllegalArgumentException("of " + n + " base rows only " + rows.length + " are whole");
        }
        double[][] estimate = estimate(values, n, inputs, rows);
        double[][] sum = new double[2][inputs];
        double[][] squares = new double[2][inputs];
        SplittableRandom random = new SplittableRandom(seed);
        for (int b = 0; b < REDRAWN; b++) {
            int[] drawn =
                    random.ints(rows.length, 0, rows.length).map(i -> rows[i]).toArray();
            double[][] each = estimate(values, n, inputs, drawn);
            for (int k = 0; k < 2; k++) {
                for (int i = 0; i < inputs; i++) {
                    sum[k][i] += each[k][i];
                    squares[k][i] += each[k][i] * each[k][i];
                }
            }
        }
        double[][] error = new double[2][inputs];
        for (int k = 0; k < 2; k++) {
            for (int i = 0; i < inputs; i++) {
                double mean = sum[k][i] / REDRAWN;
                error[k][i] = Math.sqrt(Math.max(0, squares[k][i] / REDRAWN - mean * mean));
            }
        }
        return new SobolIndices(estimate[0], error[0], estimate[1], error[1], rows.length);
    }

    private static double[][] estimate(double[] values, int n, int inputs, int[] rows) {
        double mean = 0;
        for (int j : rows) {
            mean += (values[j] + values[n + j]) / (2.0 * rows.length);
        }
        double variance = 0;
        for (int j : rows) {
            double a = values[j] - mean;
            double b = values[n + j] - mean;
            variance += (a * a + b * b) / (2.0 * rows.length);
        }
        double[][] result = new double[2][inputs];
        for (int i = 0; i < inputs; i++) {
            for (int j : rows) {
                double a = values[j];
                double mixed = values[(2 + i) * n + j];
                result[0][i] += (values[n + j] - mean) * (mixed - a) / rows.length;
                result[1][i] += (a - mixed) * (a - mixed) / (2.0 * rows.length);
            }
            result[0][i] = variance > 0 ? result[0][i] / variance : 0;
            result[1][i] = variance > 0 ? result[1][i] / variance : 0;
        }
        return result;
    }
}
