// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import tubwright.numerics.SymmetricPattern;

/**
 * An undirected graph in compressed form, both directions of each edge present, no loops.
 *
 * @param start start of each vertex's neighbours, length vertices + 1; not to be modified
 * @param neighbours neighbours of all vertices, one after the other; not to be modified
 */
public record Graph(int[] start, int[] neighbours) {
    /** Number of vertices. */
    public int vertices() {
        return start.length - 1;
    }

    /** Number of neighbours of a vertex. */
    public int degree(int vertex) {
        return start[vertex + 1] - start[vertex];
    }

    /** The graph of the nodes of a pattern. */
    public static Graph of(SymmetricPattern pattern) {
        int n = pattern.nodes();
        int[] nodeStart = pattern.nodeStart();
        int[] columns = pattern.nodeColumns();
        int[] start = new int[n + 1];
        for (int i = 0; i < n; i++) {
            start[i + 1] += nodeStart[i + 1] - nodeStart[i] - 1;
            for (int p = nodeStart[i] + 1; p < nodeStart[i + 1]; p++) {
                start[columns[p] + 1]++;
            }
        }
        for (int i = 0; i < n; i++) {
            start[i + 1] += start[i];
        }
        int[] next = start.clone();
        int[] neighbours = new int[start[n]];
        for (int i = 0; i < n; i++) {
            for (int p = nodeStart[i] + 1; p < nodeStart[i + 1]; p++) {
                int j = columns[p];
                neighbours[next[i]++] = j;
                neighbours[next[j]++] = i;
            }
        }
        return new Graph(start, neighbours);
    }
}
