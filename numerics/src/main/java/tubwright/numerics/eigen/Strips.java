// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.List;

/** Products of tall thin blocks of vectors, a strip of rows at a time, arranged so that loads are shared. */
final class Strips {
    private Strips() {}

    /** Adds v_i · w_k over rows [from, to) to {@code sums[k][i]}. */
    static void addDots(List<double[]> v, double[][] w, int from, int to, double[][] sums) {
        int count = v.size();
        int i = 0;
        for (; i + 4 <= count; i += 4) {
            double[] v0 = v.get(i);
            double[] v1 = v.get(i + 1);
            double[] v2 = v.get(i + 2);
            double[] v3 = v.get(i + 3);
            int k = 0;
            for (; k + 2 <= w.length; k += 2) {
                addDots(v0, v1, v2, v3, w[k], w[k + 1], from, to, sums[k], sums[k + 1], i);
            }
            for (; k < w.length; k++) {
                addDots(v0, v1, v2, v3, w[k], from, to, sums[k], i);
            }
        }
        for (; i < count; i++) {
            for (int k = 0; k < w.length; k++) {
                sums[k][i] += dot(v.get(i), w[k], from, to);
            }
        }
    }

    private static void addDots(
            double[] v0,
            double[] v1,
            double[] v2,
            double[] v3,
            double[] w0,
            double[] w1,
            int from,
            int to,
            double[] sums0,
            double[] sums1,
            int i) {
        double s00 = 0;
        double s01 = 0;
        double s02 = 0;
        double s03 = 0;
        double s10 = 0;
        double s11 = 0;
        double s12 = 0;
        double s13 = 0;
        for (int r = from; r < to; r++) {
            double a = w0[r];
            double b = w1[r];
            s00 = Math.fma(a, v0[r], s00);
            s01 = Math.fma(a, v1[r], s01);
            s02 = Math.fma(a, v2[r], s02);
            s03 = Math.fma(a, v3[r], s03);
            s10 = Math.fma(b, v0[r], s10);
            s11 = Math.fma(b, v1[r], s11);
            s12 = Math.fma(b, v2[r], s12);
            s13 = Math.fma(b, v3[r], s13);
        }
        sums0[i] += s00;
        sums0[i + 1] += s01;
        sums0[i + 2] += s02;
        sums0[i + 3] += s03;
        sums1[i] += s10;
        sums1[i + 1] += s11;
        sums1[i + 2] += s12;
        sums1[i + 3] += s13;
    }

    private static void addDots(
            double[] v0, double[] v1, double[] v2, double[] v3, double[] w, int from, int to, double[] sums, int i) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        for (int r = from; r < to; r++) {
            double a = w[r];
            s0 = Math.fma(a, v0[r], s0);
            s1 = Math.fma(a, v1[r], s1);
            s2 = Math.fma(a, v2[r], s2);
            s3 = Math.fma(a, v3[r], s3);
        }
        sums[i] += s0;
        sums[i + 1] += s1;
        sums[i + 2] += s2;
        sums[i + 3] += s3;
    }

    /** Adds sign times the sum over i of {@code f[k][i] v_i} to w_k on rows [from, to). */
    static void addCombination(double sign, List<double[]> v, double[][] f, double[][] w, int from, int to) {
        for (int k = 0; k < w.length; k++) {
            int count = f[k].length;
            int i = 0;
            for (; i + 4 <= count; i += 4) {
                addFour(
                        v.get(i),
                        v.get(i + 1),
                        v.get(i + 2),
                        v.get(i + 3),
                        sign * f[k][i],
                        sign * f[k][i + 1],
                        sign * f[k][i + 2],
                        sign * f[k][i + 3],
                        w[k],
                        from,
                        to);
            }
            for (; i < count; i++) {
                double[] vi = v.get(i);
                double c = sign * f[k][i];
                for (int r = from; r < to; r++) {
                    w[k][r] += c * vi[r];
                }
            }
        }
    }

    private static void addFour(
            double[] v0,
            double[] v1,
            double[] v2,
            double[] v3,
            double c0,
            double c1,
            double c2,
            double c3,
            double[] w,
            int from,
            int to) {
        for (int r = from; r < to; r++) {
            w[r] += c0 * v0[r] + c1 * v1[r] + (c2 * v2[r] + c3 * v3[r]);
        }
    }

    /** x · y over rows [from, to). */
    static double dot(double[] x, double[] y, int from, int to) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int i = from;
        for (; i + 4 <= to; i += 4) {
            s0 += x[i] * y[i];
            s1 += x[i + 1] * y[i + 1];
            s2 += x[i + 2] * y[i + 2];
            s3 += x[i + 3] * y[i + 3];
        }
        for (; i < to; i++) {
            s0 += x[i] * y[i];
        }
        return s0 + s1 + (s2 + s3);
    }
}
