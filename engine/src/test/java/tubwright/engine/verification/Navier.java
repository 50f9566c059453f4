// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.function.IntToDoubleFunction;

/**
 * Navier's series for rectangular plates of first-order shear theory: the 5 × 5 system of (U, V, W, X, Y) for one pair of
 * half waves (Reddy 2004, Mechanics of Laminated Composite Plates and Shells, ch. 6 and 7; from memory, checked by its
 * tables). Cross-ply laminates on SS-1 supports, antisymmetric angle-ply ones on SS-2. A cross-ply panel may be curved
 * (Sanders 1959, as in Reddy 1984): w/R adds to the membrane strains, −u/R1 and −v/R2 to the transverse shears.
 *
 * @param c 8 × 8 laminate
 * @param a length along x, m
 * @param b length along y, m
 * @param anglePly SS-2 with B16, B26 instead of SS-1 with B11, B22
 * @param k1 curvature along x, 1/m; along y {@code k2}
 */
record Navier(double[] c, double a, double b, boolean anglePly, double k1, double k2) {
    Navier(double[] c, double a, double b, boolean anglePly) {
        this(c, a, b, anglePly, 0, 0);
    }

    Navier curved(double alongX, double alongY) {
        if (anglePly) {
            throw new IllegalArgumentException("the series of a curved panel is of cross-ply laminates");
        }
        return new Navier(c, a, b, false, alongX, alongY);
    }

    private double[][] system(int m, int n) {
        double p = m * Math.PI / a;
        double q = n * Math.PI / b;
        double[][] s = new double[5][5];
        s[0][0] = c[0] * p * p + c[18] * q * q;
        s[0][1] = (c[1] + c[18]) * p * q;
        s[1][1] = c[18] * p * p + c[9] * q * q;
        if (anglePly) {
            s[0][3] = 2 * c[5] * p * q;
            s[0][4] = c[5] * p * p + c[13] * q * q;
            s[1][4] = 2 * c[13] * p * q;
            s[1][3] = s[0][4];
        } else {
            s[0][3] = c[3] * p * p + c[21] * q * q;
            s[0][4] = (c[4] + c[21]) * p * q;
            s[1][3] = s[0][4];
            s[1][4] = c[21] * p * p + c[12] * q * q;
        }
        s[2][2] = c[54] * p * p + c[63] * q * q;
        s[2][3] = c[54] * p;
        s[2][4] = c[63] * q;
        s[3][3] = c[27] * p * p + c[45] * q * q + c[54];
        s[3][4] = (c[28] + c[45]) * p * q;
        s[4][4] = c[45] * p * p + c[36] * q * q + c[63];
        curve(s, p, q);
        for (int i = 0; i < 5; i++) {
            for (int j = 0; j < i; j++) {
                s[i][j] = s[j][i];
            }
        }
        return s;
    }

    /** What curvature adds above the diagonal: strains of W are k1 and k2, shears of U and V are −k1 and −k2. */
    private void curve(double[][] s, double p, double q) {
        double n1 = c[0] * k1 + c[1] * k2;
        double n2 = c[1] * k1 + c[9] * k2;
        double m1 = c[3] * k1 + c[4] * k2;
        double m2 = c[4] * k1 + c[12] * k2;
        s[0][0] += c[54] * k1 * k1;
        s[1][1] += c[63] * k2 * k2;
        s[0][2] -= p * (n1 + c[54] * k1);
        s[1][2] -= q * (n2 + c[63] * k2);
        s[2][2] += k1 * n1 + k2 * n2;
        s[0][3] -= c[54] * k1;
        s[1][4] -= c[63] * k2;
        s[2][3] -= p * m1;
        s[2][4] -= q * m2;
    }

    /** Stiffness of w alone, the other four condensed. */
    double condensed(int m, int n) {
        return condensed(system(m, n), 4, 0, 1, 3, 4, 2)[4][4];
    }

    /** Rows and columns in the given order, the first ones eliminated. */
    private static double[][] condensed(double[][] s, int eliminated, int... order) {
        double[][] t = new double[5][5];
        for (int i = 0; i < 5; i++) {
            for (int j = 0; j < 5; j++) {
                t[i][j] = s[order[i]][order[j]];
            }
        }
        for (int k = 0; k < eliminated; k++) {
            for (int i = k + 1; i < 5; i++) {
                double f = t[i][k] / t[k][k];
                for (int j = k; j < 5; j++) {
                    t[i][j] -= f * t[k][j];
                }
            }
        }
        return t;
    }

    /** As {@link #buckling}, the compression working on the gradient of all three displacements, not of w alone. */
    double bucklingOfFullGradient(double ratio) {
        double least = Double.POSITIVE_INFINITY;
        for (int m = 1; m < 12; m++) {
            for (int n = 1; n < 6; n++) {
                double[][] t = condensed(system(m, n), 2, 3, 4, 0, 1, 2);
                double[] three = new double[9];
                for (int i = 0; i < 9; i++) {
                    three[i] = t[2 + i / 3][2 + i % 3];
                }
                double p = m * Math.PI / a;
                double q = n * Math.PI / b;
                least = Math.min(least, Eigenvalues.of(three, 3)[0] / (p * p + ratio * q * q));
            }
        }
        return least;
    }

    /** Deflection at the middle under a uniform pressure. */
    double uniformDeflection(double pressure, int terms) {
        double w = 0;
        for (int m = 1; m <= terms; m += 2) {
            for (int n = 1; n <= terms; n += 2) {
                double sign = (m + n) / 2 % 2 == 1 ? 1 : -1;
                w += sign * 16 * pressure / (Math.PI * Math.PI * m * n) / condensed(m, n);
            }
        }
        return w;
    }

    /** Smallest compression along x for the given ratio of compression along y to it. */
    double buckling(double ratio) {
        double least = Double.POSITIVE_INFINITY;
        for (int m = 1; m < 12; m++) {
            for (int n = 1; n < 6; n++) {
                double p = m * Math.PI / a;
                double q = n * Math.PI / b;
                least = Math.min(least, condensed(m, n) / (p * p + ratio * q * q));
            }
        }
        return least;
    }

    /** Circular frequency of the lowest mode with these half waves. */
    double frequency(int m, int n, double i0, double i2) {
        double[][] s = system(m, n);
        IntToDoubleFunction root = i -> Math.sqrt(i < 3 ? i0 : i2);
        double[] scaled = new double[25];
        for (int i = 0; i < 5; i++) {
            for (int j = 0; j < 5; j++) {
                scaled[5 * i + j] = s[i][j] / (root.applyAsDouble(i) * root.applyAsDouble(j));
            }
        }
        return Math.sqrt(Eigenvalues.of(scaled, 5)[0]);
    }
}
