// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * A spring between interpolated motions: energy ½ Σ_r k_r (b_r·u)², with u the motions of the tied nodes. Bond lines,
 * fastener rows and inserts are all made of it. Linear in its stiffnesses, like the shells.
 *
 * @param owner index of the joint or hardpoint it belongs to, in the structure's list of parts
 * @param nodes node indices, m of them
 * @param rows one row per spring, each 6 m long: coefficients of (u, θ) of each node
 * @param stiffness N/m (N·m/rad) per row
 */
record ElasticTie(int owner, int[] nodes, double[][] rows, double[] stiffness) implements Member {

    /** Dense stiffness, row-major (6m)². */
    @Override
    public double[] matrix() {
        int n = 6 * nodes.length;
        double[] k = new double[n * n];
        for (int r = 0; r < rows.length; r++) {
            double[] b = rows[r];
            for (int i = 0; i < n; i++) {
                double kb = stiffness[r] * b[i];
                if (kb == 0) {
                    continue;
                }
                for (int j = 0; j < n; j++) {
                    k[i * n + j] += kb * b[j];
                }
            }
        }
        return k;
    }

    /** Strain energy in J under displacements u (6 per node). */
    @Override
    public double energy(double[] u) {
        double energy = 0;
        for (int r = 0; r < rows.length; r++) {
            double gap = gap(r, u);
            energy += 0.5 * stiffness[r] * gap * gap;
        }
        return energy;
    }

    /** Stretch of one spring under displacements u, m or rad. */
    double gap(int r, double[] u) {
        double gap = 0;
        for (int c = 0; c < nodes.length; c++) {
            for (int d = 0; d < 6; d++) {
                gap += rows[r][6 * c + d] * u[6 * nodes[c] + d];
            }
        }
        return gap;
    }
}
