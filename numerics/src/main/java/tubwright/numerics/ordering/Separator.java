// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.Arrays;

/**
 * A split of a graph into two sides and a separator between them, and its improvement by moving separator vertices to a
 * side, which pulls their neighbours of the other side in (Fiduccia and Mattheyses 1982, for vertex separators as in
 * Ashcraft and Liu 1998).
 */
final class Separator {
    static final byte BETWEEN = 2;
    /** A side may weigh this much more than half. */
    private static final double IMBALANCE = 0.3;

    private final WeightedGraph graph;
    /** 0, 1 or {@link #BETWEEN} for each vertex. */
    final byte[] side;

    private final int[] sum = new int[3];
    private final int heaviest;

    Separator(WeightedGraph graph, byte[] side) {
        this.graph = graph;
        this.side = side;
        int total = 0;
        int largest = 0;
        for (int v = 0; v < side.length; v++) {
            sum[side[v]] += graph.weight()[v];
            total += graph.weight()[v];
            largest = Math.max(largest, graph.weight()[v]);
        }
        heaviest = Math.max((int) ((1 + IMBALANCE) * total / 2), (total + 1) / 2 + largest / 2);
    }

    int weight() {
        return sum[BETWEEN];
    }

    int imbalance() {
        return Math.abs(sum[0] - sum[1]);
    }

    /** Smaller is better: the separator first, the balance next. */
    boolean betterThan(Separator other) {
        return weight() < other.weight() || weight() == other.weight() && imbalance() < other.imbalance();
    }

    /** Improves until a pass brings nothing, at most {@code passes} times. */
    void refine(int passes) {
        int n = side.length;
        GainHeap[] heaps = {new GainHeap(n), new GainHeap(n)};
        int[] movedIn = new int[n];
        for (int pass = 1; pass <= passes; pass++) {
            if (!pass(heaps, movedIn, pass)) {
                break;
            }
        }
    }

    /** Gain of moving a separator vertex to a side: its weight less what it pulls in from the other. */
    private int gain(int v, int to) {
        int gain = graph.weight()[v];
        for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
            int w = graph.neighbours()[p];
            if (side[w] == 1 - to) {
                gain -= graph.weight()[w];
            }
        }
        return gain;
    }

    private boolean pass(GainHeap[] heaps, int[] movedIn, int pass) {
        heaps[0].clear();
        heaps[1].clear();
        for (int v = 0; v < side.length; v++) {
            if (side[v] == BETWEEN) {
                heaps[0].insert(v, gain(v, 0));
                heaps[1].insert(v, gain(v, 1));
            }
        }
        int[] log = new int[256];
        int logged = 0;
        int keep = 0;
        int best = weight();
        int bestImbalance = imbalance();
        int sinceBest = 0;
        int patience = Math.max(30, Math.min(300, 4 * (int) Math.sqrt(side.length)));
        while (sinceBest < patience) {
            int to = choose(heaps);
            if (to < 0) {
                break;
            }
            int v = heaps[to].top();
            heaps[0].remove(v);
            heaps[1].remove(v);
            movedIn[v] = pass;
            log = ensure(log, logged + 2 + graph.start()[v + 1] - graph.start()[v]);
            // One record of the log: what was pulled in, how many, and the vertex with its side in the last bit.
            int before = logged;
            logged = move(v, to, heaps, movedIn, pass, log, logged);
            log[logged] = logged - before;
            log[logged + 1] = 2 * v + to;
            logged += 2;
            if (weight() < best || weight() == best && imbalance() < bestImbalance) {
                best = weight();
                bestImbalance = imbalance();
                keep = logged;
                sinceBest = 0;
            } else {
                sinceBest++;
            }
        }
        undo(log, logged, keep);
        return keep > 0;
    }

    /** The side to move the best vertex to, or -1 if no move keeps the balance. */
    private int choose(GainHeap[] heaps) {
        boolean[] allowed = new boolean[2];
        for (int to = 0; to < 2; to++) {
            allowed[to] = !heaps[to].isEmpty()
                    && (sum[to] + graph.weight()[heaps[to].top()] <= heaviest || sum[to] < sum[1 - to]);
        }
        if (!allowed[0] || !allowed[1]) {
            return allowed[0] ? 0 : allowed[1] ? 1 : -1;
        }
        int gain0 = heaps[0].gain(heaps[0].top());
        int gain1 = heaps[1].gain(heaps[1].top());
        if (gain0 != gain1) {
            return gain0 > gain1 ? 0 : 1;
        }
        return sum[0] <= sum[1] ? 0 : 1;
    }

    private int move(int v, int to, GainHeap[] heaps, int[] movedIn, int pass, int[] log, int from) {
        int other = 1 - to;
        int[] weight = graph.weight();
        int logged = from;
        side[v] = (byte) to;
        sum[BETWEEN] -= weight[v];
        sum[to] += weight[v];
        for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
            int u = graph.neighbours()[p];
            if (side[u] == BETWEEN) {
                if (heaps[other].contains(u)) {
                    heaps[other].change(u, -weight[v]);
                }
            } else if (side[u] == other) {
                side[u] = BETWEEN;
                sum[other] -= weight[u];
                sum[BETWEEN] += weight[u];
                log[logged++] = u;
                for (int q = graph.start()[u]; q < graph.start()[u + 1]; q++) {
                    int w = graph.neighbours()[q];
                    if (heaps[to].contains(w)) {
                        heaps[to].change(w, weight[u]);
                    }
                }
                if (movedIn[u] != pass) {
                    heaps[0].insert(u, gain(u, 0));
                    heaps[1].insert(u, gain(u, 1));
                }
            }
        }
        return logged;
    }

    private void undo(int[] log, int logged, int keep) {
        int[] weight = graph.weight();
        int end = logged;
        while (end > keep) {
            int v = log[end - 1] >> 1;
            int to = log[end - 1] & 1;
            int pulled = log[end - 2];
            for (int k = end - 2 - pulled; k < end - 2; k++) {
                int u = log[k];
                side[u] = (byte) (1 - to);
                sum[BETWEEN] -= weight[u];
                sum[1 - to] += weight[u];
            }
            side[v] = BETWEEN;
            sum[to] -= weight[v];
            sum[BETWEEN] += weight[v];
            end -= 2 + pulled;
        }
    }

    private static int[] ensure(int[] array, int length) {
        return array.length >= length ? array : Arrays.copyOf(array, Math.max(length, 2 * array.length));
    }
}
