// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.function.DoubleUnaryOperator;

/**
 * Shell of revolution under the pressure cos 2θ, by harmonics round it and high polynomials along its meridian: what
 * first-order shear theory says, with boundary layers, free of elements.
 *
 * <p>Half of a shell of radius r(y), 0 ≤ y ≤ 1, symmetric about y = 0. Motion U cos 2θ along the meridian, V sin 2θ round,
 * W cos 2θ outward, directors turning by X cos 2θ and Y sin 2θ. Strain at height ζ is e·(u + ζβ),i /(1 + ζ k) to first
 * order in ζ, in the axes of the surface; k the principal curvatures (Naghdi's shell).
 */
record RevolvedShellSeries(
        DoubleUnaryOperator radius, DoubleUnaryOperator slope, DoubleUnaryOperator bend, boolean clamped) {
    private static final int FIELDS = 5;
    private static final int ROWS = 8;

    /**
     * Strain energy of the whole shell, J.
     *
     * @param laminate 8×8, isotropic or with axes along and round
     * @param pressure Pa, at θ = 0
     * @param degree of the polynomials
     */
    double energy(double[] laminate, double pressure, int degree) {
        int each = degree + 1;
        int[] place = new int[FIELDS * each];
        int count = 0;
        for (int k = 0; k < each; k++) {
            for (int f = 0; f < FIELDS; f++) {
                boolean odd = f == 0 || f == 3;
                boolean gone = k == 0 && odd || k == 1 && clamped;
                place[f * each + k] = gone ? -1 : count++;
            }
        }
        EnvelopeSolver solver = new EnvelopeSolver(new int[count]);
        double[] load = new double[count];
        double[][] k = new double[count][count];
        int points = degree + 12;
        double[] at = new double[points];
        double[] weight = new double[points];
        gauss(points, at, weight);
        double[] value = new double[each];
        double[] gradient = new double[each];
        double[][] b = new double[ROWS][];
        for (int p = 0; p < points; p++) {
            double y = (at[p] + 1) / 2;
            double metric = metric(y);
            double dA = weight[p] / 2 * metric * radius.applyAsDouble(y);
            functions(at[p], value, gradient);
            for (int i = 0; i < each; i++) {
                gradient[i] *= 2 / metric;
            }
            strains(y, value, gradient, place, count, b);
            double[][] cb = new double[ROWS][count];
            for (int r = 0; r < ROWS; r++) {
                for (int s = 0; s < ROWS; s++) {
                    double c = dA * laminate[ROWS * r + s];
                    for (int j = 0; c != 0 && j < count; j++) {
                        cb[r][j] += c * b[s][j];
                    }
                }
            }
            for (int r = 0; r < ROWS; r++) {
                for (int i = 0; i < count; i++) {
                    double f = b[r][i];
                    for (int j = 0; f != 0 && j <= i; j++) {
                        k[i][j] += f * cb[r][j];
                    }
                }
            }
            for (int i = 0; i < each; i++) {
                int w = place[2 * each + i];
                if (w >= 0) {
                    load[w] += dA * pressure * value[i];
                }
            }
        }
        for (int i = 0; i < count; i++) {
            for (int j = 0; j <= i; j++) {
                solver.add(i, j, k[i][j]);
            }
        }
        double[] u = load.clone();
        solver.factorise();
        solver.solve(u);
        double work = 0;
        for (int i = 0; i < count; i++) {
            work += load[i] * u[i];
        }
        // Squares of cosine and sine round the shell are π; both halves of it; energy is half the work.
        return Math.PI * work;
    }

    private double metric(double y) {
        return Math.hypot(1, slope.applyAsDouble(y));
    }

    /** The eight strains, the first of cos 2θ or sin 2θ as it falls out, on the coefficients. */
    private void strains(double y, double[] v, double[] d, int[] place, int count, double[][] b) {
        double m = metric(y);
        double r = radius.applyAsDouble(y);
        double k1 = -bend.applyAsDouble(y) / (m * m * m);
        double k2 = 1 / (r * m);
        double g = slope.applyAsDouble(y) / (r * m);
        double h = 2 / r;
        int each = v.length;
        for (int row = 0; row < ROWS; row++) {
            b[row] = new double[count];
        }
        for (int i = 0; i < each; i++) {
            int u = place[i];
            int t = place[each + i];
            int w = place[2 * each + i];
            int x = place[3 * each + i];
            int z = place[4 * each + i];
            put(b, u, d[i], g * v[i], -h * v[i], -k1 * d[i], -k2 * g * v[i], k2 * h * v[i], -k1 * v[i], 0);
            double round = d[i];
            put(b, t, 0, h * v[i], round - g * v[i], 0, -k2 * h * v[i], k2 * g * v[i] - k1 * round, 0, -k2 * v[i]);
            put(b, w, k1 * v[i], k2 * v[i], 0, -k1 * k1 * v[i], -k2 * k2 * v[i], 0, d[i], -h * v[i]);
            put(b, x, 0, 0, 0, d[i], g * v[i], -h * v[i], v[i], 0);
            put(b, z, 0, 0, 0, 0, h * v[i], round - g * v[i], 0, v[i]);
        }
    }

    private static void put(double[][] b, int column, double... rows) {
        if (column >= 0) {
            for (int r = 0; r < ROWS; r++) {
                b[r][column] = rows[r];
            }
        }
    }

    /** Two linear functions that are one at an end each, and integrals of Legendre's polynomials, zero at both. */
    private static void functions(double x, double[] value, double[] gradient) {
        value[0] = (1 - x) / 2;
        value[1] = (1 + x) / 2;
        gradient[0] = -.5;
        gradient[1] = .5;
        double before = 1;
        double now = x;
        for (int k = 2; k < value.length; k++) {
            double next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
            double scale = Math.sqrt(2 * (2 * k - 1));
            value[k] = (next - before) / scale;
            gradient[k] = (2 * k - 1) * now / scale;
            before = now;
            now = next;
        }
    }

    /** Points and weights of Gauss on (−1, 1), by Newton's iteration on Legendre's polynomial. */
    private static void gauss(int n, double[] at, double[] weight) {
        for (int i = 0; i < n; i++) {
            double x = Math.cos(Math.PI * (i + .75) / (n + .5));
            double slope = 1;
            for (int pass = 0; pass < 100; pass++) {
                double before = 1;
                double now = x;
                for (int k = 2; k <= n; k++) {
                    double next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
                    before = now;
                    now = next;
                }
                slope = n * (x * now - before) / (x * x - 1);
                double step = now / slope;
                x -= step;
                if (Math.abs(step) < 1e-15) {
                    break;
                }
            }
            at[i] = x;
            weight[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }
}
