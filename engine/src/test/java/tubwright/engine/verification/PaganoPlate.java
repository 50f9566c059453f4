// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.ArrayList;
import java.util.List;

/**
 * A simply supported laminated plate under p = q sin(πx/a) sin(πy/b) on its top face, by the three-dimensional theory of
 * elasticity (Pagano 1970, J. Compos. Mater. 4:20; Pagano and Hatfield 1972), solved by the state-space method: the state
 * (u, v, σz, τxz, τyz, w) of each layer is carried through the thickness by its matrix exponential, the layers subdivided
 * and the boundary conditions met by parallel shooting, so that thick cores do not lose digits.
 */
final class PaganoPlate {
    /** One layer: moduli along the plate's axes. */
    record Layer3(
            double thickness,
            double ex,
            double ey,
            double ez,
            double nuxy,
            double nuxz,
            double nuyz,
            double gxy,
            double gxz,
            double gyz) {
        /** A transversely isotropic ply along x (0°) or y (90°). */
        static Layer3 ply(double t, double degrees, double el, double et, double glt, double gtt, double nu) {
            double nuT = nu * et / el;
            return degrees == 0
                    ? new Layer3(t, el, et, et, nu, nu, nu, glt, glt, gtt)
                    : new Layer3(t, et, el, et, nuT, nu, nu, glt, gtt, glt);
        }
    }

    private final List<Layer3> layers;
    private final double alpha;
    private final double beta;
    private final List<double[]> states = new ArrayList<>();
    private final List<Double> depths = new ArrayList<>();

    /** Layers from the bottom up; spans a along x and b along y; unit load. */
    PaganoPlate(List<Layer3> layers, double a, double b) {
        this.layers = layers;
        alpha = Math.PI / a;
        beta = Math.PI / b;
        solve();
    }

