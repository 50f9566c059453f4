// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import tubwright.numerics.Parallel;
import tubwright.numerics.SingularMatrixException;

/**
 * Partial elimination of a dense front: the first {@code width} of its rows are pivots, the rest receives the Schur
 * complement. Only the upper triangle counts; a row k of the result holds d_k times row k of Lᵀ.
 */
final class Front {
    private static final int PANEL = 96;
    private static final int TILE = 256;
    private static final int CHUNK = 48;
    private static final double PARALLEL_WORK = 4e6;

    private Front() {}

    /**
     * @param f rows of the front, overwritten
     * @param width number of pivots
     * @param pivots receives the pivots
     * @param inverse receives their reciprocals, length at least {@code width}
     * @param check judges each pivot
     */
    static void eliminate(double[][] f, int width, double[] pivots, double[] inverse, PivotCheck check) {
        int m = f.length;
        for (int p0 = 0; p0 < width; p0 += PANEL) {
            int p1 = Math.min(width, p0 + PANEL);
            for (int i = p0; i < p1; i++) {
                if ((i - p0) % 3 == 0) {
                    Kernel.update(f, inverse, p0, i, i, Math.min(p1, i + 3), i, p1);
                }
                for (int k = i - (i - p0) % 3; k < i; k++) {
                    Kernel.oneByOne(f[i], f[k], -f[k][i] * inverse[k], i, p1);
                }
                double d = f[i][i];
                check.accept(i, d);
                pivots[i] = d;
                inverse[i] = 1 / d;
            }
            int from = p0;
            int to = p1;
            double work = (double) (p1 - p0) * (m - p1) * (m - p1);
            if (work < PARALLEL_WORK || Parallel.threads() == 1) {
                for (int j = p1; j < m; j += TILE) {
                    solvePanel(f, inverse, from, to, j, Math.min(m, j + TILE));
                }
                updateRows(f, inverse, from, to, p1, m);
            } else {
                int columns = (m - p1 + TILE - 1) / TILE;
                Parallel.run(columns, c -> {
                    int j = to + c * TILE;
                    solvePanel(f, inverse, from, to, j, Math.min(m, j + TILE));
                });
                int chunks = (m - p1 + CHUNK - 1) / CHUNK;
                Parallel.run(chunks, c -> {
                    int i = to + c * CHUNK;
                    updateRows(f, inverse, from, to, i, Math.min(m, i + CHUNK));
                });
            }
        }
    }

    /** Columns j0 to j1 of the pivot rows, each minus what the earlier ones of the panel eliminate. */
    private static void solvePanel(double[][] f, double[] inverse, int p0, int p1, int j0, int j1) {
        for (int i = p0; i < p1; i += 3) {
            int end = Math.min(p1, i + 3);
            Kernel.update(f, inverse, p0, i, i, end, j0, j1);
            for (int r = i + 1; r < end; r++) {
                for (int k = i; k < r; k++) {
                    Kernel.oneByOne(f[r], f[k], -f[k][r] * inverse[k], j0, j1);
                }
            }
        }
    }

    private static void updateRows(double[][] f, double[] inverse, int p0, int p1, int i0, int i1) {
        int m = f.length;
        for (int j = i0 - i0 % TILE; j < m; j += TILE) {
            Kernel.update(f, inverse, p0, p1, i0, Math.min(i1, j + TILE), Math.max(j, i0), Math.min(m, j + TILE));
        }
    }

    /** Told of each pivot of a front as it appears. */
    @FunctionalInterface
    interface PivotCheck {
        /** @throws SingularMatrixException if the elimination cannot go on */
        void accept(int index, double pivot);
    }
}
