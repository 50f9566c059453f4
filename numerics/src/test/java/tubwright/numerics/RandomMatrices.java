// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.SplittableRandom;

/** Random sparse symmetric matrices with random patterns. */
public final class RandomMatrices {
    private RandomMatrices() {}

    /** Random elements of two to five nodes (and one of twenty), each with a random positive definite matrix. */
    public static SymmetricMatrix positiveDefinite(int nodes, int blockSize, SplittableRandom random) {
        int[][] elements = new int[nodes + nodes / 2 + 1][];
        for (int e = 0; e < elements.length; e++) {
            int size = e == 0 ? Math.min(20, nodes) : 2 + random.nextInt(4);
            elements[e] = new int[size];
            for (int a = 0; a < size; a++) {
                // Mostly neighbours in number, sometimes far away; every node is the first of some element.
                int first = e % nodes;
                elements[e][a] = a == 0
                        ? first
                        : random.nextInt(12) == 0
                                ? random.nextInt(nodes)
                                : Math.min(nodes - 1, first + random.nextInt(9));
            }
        }
        SymmetricMatrix matrix =
                new SymmetricMatrix(NodeGraph.of(nodes, elements).pattern(blockSize));
        for (int[] element : elements) {
            int n = element.length * blockSize;
            double[][] g = new double[n][n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    g[i][j] = random.nextDouble(-1, 1);
                }
            }
            for (int i = 0; i < n; i++) {
                for (int j = i; j < n; j++) {
                    double sum = i == j ? 0.1 : 0;
                    for (int q = 0; q < n; q++) {
                        sum += g[i][q] * g[j][q];
                    }
                    int row = element[i / blockSize] * blockSize + i % blockSize;
                    int column = element[j / blockSize] * blockSize + j % blockSize;
                    // A node named twice puts both mirror entries of the element on one place of the diagonal.
                    matrix.add(row, column, i != j && row == column ? 2 * sum : sum);
                }
            }
        }
        return matrix;
    }

    public static double[] vector(int n, SplittableRandom random) {
        return random.doubles(n, -1, 1).toArray();
    }
}
