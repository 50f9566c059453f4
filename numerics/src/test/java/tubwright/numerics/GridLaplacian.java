// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/** The Laplacian of a grid of springs, one unknown at each node: its spectrum and its minors are known exactly. */
public final class GridLaplacian {
    private GridLaplacian() {}

    /** The free grid, singular: moving all nodes alike costs nothing. */
    public static SymmetricMatrix free(int across, int along) {
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
    public static double eigenvalue(int i, int across, int j, int along) {
        return 4 - 2 * Math.cos(Math.PI * i / across) - 2 * Math.cos(Math.PI * j / along);
    }

    /** The grid with every spring replaced by a 6 by 6 spring: the Kronecker product of the two. */
    static SymmetricMatrix freeBlocks(int across, int along, double[][] spring) {
        SymmetricMatrix scalar = free(across, along);
        SymmetricPattern pattern = scalar.pattern();
        int b = spring.length;
        SymmetricMatrix matrix =
                new SymmetricMatrix(new SymmetricPattern(b, pattern.nodeStart(), pattern.nodeColumns()));
        for (int i = 0; i < pattern.nodes(); i++) {
            for (int p = pattern.nodeStart()[i]; p < pattern.nodeStart()[i + 1]; p++) {
                int j = pattern.nodeColumns()[p];
                double value = scalar.get(i, j);
                for (int r = 0; r < b; r++) {
                    for (int q = i == j ? r : 0; q < b; q++) {
                        matrix.add(i * b + r, j * b + q, value * spring[r][q]);
                    }
                }
            }
        }
        return matrix;
    }

    /** A full 6 by 6 matrix with the given eigenvalues: the diagonal one reflected (Householder). */
    static double[][] withEigenvalues(double... eigenvalues) {
        int b = eigenvalues.length;
        double[] v = new double[b];
        double norm = 0;
        for (int i = 0; i < b; i++) {
            v[i] = 1 + i % 3;
            norm += v[i] * v[i];
        }
        double[][] result = new double[b][b];
        for (int i = 0; i < b; i++) {
            for (int j = 0; j < b; j++) {
                for (int k = 0; k < b; k++) {
                    double hik = (i == k ? 1 : 0) - 2 * v[i] * v[k] / norm;
                    double hjk = (j == k ? 1 : 0) - 2 * v[j] * v[k] / norm;
                    result[i][j] += hik * eigenvalues[k] * hjk;
                }
            }
        }
        return result;
    }
}
