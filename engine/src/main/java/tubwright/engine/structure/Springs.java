// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Springs between interpolated motions of a few nodes, energy ½ Σ_r k_r (b_r·u)².
 *
 * @param nodes m of them
 * @param rows b_r, one a spring, each 6 m long: coefficients of (u, θ) of each node
 * @param stiffness k_r, N/m (N·m/rad)
 */
public record Springs(int[] nodes, double[][] rows, double[] stiffness) {
    /** Stretch of one spring under displacements u (6 per node), m or rad. */
    public double gap(int r, double[] u) {
        double gap = 0;
        for (int c = 0; c < nodes.length; c++) {
            for (int d = 0; d < 6; d++) {
                gap += rows[r][6 * c + d] * u[6 * nodes[c] + d];
            }
        }
        return gap;
    }

    /** Writes a share of the stiffness, row-major (6 m)², at an offset. */
    public void matrix(double share, double[] into, int offset) {
        int n = 6 * nodes.length;
        java.util.Arrays.fill(into, offset, offset + n * n, 0);
        for (int r = 0; r < rows.length; r++) {
            double[] b = rows[r];
            for (int i = 0; i < n; i++) {
                double kb = share * stiffness[r] * b[i];
                for (int j = 0; kb != 0 && j < n; j++) {
                    into[offset + i * n + j] += kb * b[j];
                }
            }
        }
    }

    /** The same springs between nodes of other numbers. */
    public Springs renumbered(java.util.function.IntUnaryOperator number) {
        return new Springs(java.util.Arrays.stream(nodes).map(number).toArray(), rows, stiffness);
    }
}
