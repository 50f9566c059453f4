// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import tubwright.engine.joint.FastenerFlexibility.Plate;

/**
 * Shares of a line of fasteners, one behind another, in the load that goes from one plate into the other in single shear:
 * plates as bars, fasteners as springs (Tate and Rosenfeld 1946).
 *
 * @param one plate that comes from before the first row
 * @param two plate that goes on after the last
 * @param pitch distances between neighbouring rows, m: one fewer than rows
 * @param width of plate that goes with one fastener, m
 * @param flexibility of each fastener, m/N
 */
public record FastenerRow(Plate one, Plate two, double[] pitch, double width, double[] flexibility) {
    public FastenerRow {
        if (flexibility.length < 1 || pitch.length != flexibility.length - 1) {
            throw new IllegalArgumentException("a line of " + flexibility.length + " fasteners has "
                    + (flexibility.length - 1) + " pitches, not " + pitch.length);
        }
    }

    /** Rows alike and evenly spaced. */
    public static FastenerRow even(Plate one, Plate two, int rows, double pitch, double width, double flexibility) {
        double[] pitches = new double[rows - 1];
        double[] springs = new double[rows];
        java.util.Arrays.fill(pitches, pitch);
        java.util.Arrays.fill(springs, flexibility);
        return new FastenerRow(one, two, pitches, width, springs);
    }

    /** Share of each fastener, from the first row on; they sum to one. */
    public double[] shares() {
        int n = flexibility.length;
        // C(i+1) R(i+1) − C(i) R(i) = stretch of plate two less that of plate one between the rows; and ΣR = 1.
        double[][] a = new double[n][n + 1];
        for (int i = 0; i < n - 1; i++) {
            double s1 = pitch[i] * one.compliance() / width;
            double s2 = pitch[i] * two.compliance() / width;
            for (int j = 0; j <= i; j++) {
                a[i][j] = -(s1 + s2);
            }
            a[i][i] -= flexibility[i];
            a[i][i + 1] += flexibility[i + 1];
            a[i][n] = -s1;
        }
        java.util.Arrays.fill(a[n - 1], 1);
        return solve(a);
    }

    /** Slip of the whole joint per load: first row of plate one against last row of plate two, m/N. */
    public double jointFlexibility() {
        double[] shares = shares();
        double slip = flexibility[0] * shares[0];
        double through = 0;
        for (int i = 0; i < pitch.length; i++) {
            through += shares[i];
            slip += through * pitch[i] * two.compliance() / width;
        }
        return slip;
    }

    private static double[] solve(double[][] a) {
        int n = a.length;
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                if (Math.abs(a[i][k]) > Math.abs(a[pivot][k])) {
                    pivot = i;
                }
            }
            double[] row = a[pivot];
            a[pivot] = a[k];
            a[k] = row;
            for (int i = k + 1; i < n; i++) {
                double factor = a[i][k] / row[k];
                for (int j = k; j <= n; j++) {
                    a[i][j] -= factor * row[j];
                }
            }
        }
        double[] x = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = a[i][n];
            for (int j = i + 1; j < n; j++) {
                sum -= a[i][j] * x[j];
            }
            x[i] = sum / a[i][i];
        }
        return x;
    }
}
