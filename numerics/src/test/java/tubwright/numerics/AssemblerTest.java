// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class AssemblerTest {

    private static double[] symmetric(int n, SplittableRandom random) {
        double[] k = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                k[i * n + j] = random.nextDouble(-1, 1);
                k[j * n + i] = k[i * n + j];
            }
        }
        return k;
    }

    @Test
    void elementsOfAnySizeAddUpAsADenseSumDoes() {
        long seed = 42;
        SplittableRandom random = new SplittableRandom(seed);
        int nodes = 60;
        int b = 3;
        int[][] elements = new int[300][];
        double[][] matrices = new double[elements.length][];
        for (int e = 0; e < elements.length; e++) {
            int m = e == 0 ? 40 : 1 + random.nextInt(8);
            // Nodes in any order, now and then one twice.
            elements[e] = random.ints(m, 0, nodes).toArray();
            matrices[e] = symmetric(m * b, random);
        }
        double[][] dense = new double[nodes * b][nodes * b];
        int[] start = new int[elements.length + 1];
        for (int e = 0; e < elements.length; e++) {
            int[] list = elements[e];
            start[e + 1] = start[e] + list.length;
            int n = list.length * b;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    dense[list[i / b] * b + i % b][list[j / b] * b + j % b] += matrices[e][i * n + j];
                }
            }
        }
        int[] flat = java.util.Arrays.stream(elements)
                .flatMapToInt(java.util.Arrays::stream)
                .toArray();
        Assembler assembler = new Assembler(NodeGraph.of(nodes, elements).pattern(b), start, flat);
        SymmetricMatrix ready = assembler.assemble(matrices);
        SymmetricMatrix computed = assembler.assemble(
                (e, target, offset) -> System.arraycopy(matrices[e], 0, target, offset, matrices[e].length));
        assertArrayEquals(ready.values(), computed.values(), "both ways give the same bits");
        for (int i = 0; i < dense.length; i++) {
            for (int j = 0; j < dense.length; j++) {
                assertEquals(dense[i][j], ready.get(i, j), 1e-12, "seed " + seed);
            }
        }
    }

    @Test
    void assemblingAgainGivesTheSameBits() {
        ShellGrid grid = new ShellGrid(70, 60);
        double[] first = grid.positiveDefinite(5).values();
        for (int again = 0; again < 5; again++) {
            assertArrayEquals(first, grid.positiveDefinite(5).values());
        }
    }

    @Test
    void aPairThePatternLacksIsRefused() {
        SymmetricPattern pattern = NodeGraph.of(3, new int[][] {{0, 1}, {1, 2}}).pattern(1);
        Assembler assembler = new Assembler(pattern, new int[] {0, 2}, new int[] {0, 2});
        assertThrows(IllegalArgumentException.class, () -> assembler.assemble(new double[][] {{1, 2, 2, 1}}));
    }

    @Test
    void aNodeThatDoesNotExistIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> NodeGraph.of(3, new int[][] {{0, 3}}));
    }
}
