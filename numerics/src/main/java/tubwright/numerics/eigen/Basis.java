// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.List;
import tubwright.numerics.Parallel;
import tubwright.numerics.SymmetricMatrix;

/**
 * Vectors orthonormal in the inner product of a positive semi-definite matrix B, each kept together with its product
 * with B. Sums run over fixed ranges of rows, so that results do not depend on the number of threads.
 */
final class Basis {
    private static final int ROWS = 1 << 14;

    private final SymmetricMatrix b;
    private final List<double[]> vectors = new ArrayList<>();
    private final List<double[]> products = new ArrayList<>();

    Basis(SymmetricMatrix b) {
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
     * @param coefficients length at least size + 1; receives what was taken along each vector, and the norm left
     * @return whether anything was left; if not, the basis is unchanged and the norm is set to zero
     */
    boolean orthogonalise(double[] w, double[] coefficients) {
        double taken = 0;
        for (int pass = 0; pass < 2; pass++) {
            double[] part = coefficientsOf(w);
            subtract(part, w);
            for (int k = 0; k < part.length; k++) {
                coefficients[k] += part[k];
                taken += part[k] * part[k];
            }
        }
        double[] bw = b.multiply(w);
        double square = Math.max(0, dot(w, bw));
        double norm = Math.sqrt(square);
        double before = Math.sqrt(taken + square);
        if (!(norm > 1e-12 * before) || !Double.isFinite(norm)) {
            coefficients[size()] = 0;
            return false;
        }
        if (norm < 1e-6 * before) {
            // Cancellation has spoilt orthogonality; once more. What is taken here is below rounding of the first pass.
            subtract(coefficientsOf(w), w);
            b.multiply(w, bw);
            norm = Math.sqrt(Math.max(0, dot(w, bw)));
            if (!(norm > 1e-12 * before)) {
                coefficients[size()] = 0;
                return false;
            }
        }
        double scale = 1 / norm;
        for (int i = 0; i < w.length; i++) {
            w[i] *= scale;
            bw[i] *= scale;
        }
        coefficients[size()] = norm;
        addOrthonormal(w, bw);
        return true;
    }

    /** Inner products of a vector with all vectors of the basis. */
    private double[] coefficientsOf(double[] w) {
        int parts = (w.length + ROWS - 1) / ROWS;
        double[][] sums = new double[parts][size()];
        Parallel.run(parts, part -> {
            int to = Math.min(w.length, (part + 1) * ROWS);
            for (int k = 0; k < sums[part].length; k++) {
                sums[part][k] = dot(products.get(k), w, part * ROWS, to);
            }
        });
        double[] all = new double[size()];
        for (double[] sum : sums) {
            for (int k = 0; k < all.length; k++) {
                all[k] += sum[k];
            }
        }
        return all;
    }

    private void subtract(double[] part, double[] w) {
        int parts = (w.length + ROWS - 1) / ROWS;
        Parallel.run(parts, p -> {
            int to = Math.min(w.length, (p + 1) * ROWS);
            for (int k = 0; k < part.length; k++) {
                double f = part[k];
                double[] v = vectors.get(k);
                for (int i = p * ROWS; i < to; i++) {
                    w[i] -= f * v[i];
                }
            }
        });
    }

    /** Linear combinations of the first rows[0].length vectors, or of their products with B. */
    double[][] combine(double[][] rows, boolean ofProducts) {
        List<double[]> from = ofProducts ? products : vectors;
        int n = b.order();
        double[][] out = new double[rows.length][n];
        int parts = (n + ROWS - 1) / ROWS;
        Parallel.run(parts, part -> {
            int to = Math.min(n, (part + 1) * ROWS);
            for (int r = 0; r < rows.length; r++) {
                double[] target = out[r];
                for (int k = 0; k < rows[r].length; k++) {
                    double f = rows[r][k];
                    double[] v = from.get(k);
                    for (int i = part * ROWS; i < to; i++) {
                        target[i] += f * v[i];
                    }
                }
            }
        });
        return out;
    }

    static double dot(double[] x, double[] y) {
        return dot(x, y, 0, x.length);
    }

    private static double dot(double[] x, double[] y, int from, int to) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int i = from;
        for (; i + 4 <= to; i += 4) {
            s0 += x[i] * y[i];
            s1 += x[i + 1] * y[i + 1];
            s2 += x[i + 2] * y[i + 2];
            s3 += x[i + 3] * y[i + 3];
        }
        for (; i < to; i++) {
            s0 += x[i] * y[i];
        }
        return s0 + s1 + (s2 + s3);
    }
}
