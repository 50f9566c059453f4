// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Counts the entries of a factor by eliminating vertex after vertex, as the definition says. */
final class Fill {
    private Fill() {}

    static long entries(Graph graph, int[] order) {
        int n = order.length;
        int[] position = new int[n];
        for (int k = 0; k < n; k++) {
            position[order[k]] = k;
        }
        List<TreeSet<Integer>> below = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            TreeSet<Integer> column = new TreeSet<>();
            for (int p = graph.start()[order[k]]; p < graph.start()[order[k] + 1]; p++) {
                int q = position[graph.neighbours()[p]];
                if (q > k) {
                    column.add(q);
                }
            }
            below.add(column);
        }
        long entries = n;
        for (int k = 0; k < n; k++) {
            TreeSet<Integer> column = below.get(k);
            entries += column.size();
            if (!column.isEmpty()) {
                int first = column.pollFirst();
                below.get(first).addAll(column);
                below.set(k, new TreeSet<>());
            }
        }
        return entries;
    }
}
