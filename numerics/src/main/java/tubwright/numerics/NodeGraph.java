// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.Arrays;

/**
 * Which nodes meet in an element. Built from connectivities; elements may have any number of nodes, a node may appear
 * more than once in an element and a node may have no element at all.
 *
 * <p>Immutable. Arrays handed out are the live ones and must not be modified.
 */
public final class NodeGraph {
    private static final int PARTS = 16;

    private final int[] start;
    private final int[] neighbours;

    private NodeGraph(int[] start, int[] neighbours) {
        this.start = start;
        this.neighbours = neighbours;
    }

    /** As {@link #of(int, int[], int[])}, from one array of nodes for each element. */
    public static NodeGraph of(int nodes, int[][] elements) {
        int[] elementStart = new int[elements.length + 1];
        for (int e = 0; e < elements.length; e++) {
            elementStart[e + 1] = Math.addExact(elementStart[e], elements[e].length);
        }
        int[] elementNodes = new int[elementStart[elements.length]];
        for (int e = 0; e < elements.length; e++) {
            System.arraycopy(elements[e], 0, elementNodes, elementStart[e], elements[e].length);
        }
        return of(nodes, elementStart, elementNodes);
    }

    /**
     * @param nodes number of nodes
     * @param elementStart start of each element's nodes in {@code elementNodes}, length elements + 1
     * @param elementNodes nodes of all elements, one after the other
     * @throws IllegalArgumentException if an element names a node that does not exist
     */
    public static NodeGraph of(int nodes, int[] elementStart, int[] elementNodes) {
        int elements = elementStart.length - 1;
        int[] userStart = new int[nodes + 1];
        for (int p = elementStart[0]; p < elementStart[elements]; p++) {
            int node = elementNodes[p];
            if (node < 0 || node >= nodes) {
                throw new IllegalArgumentException("An element names node " + node + " of " + nodes);
            }
            userStart[node + 1]++;
        }
        for (int i = 0; i < nodes; i++) {
            userStart[i + 1] += userStart[i];
        }
        int[] users = new int[userStart[nodes]];
        int[] next = Arrays.copyOf(userStart, nodes);
        for (int e = 0; e < elements; e++) {
            for (int p = elementStart[e]; p < elementStart[e + 1]; p++) {
                users[next[elementNodes[p]]++] = e;
            }
        }
        int[] start = new int[nodes + 1];
        int[][] found = new int[PARTS][];
        Parallel.run(PARTS, part -> {
            int from = (int) ((long) nodes * part / PARTS);
            int to = (int) ((long) nodes * (part + 1) / PARTS);
            found[part] = neighboursOf(from, to, start, userStart, users, elementStart, elementNodes);
        });
        long total = 0;
        for (int i = 0; i < nodes; i++) {
            total += start[i + 1];
            start[i + 1] = Math.toIntExact(total);
        }
        int[] neighbours = new int[start[nodes]];
        Parallel.run(PARTS, part -> {
            int from = start[(int) ((long) nodes * part / PARTS)];
            int to = start[(int) ((long) nodes * (part + 1) / PARTS)];
            System.arraycopy(found[part], 0, neighbours, from, to - from);
        });
        return new NodeGraph(start, neighbours);
    }

    /** Sorted upper neighbours (the node itself first) of a range of nodes; counts go to {@code count[node + 1]}. */
    private static int[] neighboursOf(
            int from, int to, int[] count, int[] userStart, int[] users, int[] elementStart, int[] elementNodes) {
        int[] seenBy = new int[count.length];
        int[] list = new int[8 * (to - from) + 16];
        int size = 0;
        for (int node = from; node < to; node++) {
            int first = size;
            if (size == list.length) {
                list = Arrays.copyOf(list, 2 * size);
            }
            list[size++] = node;
            seenBy[node] = node + 1;
            for (int u = userStart[node]; u < userStart[node + 1]; u++) {
                int element = users[u];
                for (int p = elementStart[element]; p < elementStart[element + 1]; p++) {
                    int other = elementNodes[p];
                    if (other > node && seenBy[other] != node + 1) {
                        seenBy[other] = node + 1;
                        if (size == list.length) {
                            list = Arrays.copyOf(list, 2 * size);
                        }
                        list[size++] = other;
                    }
                }
            }
            Arrays.sort(list, first + 1, size);
            count[node + 1] = size - first;
        }
        return list;
    }

    /** Number of nodes. */
    public int nodes() {
        return start.length - 1;
    }

    /** The pattern of a matrix with {@code unknownsPerNode} unknowns at each node. */
    public SymmetricPattern pattern(int unknownsPerNode) {
        return new SymmetricPattern(unknownsPerNode, start, neighbours);
    }
}
