// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;
import tubwright.numerics.SymmetricPattern;
import tubwright.numerics.ordering.Graph;
import tubwright.numerics.ordering.NestedDissection;

/**
 * The layout of the factor: supernodes (runs of nodes with the same pattern below), their rows and their tree. All in
 * nodes; an unknown never needs a thought of its own. Positions count nodes in the order of elimination.
 */
final class Symbolic {
    final SymmetricPattern pattern;
    final Graph graph;
    /** Node at each position, and position of each node. */
    final int[] nodeAt;

    final int[] positionOf;
    /** First position of each supernode, length supernodes + 1. */
    final int[] first;
    /** For each supernode the positions of its front in rising order: its own, then those below. */
    final int[][] rows;
    /** Parent supernode, or -1. */
    final int[] parent;
    /** Children of each supernode in rising order. */
    final int[][] children;
    /** Floating-point operations of each supernode's elimination. */
    final double[] flops;

    private Symbolic(SymmetricPattern pattern, Graph graph, int[] nodeAt, int[] positionOf, int[] first, int[][] rows) {
        this.pattern = pattern;
        this.graph = graph;
        this.nodeAt = nodeAt;
        this.positionOf = positionOf;
        this.first = first;
        this.rows = rows;
        int count = rows.length;
        int[] supernodeOf = new int[nodeAt.length];
        for (int s = 0; s < count; s++) {
            Arrays.fill(supernodeOf, first[s], first[s + 1], s);
        }
        parent = new int[count];
        int[] degree = new int[count];
        for (int s = 0; s < count; s++) {
            int own = first[s + 1] - first[s];
            parent[s] = rows[s].length > own ? supernodeOf[rows[s][own]] : -1;
            if (parent[s] >= 0) {
                degree[parent[s]]++;
            }
        }
        children = new int[count][];
        for (int s = 0; s < count; s++) {
            children[s] = new int[degree[s]];
        }
        Arrays.fill(degree, 0);
        for (int s = 0; s < count; s++) {
            if (parent[s] >= 0) {
                children[parent[s]][degree[parent[s]]++] = s;
            }
        }
        flops = new double[count];
        for (int s = 0; s < count; s++) {
            double w = width(s);
            double m = height(s);
            // Sum over pivots of (rows below)^2 with a multiplication and an addition each, half by symmetry.
            flops[s] = w * m * m - w * w * m + w * w * w / 3;
        }
    }

    /** Pivots of a supernode, in unknowns. */
    int width(int s) {
        return (first[s + 1] - first[s]) * pattern.blockSize();
    }

    /** Order of a supernode's front, in unknowns. */
    int height(int s) {
        return rows[s].length * pattern.blockSize();
    }

    long factorEntries() {
        long total = 0;
        for (int s = 0; s < rows.length; s++) {
            long w = width(s);
            total += w * height(s) - w * (w - 1) / 2;
        }
        return total;
    }

    double totalFlops() {
        return Arrays.stream(flops).sum();
    }

    static Symbolic of(SymmetricPattern pattern) {
        Graph graph = Graph.of(pattern);
        return of(pattern, graph, NestedDissection.order(graph));
    }

    static Symbolic of(SymmetricPattern pattern, Graph graph, int[] order) {
        EliminationTree tree = EliminationTree.of(graph, order);
        Supernodes supernodes = Supernodes.of(tree);
        int[] nodeAt = supernodes.nodeAt();
        int[] first = supernodes.first();
        int n = nodeAt.length;
        int[] positionOf = new int[n];
        for (int k = 0; k < n; k++) {
            positionOf[nodeAt[k]] = k;
        }
        return new Symbolic(pattern, graph, nodeAt, positionOf, first, rowsOf(graph, nodeAt, positionOf, first));
    }

    /** Rows of each supernode: those of the matrix and those its children hand up. */
    private static int[][] rowsOf(Graph graph, int[] nodeAt, int[] positionOf, int[] first) {
        int count = first.length - 1;
        int n = nodeAt.length;
        int[] supernodeOf = new int[n];
        for (int s = 0; s < count; s++) {
            Arrays.fill(supernodeOf, first[s], first[s + 1], s);
        }
        int[][] rows = new int[count][];
        int[] firstChild = new int[count];
        int[] sibling = new int[count];
        Arrays.fill(firstChild, -1);
        int[] seenBy = new int[n];
        Arrays.fill(seenBy, -1);
        int[] list = new int[n];
        for (int s = 0; s < count; s++) {
            int size = 0;
            for (int k = first[s]; k < first[s + 1]; k++) {
                list[size++] = k;
                seenBy[k] = s;
            }
            int own = size;
            for (int k = first[s]; k < first[s + 1]; k++) {
                int v = nodeAt[k];
                for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                    int q = positionOf[graph.neighbours()[p]];
                    if (q >= first[s + 1] && seenBy[q] != s) {
                        seenBy[q] = s;
                        list[size++] = q;
                    }
                }
            }
            for (int c = firstChild[s]; c >= 0; c = sibling[c]) {
                for (int q : rows[c]) {
                    if (q >= first[s + 1] && seenBy[q] != s) {
                        seenBy[q] = s;
                        list[size++] = q;
                    }
                }
            }
            Arrays.sort(list, own, size);
            rows[s] = Arrays.copyOf(list, size);
            if (size > own) {
                int up = supernodeOf[rows[s][own]];
                sibling[s] = firstChild[up];
                firstChild[up] = s;
            }
        }
        return rows;
    }
}
