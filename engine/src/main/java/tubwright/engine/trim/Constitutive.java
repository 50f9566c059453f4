// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import tubwright.engine.structure.ShellIntegral;

/**
 * Stiffness or compliance of a shell over its nine generalised strains. First-order shells couple neither stretching
 * and bending (6 strains) with transverse shear (2) nor anything with drilling (1), so that 41 numbers say it all: a
 * 6 × 6, a 2 × 2 and a 1 × 1 block, each row-major. Drilling stiffness is a fixed share of A66, hence linear in the
 * laminate.
 */
final class Constitutive {
    /** Entries of the three blocks. */
    static final int ENTRIES = 41;

    /** Row and column strain of each entry. */
    static final int[] ROW = new int[ENTRIES];

    static final int[] COLUMN = new int[ENTRIES];

    private static final int[] SIZES = {6, 2, 1};

    static {
        int k = 0;
        int first = 0;
        for (int size : SIZES) {
            for (int i = 0; i < size * size; i++) {
                ROW[k] = first + i / size;
                COLUMN[k] = first + i % size;
                k++;
            }
            first += size;
        }
    }

    /** Of each entry which one mirrors it across the diagonal. */
    private static final int[] MIRRORED = new int[ENTRIES];

    /** The entries on and above the diagonals. */
    static final int[] UPPER;

    static {
        for (int k = 0; k < ENTRIES; k++) {
            for (int l = 0; l < ENTRIES; l++) {
                MIRRORED[k] = ROW[l] == COLUMN[k] && COLUMN[l] == ROW[k] ? l : MIRRORED[k];
            }
        }
        UPPER = java.util.stream.IntStream.range(0, ENTRIES)
                .filter(k -> ROW[k] <= COLUMN[k])
                .toArray();
    }

    private Constitutive() {}

    /** From the 8 × 8 matrix of a laminate. */
    static double[] of(double[] laminate) {
        double[] c = new double[ENTRIES];
        for (int k = 0; k < ENTRIES - 1; k++) {
            c[k] = laminate[8 * ROW[k] + COLUMN[k]];
        }
        c[ENTRIES - 1] = ShellIntegral.drilling(laminate);
        return c;
    }

    /**
     * The 8 × 8 matrix again; drilling goes by itself.
     *
     * @param mirrored whether for the other side of the car, where γxy, κxy and γyz change sign
     */
    static double[] matrix(double[] c, boolean mirrored) {
        double[] matrix = new double[64];
        for (int k = 0; k < ENTRIES - 1; k++) {
            boolean flip = mirrored && flips(ROW[k]) != flips(COLUMN[k]);
            matrix[8 * ROW[k] + COLUMN[k]] = flip ? -c[k] : c[k];
        }
        return matrix;
    }

    private static boolean flips(int strain) {
        return strain == 2 || strain == 5 || strain == 7;
    }

    /**
     * The 25 numbers g with Σ c g = tr(C Gᵀ) for every symmetric C, c its entries on and above the diagonals.
     *
     * @param offset where G begins
     */
    static double[] folded(double[] g, int offset) {
        double[] folded = new double[UPPER.length];
        for (int i = 0; i < UPPER.length; i++) {
            int k = UPPER[i];
            folded[i] = g[offset + k] + (k == MIRRORED[k] ? 0 : g[offset + MIRRORED[k]]);
        }
        return folded;
    }

    /** The symmetric G that folds to these numbers. */
    static double[] unfolded(double[] folded) {
        double[] g = new double[ENTRIES];
        for (int i = 0; i < UPPER.length; i++) {
            int k = UPPER[i];
            g[k] = k == MIRRORED[k] ? folded[i] : 0.5 * folded[i];
            g[MIRRORED[k]] = g[k];
        }
        return g;
    }

    /** tr(C Gᵀ), C from any place of an array of such 41 numbers. */
    static double trace(double[] c, double[] g, int offset) {
        double sum = 0;
        for (int k = 0; k < ENTRIES; k++) {
            sum += c[k] * g[offset + k];
        }
        return sum;
    }

    /** √G_rr for each of the nine strains, G from any place of an array. */
    static double[] extent(double[] g, int offset) {
        double[] extent = new double[9];
        for (int k = 0; k < ENTRIES; k++) {
            if (ROW[k] == COLUMN[k]) {
                extent[ROW[k]] = Math.sqrt(Math.max(0, g[offset + k]));
            }
        }
        return extent;
    }

    /** Σ |c_rs| a_r b_s: no trace of c with a Gramian of fields of these extents is larger. */
    static double magnitude(double[] c, double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < ENTRIES; k++) {
            sum += Math.abs(c[k]) * a[ROW[k]] * b[COLUMN[k]];
        }
        return sum;
    }

    /** a + factor · b. */
    static double[] plus(double[] a, double factor, double[] b) {
        double[] sum = a.clone();
        for (int k = 0; k < ENTRIES; k++) {
            sum[k] += factor * b[k];
        }
        return sum;
    }

    static double[] minus(double[] a, double[] b) {
        return plus(a, -1, b);
    }

    static double[] transposed(double[] a, int offset) {
        double[] t = new double[ENTRIES];
        int from = 0;
        for (int size : SIZES) {
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    t[from + i * size + j] = a[offset + from + j * size + i];
                }
            }
            from += size * size;
        }
        return t;
    }

    /** The matrix product a b. */
    static double[] product(double[] a, double[] b) {
        double[] c = new double[ENTRIES];
        int from = 0;
        for (int size : SIZES) {
            for (int i = 0; i < size; i++) {
                for (int k = 0; k < size; k++) {
                    double v = a[from + i * size + k];
                    for (int j = 0; v != 0 && j < size; j++) {
                        c[from + i * size + j] += v * b[from + k * size + j];
                    }
                }
            }
            from += size * size;
        }
        return c;
    }

    /**
     * The inverse, by Cholesky on evenly scaled blocks.
     *
     * @throws IllegalArgumentException if the matrix is not positive definite
     */
    static double[] inverse(double[] c) {
        double[] result = new double[ENTRIES];
        int from = 0;
        for (int size : SIZES) {
            double[] block = new double[size * size];
            System.arraycopy(c, from, block, 0, block.length);
            System.arraycopy(SmallSystem.inverse(block, size), 0, result, from, block.length);
            from += size * size;
        }
        return result;
    }

    /** C₀ C⁻¹ C₀: what a stress of C₀ costs in complementary energy under C, in terms of strain under C₀. */
    static double[] weighted(double[] nominal, double[] other) {
        return product(product(nominal, inverse(other)), nominal);
    }
}
