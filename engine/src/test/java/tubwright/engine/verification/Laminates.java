// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

/** Laminate stiffness matrices (8×8) for element tests, written out so that they depend on nothing else. */
final class Laminates {
    private Laminates() {}

    /** Isotropic plate of Young's modulus e, Poisson's ratio nu and thickness t; shear factor 5/6. */
    static double[] isotropic(double e, double nu, double t) {
        double[] c = new double[64];
        double q = e / (1 - nu * nu);
        for (int k = 0; k < 2; k++) {
            double f = q * (k == 0 ? t : t * t * t / 12);
            int o = 27 * k;
            c[o] = f;
            c[o + 1] = nu * f;
            c[o + 8] = nu * f;
            c[o + 9] = f;
            c[o + 18] = f * (1 - nu) / 2;
        }
        double s = 5.0 / 6 * e / (2 * (1 + nu)) * t;
        c[54] = s;
        c[63] = s;
        return c;
    }

    /** Plies of equal thickness from the bottom (−) side up, shifted so that the reference surface is at height 0. */
    static double[] stack(
            double e1, double e2, double nu12, double g12, double g23, double ply, double shift, double... angles) {
        double[] c = new double[64];
        double nu21 = nu12 * e2 / e1;
        double d = 1 - nu12 * nu21;
        double q11 = e1 / d;
        double q22 = e2 / d;
        double q12 = nu12 * e2 / d;
        double z0 = -ply * angles.length / 2 + shift;
        for (int k = 0; k < angles.length; k++) {
            double m = Math.cos(Math.toRadians(angles[k]));
            double n = Math.sin(Math.toRadians(angles[k]));
            // Rows of T: ply strains from laminate strains (ε1, ε2, γ12).
            double[][] t = {{m * m, n * n, m * n}, {n * n, m * m, -m * n}, {-2 * m * n, 2 * m * n, m * m - n * n}};
            double[][] q = {{q11, q12, 0}, {q12, q22, 0}, {0, 0, g12}};
            double a = z0 + k * ply;
            double b = a + ply;
            double[] w = {b - a, (b * b - a * a) / 2, (b * b * b - a * a * a) / 3};
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    double v = 0;
                    for (int r = 0; r < 3; r++) {
                        for (int s = 0; s < 3; s++) {
                            v += t[r][i] * q[r][s] * t[s][j];
                        }
                    }
                    c[8 * i + j] += w[0] * v;
                    c[8 * i + j + 3] += w[1] * v;
                    c[8 * (i + 3) + j] += w[1] * v;
                    c[8 * (i + 3) + j + 3] += w[2] * v;
                }
            }
            double f = 5.0 / 6 * ply;
            c[54] += f * (g12 * m * m + g23 * n * n);
            c[55] += f * (g12 - g23) * m * n;
            c[62] += f * (g12 - g23) * m * n;
            c[63] += f * (g12 * n * n + g23 * m * m);
        }
        return c;
    }
}
