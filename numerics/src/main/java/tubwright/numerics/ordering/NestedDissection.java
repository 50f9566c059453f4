// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.Arrays;
import tubwright.numerics.Parallel;

/**
 * Nested dissection (George 1973): split by a small separator, order both sides first, the separator last. Small parts
 * are ordered by minimum degree, which is told of the separators around them.
 *
 * <p>The same graph always gets the same order, whatever the number of threads.
 */
public final class NestedDissection {
    private static final int LEAF = 40;
    private static final int PARALLEL = 2000;
    /** Parts larger than this are split more than once, and the best split is taken: the top separators cost most. */
    private static final int REPEATED = 2000;

    private final Graph graph;
    private final int[] order;

    private NestedDissection(Graph graph) {
        this.graph = graph;
        this.order = new int[graph.vertices()];
    }

    /** The order of elimination: position k holds the vertex that goes k-th. */
    public static int[] order(Graph graph) {
        NestedDissection dissection = new NestedDissection(graph);
        int n = graph.vertices();
        int[] all = new int[n];
        int[] ones = new int[n];
        int[] edgeOnes = new int[graph.neighbours().length];
        Arrays.setAll(all, i -> i);
        Arrays.fill(ones, 1);
        Arrays.fill(edgeOnes, 1);
        dissection.dissect(new WeightedGraph(graph.start(), graph.neighbours(), edgeOnes, ones), all, 0);
        return dissection.order;
    }

    /** Orders a part of the graph into the places from {@code first} on; {@code names} are its vertices. */
    private void dissect(WeightedGraph part, int[] names, int first) {
        int n = part.vertices();
        if (n <= LEAF) {
            orderLeaf(part, names, first);
            return;
        }
        byte[] side = Bisection.best(part, n > REPEATED ? 3 : 1, 31L * n + first);
        int[] size = new int[3];
        for (byte s : side) {
            size[s]++;
        }
        if (size[0] == 0 || size[1] == 0) {
            // Nothing to split: a graph as dense as this fills whatever the order.
            System.arraycopy(names, 0, order, first, n);
            return;
        }
        int k = first + size[0] + size[1];
        for (int v = 0; v < n; v++) {
            if (side[v] == Separator.BETWEEN) {
                order[k++] = names[v];
            }
        }
        int[] start = {first, first + size[0]};
        if (n > PARALLEL) {
            Parallel.run(2, s -> dissectSide(part, names, side, s, size[s], start[s]));
        } else {
            dissectSide(part, names, side, 0, size[0], start[0]);
            dissectSide(part, names, side, 1, size[1], start[1]);
        }
    }

    private void dissectSide(WeightedGraph part, int[] names, byte[] side, int which, int size, int first) {
        int[] local = new int[part.vertices()];
        int[] names2 = new int[size];
        int n = 0;
        int edges = 0;
        for (int v = 0; v < side.length; v++) {
            if (side[v] == which) {
                local[v] = n;
                names2[n++] = names[v];
                edges += part.start()[v + 1] - part.start()[v];
            }
        }
        int[] start = new int[n + 1];
        int[] neighbours = new int[edges];
        int k = 0;
        n = 0;
        for (int v = 0; v < side.length; v++) {
            if (side[v] == which) {
                for (int p = part.start()[v]; p < part.start()[v + 1]; p++) {
                    int w = part.neighbours()[p];
                    if (side[w] == which) {
                        neighbours[k++] = local[w];
                    }
                }
                start[++n] = k;
            }
        }
        int[] edgeOnes = new int[k];
        Arrays.fill(edgeOnes, 1);
        int[] ones = new int[n];
        Arrays.fill(ones, 1);
        dissect(new WeightedGraph(start, Arrays.copyOf(neighbours, k), edgeOnes, ones), names2, first);
    }

    private void orderLeaf(WeightedGraph part, int[] names, int first) {
        int n = part.vertices();
        int[] sorted = names.clone();
        Arrays.sort(sorted);
        // The rim: neighbours outside the part. All of them lie in separators, which go later.
        int[] rim = new int[n];
        int rimSize = 0;
        for (int v : names) {
            for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                int w = graph.neighbours()[p];
                if (Arrays.binarySearch(sorted, w) < 0) {
                    if (rimSize == rim.length) {
                        rim = Arrays.copyOf(rim, 2 * rimSize + 1);
                    }
                    rim[rimSize++] = w;
                }
            }
        }
        int[] outer = Arrays.stream(rim, 0, rimSize).sorted().distinct().toArray();
        int words = (n + outer.length + 63) / 64;
        long[] bits = new long[(n + outer.length) * words];
        for (int v = 0; v < n; v++) {
            for (int p = part.start()[v]; p < part.start()[v + 1]; p++) {
                connect(bits, words, v, part.neighbours()[p]);
            }
            for (int p = graph.start()[names[v]]; p < graph.start()[names[v] + 1]; p++) {
                int w = Arrays.binarySearch(outer, graph.neighbours()[p]);
                if (w >= 0) {
                    connect(bits, words, v, n + w);
                }
            }
        }
        int[] inner = MinimumDegree.order(bits, words, n);
        for (int k = 0; k < n; k++) {
            order[first + k] = names[inner[k]];
        }
    }

    private static void connect(long[] bits, int words, int v, int w) {
        bits[v * words + (w >> 6)] |= 1L << w;
        bits[w * words + (v >> 6)] |= 1L << v;
    }
}
