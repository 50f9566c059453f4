// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Random;

/**
 * The largest eigenpairs of a small dense positive semi-definite matrix by subspace iteration (Golub and Van Loan 2013,
 * Matrix Computations, §8.2), for those who want a few good directions and not the last digits: where eigenvalues lie
 * close together their vectors may be mixed.
 *
 * @param values in falling order
 * @param vectors orthonormal, {@code vectors[k]} belongs to {@code values[k]}; zero beyond the rank of the matrix
 */
public record LeadingEigen(double[] values, double[][] vectors) {
    private static final int ROUNDS = 12;
    /** Vectors carried beside those asked for. */
    private static final int BESIDE = 6;

    private static final double NOTHING = 1e-10;
    private static final long SEED = 5;

    /** Some of the pairs of the leading n × n part of a full symmetric matrix, which is left alone. */
    public static LeadingEigen of(double[][] matrix, int n, int count) {
        int carried = Math.min(n, count + BESIDE);
        if (carried == n) {
            DenseEigen all = DenseEigen.of(matrix, n);
            return cut(all, all.vectors(), Math.min(n, count));
        }
        Random random = new Random(SEED);
        double[][] x = new double[carried][];
        for (int k = 0; k < carried; k++) {
            x[k] = random.doubles(n, -1, 1).toArray();
        }
        orthonormal(x);
        for (int round = 0; round < ROUNDS; round++) {
            x = times(x, matrix, n);
            orthonormal(x);
        }
        double[][] ax = times(x, matrix, n);
        double[][] small = new double[carried][carried];
        for (int i = 0; i < carried; i++) {
            for (int j = 0; j <= i; j++) {
                small[i][j] = dot(x[i], ax[j]);
                small[j][i] = small[i][j];
            }
        }
        DenseEigen ritz = DenseEigen.of(small, carried);
        double[][] vectors = new double[count][n];
        for (int k = 0; k < count; k++) {
            for (int i = 0; i < carried; i++) {
                add(vectors[k], ritz.vectors()[k][i], x[i]);
            }
        }
        return cut(ritz, vectors, count);
    }

    private static LeadingEigen cut(DenseEigen all, double[][] vectors, int count) {
        return new LeadingEigen(java.util.Arrays.copyOf(all.values(), count), java.util.Arrays.copyOf(vectors, count));
    }

    private static double[][] times(double[][] x, double[][] matrix, int n) {
        double[][] product = new double[x.length][n];
        for (int k = 0; k < x.length; k++) {
            for (int i = 0; i < n; i++) {
                add(product[k], x[k][i], matrix[i]);
            }
        }
        return product;
    }

    /** Gram and Schmidt, each vector twice. */
    private static void orthonormal(double[][] x) {
        for (int k = 0; k < x.length; k++) {
            for (int pass = 0; pass < 2; pass++) {
                double before = Math.sqrt(dot(x[k], x[k]));
                for (int i = 0; i < k; i++) {
                    add(x[k], -dot(x[i], x[k]), x[i]);
                }
                double size = Math.sqrt(dot(x[k], x[k]));
                // Of a vector that the others span nothing is left but rounding.
                double scale = size > NOTHING * before ? 1 / size : 0;
                for (int j = 0; j < x[k].length; j++) {
                    x[k][j] *= scale;
                }
            }
        }
    }

    private static void add(double[] to, double factor, double[] from) {
        for (int j = 0; j < to.length; j++) {
            to[j] += factor * from[j];
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
