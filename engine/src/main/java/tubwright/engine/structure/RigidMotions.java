// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;
import java.util.List;
import tubwright.numerics.SmallDense;
import tubwright.numerics.SymmetricMatrix;

/** The six rigid motions of a structure about its centre of mass, and what a mode has of them. */
final class RigidMotions {
    private final double[][] momenta = new double[6][];
    private final double[][] inertia = new double[6][6];
    private final double[][] central;

    /**
     * @param positions 3 per node, m
     * @param mass the mass matrix, nothing fixed
     */
    RigidMotions(double[] positions, SymmetricMatrix mass) {
        double[][] motions = motions(positions, new double[3]);
        double[] alongX = mass.multiply(motions[0]);
        double[] alongY = mass.multiply(motions[1]);
        double total = dot(alongX, motions[0]);
        // Turning about y moves along x by z, about z moves along x by -y; about z moves along y by x.
        double[] centre = {
            dot(alongY, motions[5]) / total, -dot(alongX, motions[5]) / total, dot(alongX, motions[4]) / total
        };
        central = motions(positions, centre);
        for (int i = 0; i < 6; i++) {
            momenta[i] = mass.multiply(central[i]);
            for (int j = 0; j < 6; j++) {
                inertia[i][j] = dot(momenta[i], central[j]);
            }
        }
    }

    /** The motions: along and about each axis through the centre of mass, 6 numbers per node. */
    List<double[]> motions() {
        return List.of(central);
    }

    /** Mass times each motion, kg and kg·m. */
    double[][] momenta() {
        return momenta;
    }

    /** Mass of all that moves, kg. */
    double mass() {
        return inertia[0][0];
    }

    /** Momentum of a shape along (kg·m) and about (kg·m²) each axis. */
    double[] momentum(double[] shape) {
        double[] p = new double[6];
        for (int i = 0; i < 6; i++) {
            p[i] = dot(momenta[i], shape);
        }
        return p;
    }

    /** Modal mass of the rigid part of a shape: pᵀ I⁻¹ p. One for a rigid mode of unit modal mass. */
    double rigidShare(double[] shape) {
        double[] p = momentum(shape);
        double[][] a = new double[6][];
        for (int i = 0; i < 6; i++) {
            a[i] = inertia[i].clone();
        }
        double sum = 0;
        // Elimination L D Lᵀ: pᵀ I⁻¹ p = Σ (L⁻¹p)²/d.
        for (int k = 0; k < 6; k++) {
            if (!(a[k][k] > 1e-12 * inertia[k][k])) {
                continue;
            }
            sum += p[k] * p[k] / a[k][k];
            for (int i = k + 1; i < 6; i++) {
                double f = a[i][k] / a[k][k];
                p[i] -= f * p[k];
                for (int j = k; j < 6; j++) {
                    a[i][j] -= f * a[k][j];
                }
            }
        }
        return sum;
    }

    /** Takes from the loads what accelerates the body as a rigid one, f − M R I⁻¹ Rᵀ f: the rest is in balance. */
    void balance(double[] loads) {
        double[][] a = new double[6][7];
        for (int i = 0; i < 6; i++) {
            System.arraycopy(inertia[i], 0, a[i], 0, 6);
            a[i][6] = dot(central[i], loads);
        }
        // About the centre of mass the inertia is positive definite, so elimination needs no exchange of rows.
        for (int k = 0; k < 6; k++) {
            for (int i = 0; i < 6; i++) {
                double f = i == k ? 0 : a[i][k] / a[k][k];
                for (int j = k; j < 7 && f != 0; j++) {
                    a[i][j] -= f * a[k][j];
                }
            }
        }
        for (int i = 0; i < 6; i++) {
            double acceleration = a[i][6] / a[i][i];
            for (int j = 0; j < loads.length; j++) {
                loads[j] -= acceleration * momenta[i][j];
            }
        }
    }

    /**
     * Brings the loads of a free body that were in balance into it again when some of it has gone, if only its own inertia: what is
     * left is accelerated by what it lost.
     *
     * @param gone unknowns
     */
    void balanceWithout(boolean[] gone, double[] loads) {
        double[][] left = new double[6][6];
        double[] lost = new double[6];
        for (int i = 0; i < loads.length; i++) {
            for (int j = 0; j < 6; j++) {
                lost[j] += gone[i] ? central[j][i] * loads[i] : 0;
                for (int k = 0; k < 6; k++) {
                    left[j][k] += gone[i] ? 0 : central[j][i] * momenta[k][i];
                }
            }
        }
        if (Arrays.stream(lost).allMatch(v -> v == 0)) {
            return;
        }
        SmallDense.solve(left, new double[][] {lost});
        for (int i = 0; i < loads.length; i++) {
            for (int k = 0; k < 6 && !gone[i]; k++) {
                loads[i] += lost[k] * momenta[k][i];
            }
        }
    }

    private static double[][] motions(double[] positions, double[] centre) {
        int nodes = positions.length / 3;
        double[][] r = new double[6][6 * nodes];
        for (int n = 0; n < nodes; n++) {
            double x = positions[3 * n] - centre[0];
            double y = positions[3 * n + 1] - centre[1];
            double z = positions[3 * n + 2] - centre[2];
            for (int d = 0; d < 6; d++) {
                r[d][6 * n + d] = 1;
            }
            r[3][6 * n + 1] = -z;
            r[3][6 * n + 2] = y;
            r[4][6 * n] = z;
            r[4][6 * n + 2] = -x;
            r[5][6 * n] = -y;
            r[5][6 * n + 1] = x;
        }
        return r;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
