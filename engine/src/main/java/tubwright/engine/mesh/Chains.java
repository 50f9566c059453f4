// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Strings loose edges into chains of nodes. */
final class Chains {
    private Chains() {}

    /**
     * @param edges node pairs
     * @return chains in the order in which their first edge comes; a closed one repeats its first node; chains end where
     *     more than two edges meet
     */
    static List<int[]> string(int[] edges) {
        int n = edges.length / 2;
        Map<Integer, int[]> at = new HashMap<>();
        Map<Long, Boolean> seen = new HashMap<>();
        boolean[] used = new boolean[n];
        for (int e = 0; e < n; e++) {
            if (seen.put(KeyMap.pair(edges[2 * e], edges[2 * e + 1]), true) != null) {
                used[e] = true;
                continue;
            }
            for (int i = 0; i < 2; i++) {
                int[] list = at.computeIfAbsent(edges[2 * e + i], k -> new int[] {0, -1, -1});
                if (list[0] < 2) {
                    list[1 + list[0]] = e;
                }
                list[0]++;
            }
        }
        List<int[]> chains = new ArrayList<>();
        // Open chains from their ends first, then rings.
        for (int round = 0; round < 2; round++) {
            for (int e = 0; e < n; e++) {
                for (int i = 0; i < 2 && !used[e]; i++) {
                    if (round == 1 || at.get(edges[2 * e + i])[0] != 2) {
                        chains.add(follow(edges, at, used, e, edges[2 * e + i]));
                    }
                }
            }
        }
        return chains;
    }

    private static int[] follow(int[] edges, Map<Integer, int[]> at, boolean[] used, int e, int from) {
        Ints chain = new Ints();
        chain.add(from);
        int edge = e;
        int node = from;
        while (true) {
            used[edge] = true;
            node = edges[2 * edge] == node ? edges[2 * edge + 1] : edges[2 * edge];
            chain.add(node);
            int[] list = at.get(node);
            if (list[0] != 2) {
                break;
            }
            int next = list[1] == edge ? list[2] : list[1];
            if (used[next]) {
                break;
            }
            edge = next;
        }
        return chain.toArray();
    }
}
