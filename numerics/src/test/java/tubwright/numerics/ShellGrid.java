// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.SplittableRandom;

/** Quads on a grid of nodes with six unknowns each: the pattern of a shell, with made-up element matrices. */
final class ShellGrid {
    final int nodes;
    final int[] elementStart;
    final int[] elementNodes;
    final SymmetricPattern pattern;

    ShellGrid(int across, int along) {
        nodes = across * along;
        int elements = (across - 1) * (along - 1);
        elementStart = new int[elements + 1];
        elementNodes = new int[4 * elements];
        int e = 0;
        for (int j = 0; j + 1 < along; j++) {
            for (int i = 0; i + 1 < across; i++) {
                int corner = j * across + i;
                elementNodes[4 * e] = corner;
                elementNodes[4 * e + 1] = corner + 1;
                elementNodes[4 * e + 2] = corner + across + 1;
                elementNodes[4 * e + 3] = corner + across;
                elementStart[++e] = 4 * e;
            }
        }
        pattern = NodeGraph.of(nodes, elementStart, elementNodes).pattern(6);
    }

    /** A dense positive definite 24 by 24 matrix: a Gram matrix of random vectors plus a little of the unit matrix. */
    static double[] positiveDefiniteElement(SplittableRandom random) {
        int n = 24;
        double[] r = random.doubles((long) n * n, -1, 1).toArray();
        double[] k = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double sum = i == j ? 0.1 : 0;
                for (int q = 0; q < n; q++) {
                    sum += r[q * n + Math.min(i, j)] * r[q * n + Math.max(i, j)];
                }
                k[i * n + j] = sum;
            }
        }
        return k;
    }

    SymmetricMatrix positiveDefinite(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] kinds = new double[7][];
        for (int k = 0; k < kinds.length; k++) {
            kinds[k] = positiveDefiniteElement(random);
        }
        double[][] matrices = new double[elementStart.length - 1][];
        for (int e = 0; e < matrices.length; e++) {
            matrices[e] = kinds[(int) ((e * 2654435761L >>> 7) % 7)];
        }
        return new Assembler(pattern, elementStart, elementNodes).assemble(matrices);
    }
}
