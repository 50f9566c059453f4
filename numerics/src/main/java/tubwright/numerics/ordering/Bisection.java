// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import tubwright.numerics.Parallel;

/**
 * Splits a graph by a small vertex separator, multilevel (Karypis and Kumar 1998): coarsen, split the coarsest graph,
 * carry the split back and improve it on every level.
 */
final class Bisection {
    private static final int COARSEST = 50;
    private static final int TRIALS = 12;
    private static final int PASSES = 3;

    private Bisection() {}

    /** The best of several splits: side 0, 1 or {@link Separator#BETWEEN} for each vertex. */
    static byte[] best(WeightedGraph graph, int tries, long seed) {
        if (tries == 1) {
            return split(graph, new SplittableRandom(seed));
        }
        byte[][] sides = new byte[tries][];
        Parallel.run(tries, t -> sides[t] = split(graph, new SplittableRandom(seed + 1_000_003L * t)));
        Separator best = new Separator(graph, sides[0]);
        for (int t = 1; t < tries; t++) {
            Separator other = new Separator(graph, sides[t]);
            if (other.betterThan(best)) {
                best = other;
            }
        }
        return best.side;
    }

    private static byte[] split(WeightedGraph finest, SplittableRandom random) {
        List<WeightedGraph> levels = new ArrayList<>();
        List<int[]> maps = new ArrayList<>();
        levels.add(finest);
        int heaviest = Math.max(3, (int) (1.5 * finest.totalWeight() / COARSEST));
        while (levels.getLast().vertices() > COARSEST) {
            WeightedGraph fine = levels.getLast();
            int[] coarseOf = new int[fine.vertices()];
            WeightedGraph coarse = fine.coarsen(coarseOf, heaviest, random);
            if (coarse.vertices() > 0.95 * fine.vertices()) {
                break;
            }
            levels.add(coarse);
            maps.add(coarseOf);
        }
        byte[] side = initial(levels.getLast(), finest.vertices() > 1000 ? TRIALS : 5, random);
        for (int level = maps.size() - 1; level >= 0; level--) {
            int[] coarseOf = maps.get(level);
            byte[] fine = new byte[coarseOf.length];
            for (int v = 0; v < fine.length; v++) {
                fine[v] = side[coarseOf[v]];
            }
            new Separator(levels.get(level), fine).refine(PASSES);
            side = fine;
        }
        return side;
    }

    /** The best of several splits grown from random vertices. */
    private static byte[] initial(WeightedGraph graph, int trials, SplittableRandom random) {
        Separator best = grow(graph, random.nextInt(graph.vertices()));
        for (int trial = 1; trial < trials; trial++) {
            Separator other = grow(graph, random.nextInt(graph.vertices()));
            if (other.betterThan(best)) {
                best = other;
            }
        }
        return best.side;
    }

    /** Grows side 0 breadth first from a root to half the weight; its rim becomes the separator. */
    private static Separator grow(WeightedGraph graph, int root) {
        int n = graph.vertices();
        byte[] side = new byte[n];
        Arrays.fill(side, (byte) 1);
        int[] queue = new int[n];
        int head = 0;
        int tail = 0;
        int half = graph.totalWeight() / 2;
        int grown = 0;
        boolean[] seen = new boolean[n];
        int next = 0;
        queue[tail++] = root;
        seen[root] = true;
        while (grown < half) {
            if (head == tail) {
                while (seen[next]) {
                    next++;
                }
                seen[next] = true;
                queue[tail++] = next;
            }
            int v = queue[head++];
            side[v] = 0;
            grown += graph.weight()[v];
            for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                int w = graph.neighbours()[p];
                if (!seen[w]) {
                    seen[w] = true;
                    queue[tail++] = w;
                }
            }
        }
        for (int v = 0; v < n; v++) {
            if (side[v] == 0) {
                for (int p = graph.start()[v]; p < graph.start()[v + 1]; p++) {
                    if (side[graph.neighbours()[p]] == 1) {
                        side[v] = Separator.BETWEEN;
                        break;
                    }
                }
            }
        }
        Separator separator = new Separator(graph, side);
        separator.refine(PASSES);
        return separator;
    }
}
