// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/** Area integrals of loads and mass that quads and triangles share. */
final class ShellLoads {
    private ShellLoads() {}

    /** Area-scaled normal x,r × x,s. */
    static void normal(double[] x, double[] nr, double[] ns, int nodes, double[] n) {
        double rx = 0;
        double ry = 0;
        double rz = 0;
        double sx = 0;
        double sy = 0;
        double sz = 0;
        for (int i = 0; i < nodes; i++) {
            rx += nr[i] * x[3 * i];
            ry += nr[i] * x[3 * i + 1];
            rz += nr[i] * x[3 * i + 2];
            sx += ns[i] * x[3 * i];
            sy += ns[i] * x[3 * i + 1];
            sz += ns[i] * x[3 * i + 2];
        }
        n[0] = ry * sz - rz * sy;
        n[1] = rz * sx - rx * sz;
        n[2] = rx * sy - ry * sx;
    }

    static double area(double[] x, double[] nr, double[] ns, int nodes) {
        double[] n = new double[3];
        normal(x, nr, ns, nodes, n);
        return Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    }

    /** Kinetic energy ½∫(I0 u̇² + 2 I1 u̇·β̇ + I2 β̇²) with β = Σ N θ × n, from nn = ∫ N_i N_j. */
    static void mass(double[] nn, double[] d, int nodes, double i0, double i1, double i2, double[] mass) {
        int f = 6 * nodes;
        java.util.Arrays.fill(mass, 0, f * f, 0);
        for (int i = 0; i < nodes; i++) {
            for (int j = 0; j < nodes; j++) {
                double w = nn[nodes * i + j];
                double dot = d[3 * i] * d[3 * j] + d[3 * i + 1] * d[3 * j + 1] + d[3 * i + 2] * d[3 * j + 2];
                for (int a = 0; a < 3; a++) {
                    int row = 6 * i + a;
                    mass[row * f + 6 * j + a] = w * i0;
                    for (int b = 0; b < 3; b++) {
                        // β = θ × n = −[n]× θ, so u·β couples through −[n]×, β·β through [n_i]×ᵀ [n_j]×.
                        mass[row * f + 6 * j + 3 + b] = -w * i1 * skew(d, 3 * j, a, b);
                        mass[(row + 3) * f + 6 * j + b] = -w * i1 * skew(d, 3 * i, b, a);
                        double delta = a == b ? dot : 0;
                        mass[(row + 3) * f + 6 * j + 3 + b] = w * i2 * (delta - d[3 * j + a] * d[3 * i + b]);
                    }
                }
            }
        }
    }

    private static double skew(double[] n, int o, int a, int b) {
        if (a == b) {
            return 0;
        }
        int c = 3 - a - b;
        return (a + 1) % 3 == b ? -n[o + c] : n[o + c];
    }

    /** Adds weight of a nodal share of area: force I0 g and moment n × I1 g. */
    static void weight(double[] d, int i, double share, double i0, double i1, double[] g, double[] load) {
        double x = d[3 * i];
        double y = d[3 * i + 1];
        double z = d[3 * i + 2];
        double m = share * i1;
        for (int c = 0; c < 3; c++) {
            load[6 * i + c] += share * i0 * g[c];
        }
        load[6 * i + 3] += m * (y * g[2] - z * g[1]);
        load[6 * i + 4] += m * (z * g[0] - x * g[2]);
        load[6 * i + 5] += m * (x * g[1] - y * g[0]);
    }
}
