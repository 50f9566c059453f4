// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

/** Scalar products of one row with several vectors, four at a time so that each number of the row is fetched once. */
final class Dots {
    private Dots() {}

    /**
     * Σ_j row[offset + j] y_c[j] over from ≤ j < to.
     *
     * @param into one sum a vector
     */
    static void of(double[] row, int offset, double[][] y, int from, int to, double[] into) {
        int c = 0;
        for (; c + 4 <= y.length; c += 4) {
            four(row, offset, y[c], y[c + 1], y[c + 2], y[c + 3], from, to, into, c);
        }
        for (; c < y.length; c++) {
            double sum = 0;
            for (int j = from; j < to; j++) {
                sum = Math.fma(row[offset + j], y[c][j], sum);
            }
            into[c] = sum;
        }
    }

    private static void four(
            double[] row,
            int offset,
            double[] y0,
            double[] y1,
            double[] y2,
            double[] y3,
            int from,
            int to,
            double[] into,
            int c) {
        double a0 = 0;
        double a1 = 0;
        double a2 = 0;
        double a3 = 0;
        double b0 = 0;
        double b1 = 0;
        double b2 = 0;
        double b3 = 0;
        int j = from;
        for (; j + 2 <= to; j += 2) {
            double r = row[offset + j];
            double s = row[offset + j + 1];
            a0 = Math.fma(r, y0[j], a0);
            a1 = Math.fma(r, y1[j], a1);
            a2 = Math.fma(r, y2[j], a2);
            a3 = Math.fma(r, y3[j], a3);
            b0 = Math.fma(s, y0[j + 1], b0);
            b1 = Math.fma(s, y1[j + 1], b1);
            b2 = Math.fma(s, y2[j + 1], b2);
            b3 = Math.fma(s, y3[j + 1], b3);
        }
        for (; j < to; j++) {
            double r = row[offset + j];
            a0 = Math.fma(r, y0[j], a0);
            a1 = Math.fma(r, y1[j], a1);
            a2 = Math.fma(r, y2[j], a2);
            a3 = Math.fma(r, y3[j], a3);
        }
        into[c] = a0 + b0;
        into[c + 1] = a1 + b1;
        into[c + 2] = a2 + b2;
        into[c + 3] = a3 + b3;
    }
}
