// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/** The Laplacian of a grid of springs, one unknown at each node: its spectrum and its minors are known exactly. */
final class GridLaplacian {
    private GridLaplacian() {}

    /** The free grid, singular: moving all nodes alike costs nothing. */
    static SymmetricMatrix free(int across, int along) {
        int[][] springs = new int[2 * across * along - across - along][];
        int k = 0;
        for (int j = 0; j < along; j++) {
            for (int i = 0; i < across; i++) {
                int node = j * across + i;
                if (i + 1 < across) {
                    springs[k++] = new int[] {node, node + 1};
                }
                if (j + 1 < along) {
                    springs[k++] = new int[] {node, node + across};
                }
            }
        }
        SymmetricMatrix matrix =
                new SymmetricMatrix(NodeGraph.of(across * along, springs).pattern(1));
        for (int[] spring : springs) {
            matrix.add(spring[0], spring[0], 1);
            matrix.add(spring[1], spring[1], 1);
            matrix.add(spring[0], spring[1], -1);
        }
        return matrix;
    }

    /** Eigenvalues of the free grid: 4 - 2 cos(πi/across) - 2 cos(πj/along). */
    static double eigenvalue(int i, int across, int j, int along) {
        return 4 - 2 * Math.cos(Math.PI * i / across) - 2 * Math.cos(Math.PI * j / along);
    }
}
