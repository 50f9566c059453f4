// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/** Nested dissection (George 1973): split by a small separator, order both sides first, the separator last. */
public final class NestedDissection {
    private static final int LEAF = 30;

    private NestedDissection() {}

    /** The order of elimination: position k holds the vertex that goes k-th. */
    public static int[] order(Graph graph) {
        int n = graph.vertices();
        int[] order = new int[n];
        int[] all = new int[n];
        Arrays.setAll(all, i -> i);
        int[] part = new int[n];
        int[] level = new int[n];
        int stamp = 0;
        Deque<int[][]> work = new ArrayDeque<>();
        work.push(new int[][] {all, {0}});
        while (!work.isEmpty()) {
            int[][] item = work.pop();
            int[] set = item[0];
            int end = item[1][0] + set.length;
            if (set.length <= LEAF) {
                System.arraycopy(set, 0, order, item[1][0], set.length);
                continue;
            }
            stamp++;
            for (int v : set) {
                part[v] = stamp;
            }
            int[] queue = breadthFirst(graph, set[0], part, stamp, level);
            if (queue.length < set.length) {
                int[] rest = new int[set.length - queue.length];
                int k = 0;
                for (int v : set) {
                    if (part[v] == stamp) {
                        rest[k++] = v;
                    }
                }
                work.push(new int[][] {queue, {item[1][0]}});
                work.push(new int[][] {rest, {item[1][0] + queue.length}});
                continue;
            }
            queue = breadthFirst(graph, queue[queue.length - 1], part, -stamp, level);
            int middle = level[queue[queue.length / 2]];
            int a = 0;
            while (level[queue[a]] < middle) {
                a++;
            }
            int c = a;
            while (c < queue.length && level[queue[c]] == middle) {
                c++;
            }
            int separator = c - a;
            System.arraycopy(queue, a, order, end - separator, separator);
            work.push(new int[][] {Arrays.copyOf(queue, a), {item[1][0]}});
            work.push(new int[][] {Arrays.copyOfRange(queue, c, queue.length), {item[1][0] + a}});
        }
        return order;
    }

    /** Visits the vertices marked {@code mark} from {@code root}, turns their mark round, and sets their levels. */
    private static int[] breadthFirst(Graph graph, int root, int[] part, int mark, int[] level) {
        int[] queue = new int[64];
        int size = 0;
        queue[size++] = root;
        part[root] = -mark;
        level[root] = 0;
        for (int head = 0; head < size; head++) {
            int v = queue[head];
            for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                int w = graph.neighbours()[p];
                if (part[w] == mark) {
                    part[w] = -mark;
                    level[w] = level[v] + 1;
                    if (size == queue.length) {
                        queue = Arrays.copyOf(queue, 2 * size);
                    }
                    queue[size++] = w;
                }
            }
        }
        return Arrays.copyOf(queue, size);
    }
}
