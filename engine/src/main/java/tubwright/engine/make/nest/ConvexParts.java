// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.ArrayList;
import java.util.List;

/**
 * An outline cut into convex parts: triangles by clipping ears (Meisters 1975), put together again across diagonals as
 * long as they stay convex (Hertel and Mehlhorn 1983: at most four times the least number).
 */
final class ConvexParts {
    private ConvexParts() {}

    /** Convex polygons, counter-clockwise, each as corners (x, y, x, y, …), that tile the outline. */
    static List<double[]> of(Outline outline) {
        double[] x = outline.x();
        double[] y = outline.y();
        List<List<Integer>> parts = triangles(x, y);
        boolean joined = true;
        while (joined) {
            joined = false;
            search:
            for (int a = 0; a < parts.size(); a++) {
                for (int b = a + 1; b < parts.size(); b++) {
                    List<Integer> both = together(parts.get(a), parts.get(b));
                    if (!both.isEmpty() && convex(x, y, both)) {
                        parts.set(a, both);
                        parts.remove(b);
                        joined = true;
                        break search;
                    }
                }
            }
        }
        return parts.stream().map(part -> corners(x, y, part)).toList();
    }

    private static double[] corners(double[] x, double[] y, List<Integer> part) {
        double[] result = new double[2 * part.size()];
        for (int i = 0; i < part.size(); i++) {
            result[2 * i] = x[part.get(i)];
            result[2 * i + 1] = y[part.get(i)];
        }
        return result;
    }

    private static List<List<Integer>> triangles(double[] x, double[] y) {
        List<Integer> left = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            left.add(i);
        }
        List<List<Integer>> result = new ArrayList<>();
        while (left.size() > 3) {
            int ear = ear(x, y, left);
            int n = left.size();
            result.add(List.of(left.get((ear + n - 1) % n), left.get(ear), left.get((ear + 1) % n)));
            left.remove(ear);
        }
        result.add(List.copyOf(left));
        result.removeIf(t -> cross(x, y, t.get(0), t.get(1), t.get(2)) <= 0);
        return result;
    }

    /** The ear whose new diagonal is shortest, so that slivers are rare. */
    private static int ear(double[] x, double[] y, List<Integer> left) {
        int n = left.size();
        int best = -1;
        double shortest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            int a = left.get((i + n - 1) % n);
            int b = left.get(i);
            int c = left.get((i + 1) % n);
            double diagonal = Math.hypot(x[c] - x[a], y[c] - y[a]);
            if (diagonal < shortest && cross(x, y, a, b, c) > 0 && empty(x, y, left, a, b, c)) {
                best = i;
                shortest = diagonal;
            }
        }
        if (best >= 0) {
            return best;
        }
        for (int i = 0; i < n; i++) {
            if (Math.abs(cross(x, y, left.get((i + n - 1) % n), left.get(i), left.get((i + 1) % n))) < 1e-300) {
                return i;
            }
        }
        throw new NestException("an outline crosses or touches itself; split the pattern there");
    }

    private static boolean empty(double[] x, double[] y, List<Integer> left, int a, int b, int c) {
        for (int p : left) {
            boolean corner =
                    x[p] == x[a] && y[p] == y[a] || x[p] == x[b] && y[p] == y[b] || x[p] == x[c] && y[p] == y[c];
            if (!corner && cross(x, y, a, b, p) >= 0 && cross(x, y, b, c, p) >= 0 && cross(x, y, c, a, p) >= 0) {
                return false;
            }
        }
        return true;
    }

    /** The two polygons joined across their common edge; empty if they have none. */
    private static List<Integer> together(List<Integer> p, List<Integer> q) {
        for (int i = 0; i < p.size(); i++) {
            int a = p.get(i);
            int b = p.get((i + 1) % p.size());
            for (int j = 0; j < q.size(); j++) {
                if (q.get(j) == b && q.get((j + 1) % q.size()) == a) {
                    List<Integer> both = new ArrayList<>();
                    for (int k = 0; k < p.size(); k++) {
                        both.add(p.get((i + 1 + k) % p.size()));
                    }
                    for (int k = 1; k < q.size() - 1; k++) {
                        both.add(q.get((j + 1 + k) % q.size()));
                    }
                    return both;
                }
            }
        }
        return List.of();
    }

    private static boolean convex(double[] x, double[] y, List<Integer> p) {
        int n = p.size();
        for (int i = 0; i < n; i++) {
            if (cross(x, y, p.get(i), p.get((i + 1) % n), p.get((i + 2) % n)) < 0) {
                return false;
            }
        }
        return true;
    }

    private static double cross(double[] x, double[] y, int a, int b, int c) {
        return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
    }
}
