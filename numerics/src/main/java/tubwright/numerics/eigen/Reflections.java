// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.Arrays;

/** The orthogonal factor Q of a small dense matrix, as Householder reflections (Golub and Van Loan 2013, §5.2). */
final class Reflections {
    /** Unit vectors; the j-th is zero before its j-th entry. */
    private final double[][] directions;

    private Reflections(double[][] directions) {
        this.directions = directions;
    }

    /**
     * Factorises a matrix of full rank, no more columns than rows.
     *
     * @param columns overwritten by the columns of R, zero below the diagonal
     */
    static Reflections of(double[][] columns) {
        double[][] directions = new double[columns.length][];
        for (int j = 0; j < columns.length; j++) {
            double[] v = columns[j].clone();
            double square = 0;
            for (int i = 0; i < v.length; i++) {
                v[i] = i < j ? 0 : v[i];
                square += v[i] * v[i];
            }
            double before = v[j];
            v[j] += Math.copySign(Math.sqrt(square), before);
            double length = Math.sqrt(square - before * before + v[j] * v[j]);
            for (int i = j; i < v.length; i++) {
                v[i] /= length;
            }
            directions[j] = v;
            for (int c = j; c < columns.length; c++) {
                reflect(v, columns[c], j);
            }
            Arrays.fill(columns[j], j + 1, v.length, 0);
        }
        return new Reflections(directions);
    }

    /** Overwrites x with Q x. */
    void plain(double[] x) {
        for (int j = directions.length - 1; j >= 0; j--) {
            reflect(directions[j], x, j);
        }
    }

    /** Overwrites x with Qᵀ x. */
    void transposed(double[] x) {
        for (int j = 0; j < directions.length; j++) {
            reflect(directions[j], x, j);
        }
    }

    private static void reflect(double[] v, double[] x, int from) {
        double along = 0;
        for (int i = from; i < v.length; i++) {
            along += v[i] * x[i];
        }
        for (int i = from; i < v.length; i++) {
            x[i] -= 2 * along * v[i];
        }
    }
}
