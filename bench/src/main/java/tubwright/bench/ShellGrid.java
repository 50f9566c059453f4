// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.util.SplittableRandom;
import tubwright.numerics.Assembler;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * Quads on a square grid of nodes, six unknowns each: the pattern of a shell, with made-up positive definite element
 * matrices. Node numbers run along the rows; no solver is told of the grid.
 */
final class ShellGrid {
    private static final int UNKNOWNS = 6;
    private static final int SIZE = 4 * UNKNOWNS;

    final int nodes;
    final int[] elementStart;
    final int[] elementNodes;
    private final double[][] matrices;

    ShellGrid(int side) {
        nodes = side * side;
        int elements = (side - 1) * (side - 1);
        elementStart = new int[elements + 1];
        elementNodes = new int[4 * elements];
        matrices = new double[elements][];
        double[][] kinds = kinds();
        for (int e = 0; e < elements; e++) {
            int corner = e / (side - 1) * side + e % (side - 1);
            elementNodes[4 * e] = corner;
            elementNodes[4 * e + 1] = corner + 1;
            elementNodes[4 * e + 2] = corner + side + 1;
            elementNodes[4 * e + 3] = corner + side;
            elementStart[e + 1] = 4 * (e + 1);
            matrices[e] = kinds[e * 31 % kinds.length];
        }
    }

    /** The side of the grid whose number of unknowns comes nearest. */
    static int sideFor(int unknowns) {
        return (int) Math.round(Math.sqrt((double) unknowns / UNKNOWNS));
    }

    private static double[][] kinds() {
        SplittableRandom random = new SplittableRandom(1);
        double[][] kinds = new double[7][SIZE * SIZE];
        for (double[] kind : kinds) {
            double[] r = random.doubles(SIZE * SIZE, -1, 1).toArray();
            for (int i = 0; i < SIZE; i++) {
                for (int j = 0; j < SIZE; j++) {
                    double sum = i == j ? 0.1 : 0;
                    for (int q = 0; q < SIZE; q++) {
                        sum += r[q * SIZE + i] * r[q * SIZE + j];
                    }
                    kind[i * SIZE + j] = sum;
                }
            }
        }
        return kinds;
    }

    SymmetricPattern pattern() {
        return NodeGraph.of(nodes, elementStart, elementNodes).pattern(UNKNOWNS);
    }

    SymmetricMatrix assemble(SymmetricPattern pattern) {
        return new Assembler(pattern, elementStart, elementNodes).assemble(matrices);
    }
}
