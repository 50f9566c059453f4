// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;

/**
 * Which candidates may lie side by side, and how many stacks there may be.
 *
 * @param pairs of sites with a rule between them
 * @param mostStacks different stacks in all zones together
 */
public record Neighbours(List<Pair> pairs, int mostStacks) {
    /** No rules. */
    public static final Neighbours FREE = new Neighbours(List.of(), Integer.MAX_VALUE);

    public Neighbours {
        pairs = List.copyOf(pairs);
    }

    /**
     * Two sites that meet.
     *
     * @param a index of a site
     * @param b index of another
     * @param together whether candidate i of {@code a} may lie beside candidate j of {@code b}
     */
    public record Pair(int a, int b, boolean[][] together) {}

    /** Whether a choice keeps to the rules between neighbours. */
    boolean kept(int[] choice) {
        return pairs.stream().allMatch(p -> p.together[choice[p.a]][choice[p.b]]);
    }

    /**
     * Rows that a mixture misses although every allowed choice keeps them: whatever share of {@code a} the candidates K
     * have, the candidates of {@code b} that may lie beside one of K have at least that share.
     */
    List<Row> missed(double[] mixture, int[] offset, double tolerance) {
        List<Row> rows = new ArrayList<>();
        for (Pair pair : pairs) {
            int n = pair.together.length;
            int[] used = new int[n];
            int count = 0;
            for (int k = 0; k < n; k++) {
                if (mixture[offset[pair.a] + k] > 0) {
                    used[count++] = k;
                }
            }
            Row worst = null;
            double most = tolerance;
            for (int set = 1; set < 1 << Math.min(count, 10); set++) {
                double share = 0;
                boolean[] beside = new boolean[pair.together[0].length];
                for (int i = 0; i < count; i++) {
                    if ((set >> i & 1) == 1) {
                        share += mixture[offset[pair.a] + used[i]];
                        for (int j = 0; j < beside.length; j++) {
                            beside[j] |= pair.together[used[i]][j];
                        }
                    }
                }
                for (int j = 0; j < beside.length; j++) {
                    share -= beside[j] ? mixture[offset[pair.b] + j] : 0;
                }
                if (share > most) {
                    most = share;
                    worst = row(pair, beside, offset);
                }
            }
            if (worst != null) {
                rows.add(worst);
            }
        }
        return rows;
    }

    /** K is made as large as the candidates beside it allow. */
    private static Row row(Pair pair, boolean[] beside, int[] offset) {
        double[] c = new double[offset[offset.length - 1]];
        for (int j = 0; j < beside.length; j++) {
            c[offset[pair.b] + j] += beside[j] ? 1 : 0;
        }
        for (int k = 0; k < pair.together.length; k++) {
            boolean within = true;
            for (int j = 0; j < beside.length; j++) {
                within &= beside[j] || !pair.together[k][j];
            }
            c[offset[pair.a] + k] -= within ? 1 : 0;
        }
        return new Row(c, 0);
    }
}
