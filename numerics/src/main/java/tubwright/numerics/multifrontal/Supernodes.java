// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.Arrays;

/**
 * Nodes gathered into supernodes: runs with the same rows below, and small ones merged with their parents where that
 * costs few zeros (relaxed amalgamation, Ashcraft and Grimes 1989).
 *
 * @param nodeAt node at each position, children before parents
 * @param first first position of each supernode, length supernodes + 1
 */
record Supernodes(int[] nodeAt, int[] first) {

    static Supernodes of(EliminationTree tree) {
        int n = tree.nodeAt().length;
        int[] supernodeOf = new int[n];
        int count = 0;
        int[] start = new int[n + 1];
        for (int k = 0; k < n; k++) {
            boolean joins = k > 0 && tree.parent()[k - 1] == k && tree.count()[k] == tree.count()[k - 1] - 1;
            if (!joins) {
                start[count++] = k;
            }
            supernodeOf[k] = count - 1;
        }
        start[count] = n;
        int[] parent = new int[count];
        long[] width = new long[count];
        long[] height = new long[count];
        for (int s = 0; s < count; s++) {
            int up = tree.parent()[start[s + 1] - 1];
            parent[s] = up < 0 ? -1 : supernodeOf[up];
            width[s] = start[s + 1] - start[s];
            height[s] = tree.count()[start[s]];
        }
        int[] mergedInto = merge(parent, width, height);
        return renumber(tree, start, count, parent, mergedInto);
    }

    /** Decides for each supernode, children first, whether it joins its parent; -1 if it stays. */
    private static int[] merge(int[] parent, long[] width, long[] height) {
        int count = parent.length;
        int[] mergedInto = new int[count];
        Arrays.fill(mergedInto, -1);
        long[] zeros = new long[count];
        for (int s = 0; s < count; s++) {
            int up = parent[s];
            if (up < 0) {
                continue;
            }
            long w = width[s] + width[up];
            long h = width[s] + height[up];
            long entries = w * h - w * (w - 1) / 2;
            long added = width[s] * (h - height[s]) + zeros[s] + zeros[up];
            double share = (double) added / entries;
            if (added == 0
                    || w <= 3 && share < 0.8
                    || w <= 8 && share < 0.25
                    || w <= 32 && share < 0.1
                    || share < 0.02) {
                mergedInto[s] = up;
                width[up] = w;
                height[up] = h;
                zeros[up] = added;
            }
        }
        return mergedInto;
    }

    private static Supernodes renumber(EliminationTree tree, int[] start, int count, int[] parent, int[] mergedInto) {
        int[] home = new int[count];
        for (int s = count - 1; s >= 0; s--) {
            home[s] = mergedInto[s] < 0 ? s : home[mergedInto[s]];
        }
        int[] homeParent = new int[count];
        for (int s = 0; s < count; s++) {
            homeParent[s] = home[s] != s || parent[s] < 0 ? -1 : home[parent[s]];
        }
        int[] members = new int[count + 1];
        for (int s = 0; s < count; s++) {
            members[home[s] + 1]++;
        }
        for (int s = 0; s < count; s++) {
            members[s + 1] += members[s];
        }
        int[] member = new int[count];
        int[] next = members.clone();
        for (int s = 0; s < count; s++) {
            member[next[home[s]]++] = s;
        }
        int[] nodeAt = new int[tree.nodeAt().length];
        int[] first = new int[count + 1];
        int size = 0;
        int supernodes = 0;
        for (int s : EliminationTree.postorder(homeParent)) {
            if (home[s] != s) {
                continue;
            }
            first[supernodes++] = size;
            for (int p = members[s]; p < members[s + 1]; p++) {
                for (int k = start[member[p]]; k < start[member[p] + 1]; k++) {
                    nodeAt[size++] = tree.nodeAt()[k];
                }
            }
        }
        first[supernodes] = size;
        return new Supernodes(nodeAt, Arrays.copyOf(first, supernodes + 1));
    }
}
