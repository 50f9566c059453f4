// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.numerics.NodeGraph;

class NestedDissectionTest {

    private static Graph graph(int nodes, int[][] elements) {
        return Graph.of(NodeGraph.of(nodes, elements).pattern(1));
    }

    private static Graph quads(int n) {
        int[][] elements = new int[(n - 1) * (n - 1)][];
        for (int e = 0; e < elements.length; e++) {
            int corner = e / (n - 1) * n + e % (n - 1);
            elements[e] = new int[] {corner, corner + 1, corner + n, corner + n + 1};
        }
        return graph(n * n, elements);
    }

    private static void assertPermutation(Graph graph, int[] order) {
        int[] sorted = order.clone();
        Arrays.sort(sorted);
        assertArrayEquals(IntStream.range(0, graph.vertices()).toArray(), sorted);
    }

    @Test
    void everyVertexIsOrderedOnceInGraphsOfAnyKind() {
        long seed = 11;
        SplittableRandom random = new SplittableRandom(seed);
        for (int trial = 0; trial < 40; trial++) {
            int nodes = 1 + random.nextInt(1500);
            int[][] elements = new int[random.nextInt(2 * nodes)][];
            for (int e = 0; e < elements.length; e++) {
                int size = random.nextInt(100) == 0 ? 60 : 1 + random.nextInt(4);
                elements[e] = random.ints(size, 0, nodes).toArray();
            }
            Graph graph = graph(nodes, elements);
            assertPermutation(graph, NestedDissection.order(graph));
        }
    }

    @Test
    void lonelyNodesStarsAndCompleteGraphsAreNoTrouble() {
        Graph lonely = graph(5000, new int[0][]);
        assertPermutation(lonely, NestedDissection.order(lonely));
        int[][] rays = IntStream.range(1, 3000).mapToObj(i -> new int[] {0, i}).toArray(int[][]::new);
        Graph star = graph(3000, rays);
        assertPermutation(star, NestedDissection.order(star));
        Graph complete = graph(400, new int[][] {IntStream.range(0, 400).toArray()});
        assertPermutation(complete, NestedDissection.order(complete));
        Graph empty = graph(0, new int[0][]);
        assertEquals(0, NestedDissection.order(empty).length);
    }

    @Test
    void theSameGraphAlwaysGetsTheSameOrder() {
        Graph graph = quads(80);
        int[] first = NestedDissection.order(graph);
        for (int again = 0; again < 4; again++) {
            assertArrayEquals(first, NestedDissection.order(graph));
        }
    }

    /**
     * George (1973): nested dissection of an n by n grid fills no more than 31/4 n² log2 n entries, to leading order, and
     * no order can do with less than a multiple of that (constant from memory). Plain row order fills n³.
     */
    @Test
    void aSquareGridFillsLessThanGeorgesBound() {
        for (int n : new int[] {32, 64, 128}) {
            Graph graph = quads(n);
            double entries = Fill.entries(graph, NestedDissection.order(graph));
            double bound = 31.0 / 4 * n * n * Math.log(n) / Math.log(2);
            assertTrue(entries < bound, entries + " entries for n = " + n + ", bound " + bound);
            double rows = Fill.entries(graph, IntStream.range(0, n * n).toArray());
            assertTrue(rows > 0.9 * n * n * n, "counted right: " + rows);
        }
    }
}