    /** 3 × 3 stiffness (σx, σy, σz) of a layer. */
    private static double[][] normal(Layer3 l) {
        double[][] s = {
            {1 / l.ex, -l.nuxy / l.ex, -l.nuxz / l.ex},
            {-l.nuxy / l.ex, 1 / l.ey, -l.nuyz / l.ey},
            {-l.nuxz / l.ex, -l.nuyz / l.ey, 1 / l.ez}
        };
        double[][] c = new double[3][3];
        double det = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                c[j][i] = s[(i + 1) % 3][(j + 1) % 3] * s[(i + 2) % 3][(j + 2) % 3]
                        - s[(i + 1) % 3][(j + 2) % 3] * s[(i + 2) % 3][(j + 1) % 3];
            }
        }
        for (int j = 0; j < 3; j++) {
            det += s[0][j] * c[j][0];
        }
        for (double[] row : c) {
            for (int j = 0; j < 3; j++) {
                row[j] /= det;
            }
        }
        return c;
    }

    /** d/dz of the amplitudes (u, v, w, τxz, τyz, σz). */
    private double[][] system(Layer3 l) {
        double[][] c = normal(l);
        double p = alpha;
        double q = beta;
        double c33 = c[2][2];
        // σx = c11 εx + c12 εy + c13 εz with εz from σz; amplitudes εx = -p u, εy = -q v.
        double k11 = c[0][0] - c[0][2] * c[0][2] / c33;
        double k12 = c[0][1] - c[0][2] * c[1][2] / c33;
        double k22 = c[1][1] - c[1][2] * c[1][2] / c33;
        double r1 = c[0][2] / c33;
        double r2 = c[1][2] / c33;
        double g = l.gxy;
        double[][] m = new double[6][6];
        m[0] = new double[] {0, 0, -p, 1 / l.gxz, 0, 0};
        m[1] = new double[] {0, 0, -q, 0, 1 / l.gyz, 0};
        m[2] = new double[] {r1 * p, r2 * q, 0, 0, 0, 1 / c33};
        // τxz' = -σx,x - τxy,y and so on
        m[3] = new double[] {k11 * p * p + g * q * q, (k12 + g) * p * q, 0, 0, 0, -r1 * p};
        m[4] = new double[] {(k12 + g) * p * q, k22 * q * q + g * p * p, 0, 0, 0, -r2 * q};
        m[5] = new double[] {0, 0, 0, p, q, 0};
        return m;
    }

    private void solve() {
        List<double[][]> steps = new ArrayList<>();
        double z = 0;
        depths.add(0.0);
        for (int k = 0; k < layers.size(); k++) {
            Layer3 l = layers.get(k);
            int parts = Math.max(4, 2 * (int) Math.ceil(l.thickness * Math.hypot(alpha, beta) * 6));
            double[][] e = exponential(system(l), l.thickness / parts);
            for (int i = 0; i < parts; i++) {
                steps.add(e);
                z += l.thickness / parts;
                depths.add(z);
            }
        }
        int n = steps.size();
        int size = 6 * (n + 1);
        double[][] a = new double[size][size + 1];
        // Bottom and top faces: no shear, σz given.
        for (int i = 0; i < 3; i++) {
            a[i][3 + i] = 1;
            a[3 + i][6 * n + 3 + i] = 1;
        }
        a[5][size] = 1;
        for (int k = 0; k < n; k++) {
            for (int i = 0; i < 6; i++) {
                int row = 6 + 6 * k + i;
                a[row][6 * (k + 1) + i] = -1;
                for (int j = 0; j < 6; j++) {
                    a[row][6 * k + j] += steps.get(k)[i][j];
                }
            }
        }
        double[] x = gauss(a);
        for (int k = 0; k <= n; k++) {
            double[] s = new double[6];
            System.arraycopy(x, 6 * k, s, 0, 6);
            states.add(s);
        }
    }

    private static double[][] exponential(double[][] m, double h) {
        double[][] sum = new double[6][6];
        double[][] term = new double[6][6];
        for (int i = 0; i < 6; i++) {
            sum[i][i] = 1;
            term[i][i] = 1;
        }
        for (int order = 1; order < 40; order++) {
            double[][] next = new double[6][6];
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    for (int k = 0; k < 6; k++) {
                        next[i][j] += term[i][k] * m[k][j] * h / order;
                    }
                }
            }
            term = next;
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    sum[i][j] += term[i][j];
                }
            }
        }
        return sum;
    }

    /** Gauss with scaled rows and column pivots; the last column is the right-hand side. */
    private static double[] gauss(double[][] a) {
        int n = a.length;
        for (double[] row : a) {
            double most = 0;
            for (int j = 0; j < n; j++) {
                most = Math.max(most, Math.abs(row[j]));
            }
            for (int j = 0; j <= n; j++) {
                row[j] /= most;
            }
        }
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int r = c + 1; r < n; r++) {
                if (Math.abs(a[r][c]) > Math.abs(a[best][c])) {
                    best = r;
                }
            }
            double[] swap = a[c];
            a[c] = a[best];
            a[best] = swap;
            for (int r = c + 1; r < n; r++) {
                double f = a[r][c] / a[c][c];
                if (f != 0) {
                    for (int j = c; j <= n; j++) {
                        a[r][j] -= f * a[c][j];
                    }
                }
            }
        }
        double[] x = new double[n];
        for (int c = n - 1; c >= 0; c--) {
            double s = a[c][n];
            for (int j = c + 1; j < n; j++) {
                s -= a[c][j] * x[j];
            }
            x[c] = s / a[c][c];
        }
        return x;
    }

    private int at(double depth) {
        int k = 0;
        while (k + 1 < depths.size() && depths.get(k + 1) <= depth + 1e-9 * depths.getLast()) {
            k++;
        }
        if (Math.abs(depths.get(k) - depth) > 1e-9 * depths.getLast()) {
            throw new IllegalArgumentException("no state is kept at " + depth);
        }
        return k;
    }

    /** Deflection at the centre, at a depth from the bottom. */
    double deflection(double depth) {
        return states.get(at(depth))[2];
    }

    /** τxz at (0, b/2). */
    double tauXz(double depth) {
        return states.get(at(depth))[3];
    }

    /** τyz at (a/2, 0). */
    double tauYz(double depth) {
        return states.get(at(depth))[4];
    }

    /** σx at the centre; layer says whose, at an interface. */
    double sigmaX(double depth, int layer) {
        return inPlane(depth, layer, 0);
    }

    /** σy at the centre. */
    double sigmaY(double depth, int layer) {
        return inPlane(depth, layer, 1);
    }

    private double inPlane(double depth, int layer, int direction) {
        double[] s = states.get(at(depth));
        double[][] c = normal(layers.get(layer));
        double ex = -alpha * s[0];
        double ey = -beta * s[1];
        double ez = (s[5] - c[2][0] * ex - c[2][1] * ey) / c[2][2];
        return c[direction][0] * ex + c[direction][1] * ey + c[direction][2] * ez;
    }

    /** τxy at the corner. */
    double tauXy(double depth, int layer) {
        double[] s = states.get(at(depth));
        return layers.get(layer).gxy * (beta * s[0] + alpha * s[1]);
    }
}
