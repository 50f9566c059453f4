// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import tubwright.numerics.SymmetricMatrix;

/** Multiplies vectors by a symmetric matrix, and reads no more of it than it must. */
interface Product {
    /** Number of unknowns. */
    int order();

    /** The products as new arrays. */
    double[][] of(double[][] x);

    /** The product as a new array. */
    default double[] of(double[] x) {
        return of(new double[][] {x})[0];
    }

    /** By the matrix as it is or, where most of what it stores is zero, as in masses and geometric stiffness, by its rows without. */
    static Product by(SymmetricMatrix matrix) {
        int stored = 0;
        for (double value : matrix.values()) {
            stored += value == 0 ? 0 : 1;
        }
        return 3L * stored < matrix.values().length ? SparseRows.of(matrix) : new Whole(matrix);
    }

    /** By all of a matrix. */
    record Whole(SymmetricMatrix matrix) implements Product {
        @Override
        public int order() {
            return matrix.order();
        }

        @Override
        public double[][] of(double[][] x) {
            return matrix.multiply(x);
        }

        @Override
        public double[] of(double[] x) {
            return matrix.multiply(x);
        }
    }
}
