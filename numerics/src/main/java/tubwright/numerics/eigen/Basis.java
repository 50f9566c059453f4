// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.List;
import tubwright.numerics.Parallel;

/**
 * Vectors orthonormal in the inner product of a positive semi-definite matrix B, each kept together with its product
 * with B. Sums run over fixed ranges of rows, so that results do not depend on the number of threads.
 */
final class Basis {
    private static final int ROWS = 1 << 14;
    /** So many rows of a block of vectors stay in the cache while those of the basis pass by. */
    private static final int STRIP = 1 << 10;
    /** Norms below this share of what was there before are rounding. */
    private static final double NOTHING = 1e-12;

    private final Product b;
    private final List<double[]> vectors = new ArrayList<>();
    private final List<double[]> products = new ArrayList<>();

    Basis(Product b) {
        this.b = b;
    }

    int size() {
        return vectors.size();
    }

    double[] vector(int k) {
        return vectors.get(k);
    }

    double[] product(int k) {
        return products.get(k);
    }

    void clear() {
        vectors.clear();
        products.clear();
    }

    /** Adds a vector known to be orthonormal to the others. */
    void addOrthonormal(double[] vector, double[] product) {
        vectors.add(vector);
        products.add(product);
    }

    /**
     * Orthogonalises a vector against all vectors of the basis, twice (Daniel, Gragg, Kaufman and Stewart 1976), and
     * adds it, scaled to unit norm.
     *
     * @param w overwritten; becomes part of the basis if it is added
     * @param coefficients length at least size + 1; what was taken along each vector is added, and the norm left is set
     * @return whether anything was left; if not, the basis is unchanged and the norm is set to zero
     */
    boolean orthogonalise(double[] w, double[] coefficients) {
        double[][] one = {w};
        double[][] taken = {coefficients};
        takeOut(one, 0, taken);
        takeOut(one, 0, taken);
        double before = length(coefficients);
        double[] bw = b.of(w);
        double norm = Math.sqrt(Math.max(0, dot(w, bw)));
        before = Math.hypot(before, norm);
        if (norm > NOTHING * before && norm < 1e-6 * before) {
            // Cancellation has spoilt orthogonality; once more. What is taken here is below rounding of the first pass.
            takeOut(one, 0, new double[][] {new double[coefficients.length]});
            bw = b.of(w);
            norm = Math.sqrt(Math.max(0, dot(w, bw)));
        }
        return add(w, bw, norm, before, coefficients);
    }

    private boolean add(double[] w, double[] bw, double norm, double before, double[] coefficients) {
        if (!(norm > NOTHING * before) || !Double.isFinite(norm)) {
            coefficients[size()] = 0;
            return false;
        }
        scale(w, 1 / norm);
        scale(bw, 1 / norm);
        coefficients[size()] = norm;
        addOrthonormal(w, bw);
        return true;
    }

    /**
     * Orthogonalises a block of vectors that are expected to lie mostly along the vectors from {@code local} on, as images
     * of a Lanczos step do: first against those, then against all, then among themselves; and adds what is left.
     *
     * @param w overwritten; become part of the basis
     * @param local first of the vectors along which the block is known to lie
     * @param coefficients one row for each vector of the block, as in {@link #orthogonalise}
     */
    void orthogonalise(double[][] w, int local, double[][] coefficients) {
        takeOut(w, local, coefficients);
        takeOut(w, 0, coefficients);
        double[][] bw = b.of(w);
        int old = size();
        for (int k = 0; k < w.length; k++) {
            double before = Math.sqrt(Math.max(0, dot(w[k], bw[k])));
            for (int pass = 0; pass < 2; pass++) {
                for (int j = old; j < size(); j++) {
                    double c = dot(products.get(j), w[k]);
                    coefficients[k][j] += c;
                    subtract(c, vectors.get(j), w[k]);
                    subtract(c, products.get(j), bw[k]);
                }
            }
            double left = Math.sqrt(Math.max(0, dot(w[k], bw[k])));
            double whole = Math.hypot(length(coefficients[k]), left);
            if (left > 1e-3 * before && before > 1e-6 * whole) {
                add(w[k], bw[k], left, whole, coefficients[k]);
            } else {
                // Nearly in the span of the others: with care, one by one.
                orthogonalise(w[k], coefficients[k]);
            }
        }
    }

    private static double length(double[] coefficients) {
        double sum = 0;
        for (double c : coefficients) {
            sum += c * c;
        }
        return Math.sqrt(sum);
    }

    /** Takes out what the vectors of a block have along those of the basis, and adds it to the coefficients. */
    private void takeOut(double[][] w, int from, double[][] coefficients) {
        int count = size() - from;
        if (count == 0) {
            return;
        }
        int n = b.order();
        int parts = (n + ROWS - 1) / ROWS;
        double[][][] sums = new double[parts][w.length][count];
        Parallel.run(parts, part -> {
            int to = Math.min(n, (part + 1) * ROWS);
            for (int r = part * ROWS; r < to; r += STRIP) {
                Strips.addDots(products.subList(from, size()), w, r, Math.min(to, r + STRIP), sums[part]);
            }
        });
        double[][] all = new double[w.length][count];
        for (double[][] sum : sums) {
            for (int k = 0; k < w.length; k++) {
                for (int i = 0; i < count; i++) {
                    all[k][i] += sum[k][i];
                }
            }
        }
        Parallel.run(parts, part -> {
            int to = Math.min(n, (part + 1) * ROWS);
            for (int r = part * ROWS; r < to; r += STRIP) {
                Strips.addCombination(-1, vectors.subList(from, size()), all, w, r, Math.min(to, r + STRIP));
            }
        });
        for (int k = 0; k < w.length; k++) {
            for (int i = 0; i < count; i++) {
                coefficients[k][from + i] += all[k][i];
            }
        }
    }

    private static void subtract(double factor, double[] v, double[] w) {
        for (int i = 0; i < w.length; i++) {
            w[i] -= factor * v[i];
        }
    }

    private static void scale(double[] v, double factor) {
        for (int i = 0; i < v.length; i++) {
            v[i] *= factor;
        }
    }

    /** Linear combinations of the first rows[0].length vectors, or of their products with B. */
    double[][] combine(double[][] rows, boolean ofProducts) {
        List<double[]> from = ofProducts ? products : vectors;
        int n = b.order();
        double[][] out = new double[rows.length][n];
        int parts = (n + ROWS - 1) / ROWS;
        Parallel.run(parts, part -> {
            int to = Math.min(n, (part + 1) * ROWS);
            for (int r = part * ROWS; r < to; r += STRIP) {
                Strips.addCombination(1, from, rows, out, r, Math.min(to, r + STRIP));
            }
        });
        return out;
    }

    static double dot(double[] x, double[] y) {
        return Strips.dot(x, y, 0, x.length);
    }
}
