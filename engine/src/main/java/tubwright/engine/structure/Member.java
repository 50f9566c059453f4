// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/** Anything but a shell element that adds stiffness between nodes. */
sealed interface Member permits ElasticTie, Bar, PinnedBar, MountMatrix {
    /** Index of the part it belongs to. */
    int owner();

    /** Node indices, m of them. */
    int[] nodes();

    /** Dense stiffness, row-major (6m)². */
    double[] matrix();

    /** Dense consistent mass, row-major (6m)²; empty for what is counted as lumped mass or has none. */
    default double[] mass() {
        return new double[0];
    }

    /** Dense geometric stiffness under displacements u (6 per node), row-major (6m)²; empty for what has none. */
    default double[] geometricStiffness(double[] u) {
        return new double[0];
    }

    /** What the nodes push the member with under displacements u (6 per node): K u, 6 numbers a node of its own. */
    default double[] forces(double[] u) {
        int n = 6 * nodes().length;
        double[] k = matrix();
        double[] forces = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                forces[i] += k[i * n + j] * u[6 * nodes()[j / 6] + j % 6];
            }
        }
        return forces;
    }

    /** Strain energy in J under displacements u (6 per node). */
    default double energy(double[] u) {
        int n = 6 * nodes().length;
        double[] k = matrix();
        double energy = 0;
        for (int i = 0; i < n; i++) {
            double force = 0;
            for (int j = 0; j < n; j++) {
                force += k[i * n + j] * u[6 * nodes()[j / 6] + j % 6];
            }
            energy += 0.5 * force * u[6 * nodes()[i / 6] + i % 6];
        }
        return energy;
    }
}
