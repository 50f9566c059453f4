// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * A body given as stiffness between its mounts.
 *
 * @param owner part index
 * @param nodes the mounts' nodes, m of them
 * @param stiffness between their translations, row-major (3m)², N/m
 */
record MountMatrix(int owner, int[] nodes, double[] stiffness) implements Member {
    @Override
    public double[] matrix() {
        int m = nodes.length;
        double[] k = new double[36 * m * m];
        for (int i = 0; i < 3 * m; i++) {
            for (int j = 0; j < 3 * m; j++) {
                k[(6 * (i / 3) + i % 3) * 6 * m + 6 * (j / 3) + j % 3] = stiffness[3 * m * i + j];
            }
        }
        return k;
    }
}
