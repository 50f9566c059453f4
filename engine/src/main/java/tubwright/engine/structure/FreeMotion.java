// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Looks for motions that nothing resists before a factorisation trips over them: for every connected body of the
 * structure, the rigid motions that its supports leave free, in words.
 */
final class FreeMotion {
    private static final String[] TRANSLATION = {"along x (fore and aft)", "along y (sideways)", "along z (up and down)"
    };
    private static final String[] ROTATION = {"about x (roll)", "about y (pitch)", "about z (yaw)"};

    /** A motion weaker than this share of the strongest restraint counts as free. */
    private static final double FREE = 1e-9;

    private final double[] positions;
    private final int[] parent;

    /**
     * @param positions 3 per node, m
     * @param groups node lists of everything that connects: elements, ties, bars
     */
    FreeMotion(double[] positions, Iterable<int[]> groups) {
        this.positions = positions;
        parent = new int[positions.length / 3];
        for (int n = 0; n < parent.length; n++) {
            parent[n] = n;
        }
        for (int[] group : groups) {
            for (int i = 1; i < group.length; i++) {
                int a = root(group[0]);
                int b = root(group[i]);
                parent[Math.max(a, b)] = Math.min(a, b);
            }
        }
    }

    /** Lists the bodies: each node's body is named by its lowest node. */
    int root(int n) {
        int r = n;
        while (parent[r] != r) {
            r = parent[r];
        }
        int walk = n;
        while (parent[walk] != r) {
            int next = parent[walk];
            parent[walk] = r;
            walk = next;
        }
        return r;
    }

    /**
     * The motions that the fixed unknowns leave free.
     *
     * @param body lowest node of the body
     * @param fixed one flag per unknown, 6 per node
     * @return words such as "along y (sideways)"; empty where the body is held
     */
    List<String> of(int body, boolean[] fixed) {
        double[] centre = new double[3];
        int count = 0;
        for (int n = 0; n < parent.length; n++) {
            if (root(n) == body && anyFixed(n, fixed)) {
                count++;
                for (int d = 0; d < 3; d++) {
                    centre[d] += positions[3 * n + d];
                }
            }
        }
        for (int d = 0; d < 3; d++) {
            centre[d] /= Math.max(1, count);
        }
        double[][] restraint = new double[6][6];
        for (int n = 0; n < parent.length; n++) {
            if (root(n) != body) {
                continue;
            }
            for (int d = 0; d < 6; d++) {
                if (fixed[6 * n + d]) {
                    addRow(restraint, row(n, d, centre));
                }
            }
        }
        return nullMotions(restraint);
    }

    /** The given holds thinned to six that just keep one body from moving; empty where they do not. */
    Optional<boolean[]> justEnough(boolean[] fixed) {
        double[] origin = Arrays.copyOf(positions, 3);
        List<double[]> kept = new ArrayList<>();
        boolean[] enough = new boolean[fixed.length];
        for (int n = 0; n < parent.length && kept.size() < 6; n++) {
            for (int d = 0; d < 6 && kept.size() < 6; d++) {
                if (!fixed[6 * n + d]) {
                    continue;
                }
                double[] row = row(n, d, origin);
                double before = length(row);
                for (double[] other : kept) {
                    double along = 0;
                    for (int i = 0; i < 6; i++) {
                        along += other[i] * row[i];
                    }
                    for (int i = 0; i < 6; i++) {
                        row[i] -= along * other[i];
                    }
                }
                double left = length(row);
                // A hold that adds little of its own would be a support on a short lever.
                if (left > 0.05 * before) {
                    for (int i = 0; i < 6; i++) {
                        row[i] /= left;
                    }
                    kept.add(row);
                    enough[6 * n + d] = true;
                }
            }
        }
        return kept.size() == 6 ? Optional.of(enough) : Optional.empty();
    }

    private static double length(double[] row) {
        double sum = 0;
        for (double v : row) {
            sum += v * v;
        }
        return Math.sqrt(sum);
    }

    private static boolean anyFixed(int n, boolean[] fixed) {
        for (int d = 0; d < 6; d++) {
            if (fixed[6 * n + d]) {
                return true;
            }
        }
        return false;
    }

    /** How unknown d of node n moves under the six rigid motions about the centre. */
    private double[] row(int n, int d, double[] c) {
        double[] row = new double[6];
        if (d >= 3) {
            row[d] = 1;
            return row;
        }
        row[d] = 1;
        double x = positions[3 * n] - c[0];
        double y = positions[3 * n + 1] - c[1];
        double z = positions[3 * n + 2] - c[2];
        switch (d) {
            case 0 -> {
                row[4] = z;
                row[5] = -y;
            }
            case 1 -> {
                row[3] = -z;
                row[5] = x;
            }
            default -> {
                row[3] = y;
                row[4] = -x;
            }
        }
        return row;
    }

    private static void addRow(double[][] matrix, double[] row) {
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                matrix[i][j] += row[i] * row[j];
            }
        }
    }

    /** Null space of a 6 × 6 positive semi-definite matrix by elimination with full pivoting, each vector in words. */
    private static List<String> nullMotions(double[][] matrix) {
        double[][] m = new double[6][];
        double scale = 1e-300;
        for (int i = 0; i < 6; i++) {
            m[i] = matrix[i].clone();
            scale = Math.max(scale, m[i][i]);
        }
        boolean[] used = new boolean[6];
        for (int step = 0; step < 6; step++) {
            int pivot = -1;
            for (int i = 0; i < 6; i++) {
                if (!used[i] && (pivot < 0 || m[i][i] > m[pivot][pivot])) {
                    pivot = i;
                }
            }
            if (m[pivot][pivot] <= FREE * scale) {
                break;
            }
            used[pivot] = true;
            for (int i = 0; i < 6; i++) {
                if (i == pivot) {
                    continue;
                }
                double factor = m[i][pivot] / m[pivot][pivot];
                for (int j = 0; j < 6; j++) {
                    m[i][j] -= factor * m[pivot][j];
                }
            }
        }
        List<String> words = new ArrayList<>();
        for (int free = 0; free < 6; free++) {
            if (!used[free]) {
                double[] motion = new double[6];
                motion[free] = 1;
                for (int i = 0; i < 6; i++) {
                    if (used[i]) {
                        motion[i] = -m[i][free] / m[i][i];
                    }
                }
                words.add(words(motion, free));
            }
        }
        return words;
    }

    private static String words(double[] motion, int free) {
        if (free < 3) {
            return "translation " + TRANSLATION[free];
        }
        boolean pure = Arrays.stream(motion, 0, 3).allMatch(v -> Math.abs(v) < 1e-6);
        String text = "rotation " + ROTATION[free - 3];
        return pure
                ? text
                : text
                        + String.format(
                                Locale.ROOT,
                                " combined with translation (%.3g, %.3g, %.3g) m per rad",
                                motion[0],
                                motion[1],
                                motion[2]);
    }
}
