// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;
import tubwright.numerics.ordering.Graph;

/**
 * The elimination tree (Liu 1990) of an ordered graph, renumbered so that every subtree is a run of positions, with the
 * number of nodes in each column of the factor.
 *
 * @param nodeAt node at each position
 * @param parent parent position, or -1
 * @param count nodes in each column of the factor, the diagonal included
 */
record EliminationTree(int[] nodeAt, int[] parent, int[] count) {

    static EliminationTree of(Graph graph, int[] order) {
        int n = order.length;
        int[] position = inverse(order);
        int[] parent = parents(graph, order, position);
        int[] postorder = postorder(parent);
        int[] newOf = inverse(postorder);
        int[] nodeAt = new int[n];
        int[] newParent = new int[n];
        for (int k = 0; k < n; k++) {
            int old = postorder[k];
            nodeAt[k] = order[old];
            newParent[k] = parent[old] < 0 ? -1 : newOf[parent[old]];
        }
        return new EliminationTree(nodeAt, newParent, counts(graph, nodeAt, newParent));
    }

    private static int[] inverse(int[] permutation) {
        int[] inverse = new int[permutation.length];
        for (int k = 0; k < permutation.length; k++) {
            inverse[permutation[k]] = k;
        }
        return inverse;
    }

    private static int[] parents(Graph graph, int[] order, int[] position) {
        int n = order.length;
        int[] parent = new int[n];
        int[] ancestor = new int[n];
        for (int k = 0; k < n; k++) {
            parent[k] = -1;
            ancestor[k] = -1;
            int v = order[k];
            for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                int i = position[graph.neighbours()[p]];
                while (i >= 0 && i < k) {
                    int next = ancestor[i];
                    ancestor[i] = k;
                    if (next < 0) {
                        parent[i] = k;
                    }
                    i = next;
                }
            }
        }
        return parent;
    }

    static int[] postorder(int[] parent) {
        int n = parent.length;
        int[] firstChild = new int[n];
        int[] sibling = new int[n];
        Arrays.fill(firstChild, -1);
        for (int k = n - 1; k >= 0; k--) {
            if (parent[k] >= 0) {
                sibling[k] = firstChild[parent[k]];
                firstChild[parent[k]] = k;
            }
        }
        int[] order = new int[n];
        int[] stack = new int[n];
        int size = 0;
        for (int root = 0; root < n; root++) {
            if (parent[root] >= 0) {
                continue;
            }
            int depth = 0;
            stack[0] = root;
            while (depth >= 0) {
                int k = stack[depth];
                int child = firstChild[k];
                if (child >= 0) {
                    firstChild[k] = sibling[child];
                    stack[++depth] = child;
                } else {
                    order[size++] = k;
                    depth--;
                }
            }
        }
        return order;
    }

    /** Column counts by walking each row's subtree: work in proportion to the factor of the node graph, which is small. */
    private static int[] counts(Graph graph, int[] nodeAt, int[] parent) {
        int n = nodeAt.length;
        int[] position = inverse(nodeAt);
        int[] count = new int[n];
        int[] mark = new int[n];
        Arrays.fill(mark, -1);
        for (int k = 0; k < n; k++) {
            mark[k] = k;
            count[k]++;
            int v = nodeAt[k];
            for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                int i = position[graph.neighbours()[p]];
                while (i < k && mark[i] != k) {
                    count[i]++;
                    mark[i] = k;
                    i = parent[i];
                }
            }
        }
        return count;
    }
}
