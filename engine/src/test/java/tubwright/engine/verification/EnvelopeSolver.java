// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Small direct solver (envelope LDLᵀ, reverse Cuthill–McKee) so that element benchmarks lean on nothing else. */
final class EnvelopeSolver {
    private final int n;
    private final int[] first;
    private final double[][] row;

    /** @param start first non-zero column of every row */
    EnvelopeSolver(int[] start) {
        n = start.length;
        first = start.clone();
        row = new double[n][];
        for (int i = 0; i < n; i++) {
            row[i] = new double[i - first[i] + 1];
        }
    }

    void add(int i, int j, double v) {
        if (j <= i) {
            row[i][j - first[i]] += v;
        }
    }

    void factorise() {
        for (int i = 0; i < n; i++) {
            double[] a = row[i];
            int fi = first[i];
            for (int j = fi; j < i; j++) {
                double[] b = row[j];
                int k0 = Math.max(fi, first[j]);
                double s0 = 0;
                double s1 = 0;
                double s2 = 0;
                double s3 = 0;
                int pa = k0 - fi;
                int pb = k0 - first[j];
                int len = j - k0;
                int k = 0;
                for (; k + 3 < len; k += 4) {
                    s0 += a[pa + k] * b[pb + k];
                    s1 += a[pa + k + 1] * b[pb + k + 1];
                    s2 += a[pa + k + 2] * b[pb + k + 2];
                    s3 += a[pa + k + 3] * b[pb + k + 3];
                }
                for (; k < len; k++) {
                    s0 += a[pa + k] * b[pb + k];
                }
                a[j - fi] -= s0 + s1 + s2 + s3;
            }
            double d = a[i - fi];
            for (int j = fi; j < i; j++) {
                double v = a[j - fi];
                double l = v / row[j][j - first[j]];
                d -= v * l;
                a[j - fi] = l;
            }
            if (!(d > 0)) {
                throw new ArithmeticException("model is not held: pivot " + d + " at unknown " + i);
            }
            a[i - fi] = d;
        }
    }

    void solve(double[] x) {
        for (int i = 0; i < n; i++) {
            for (int j = first[i]; j < i; j++) {
                x[i] -= row[i][j - first[i]] * x[j];
            }
        }
        for (int i = 0; i < n; i++) {
            x[i] /= row[i][i - first[i]];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int j = first[i]; j < i; j++) {
                x[j] -= row[i][j - first[i]] * x[i];
            }
        }
    }

    /** New-to-old node order that keeps the envelope small. */
    static int[] order(int nodes, List<int[]> elements) {
        List<List<Integer>> near = new ArrayList<>();
        for (int i = 0; i < nodes; i++) {
            near.add(new ArrayList<>());
        }
        for (int[] e : elements) {
            for (int a : e) {
                for (int b : e) {
                    if (a != b && !near.get(a).contains(b)) {
                        near.get(a).add(b);
                    }
                }
            }
        }
        int[] out = new int[nodes];
        boolean[] seen = new boolean[nodes];
        int count = 0;
        Comparator<Integer> degree = Comparator.comparingInt(i -> near.get(i).size());
        while (count < nodes) {
            int start = -1;
            for (int i = 0; i < nodes; i++) {
                if (!seen[i]
                        && (start < 0 || near.get(i).size() < near.get(start).size())) {
                    start = i;
                }
            }
            for (int pass = 0; pass < 2; pass++) {
                start = farthest(start, near, nodes);
            }
            ArrayDeque<Integer> queue = new ArrayDeque<>(List.of(start));
            seen[start] = true;
            while (!queue.isEmpty()) {
                int a = queue.poll();
                out[count++] = a;
                near.get(a).stream().filter(b -> !seen[b]).sorted(degree).forEach(b -> {
                    seen[b] = true;
                    queue.add(b);
                });
            }
        }
        for (int i = 0; i < nodes / 2; i++) {
            int t = out[i];
            out[i] = out[nodes - 1 - i];
            out[nodes - 1 - i] = t;
        }
        return out;
    }

    private static int farthest(int from, List<List<Integer>> near, int nodes) {
        int[] level = new int[nodes];
        Arrays.fill(level, -1);
        ArrayDeque<Integer> queue = new ArrayDeque<>(List.of(from));
        level[from] = 0;
        int last = from;
        while (!queue.isEmpty()) {
            last = queue.poll();
            for (int b : near.get(last)) {
                if (level[b] < 0) {
                    level[b] = level[last] + 1;
                    queue.add(b);
                }
            }
        }
        return last;
    }
}
