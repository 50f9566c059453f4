// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.OptionalDouble;

/** A factorised symmetric matrix, ready to solve. To be closed by whoever asked for it. Solves may not run at once. */
public interface Factorisation extends AutoCloseable {
    /** Number of unknowns. */
    int order();

    /** Overwrites a right-hand side with the solution. */
    void solveInPlace(double[] vector);

    /**
     * Overwrites each right-hand side with its solution; cheaper than one at a time.
     *
     * @param vectors any number of arrays of length {@link #order()}
     */
    default void solveInPlace(double[][] vectors) {
        for (double[] vector : vectors) {
            solveInPlace(vector);
        }
    }

    /** The solution as a new array; the right-hand side is left alone. */
    default double[] solve(double[] rightHandSide) {
        double[] x = rightHandSide.clone();
        solveInPlace(x);
        return x;
    }

    /** The solutions as new arrays; the right-hand sides are left alone. */
    default double[][] solve(double[][] rightHandSides) {
        double[][] x = new double[rightHandSides.length][];
        for (int k = 0; k < x.length; k++) {
            x[k] = rightHandSides[k].clone();
        }
        solveInPlace(x);
        return x;
    }

    /** Entries of the triangular factor, diagonal included. */
    long factorEntries();

    /** Floating-point operations (multiplications and additions) of the factorisation. */
    double flops();

    /** Number of negative pivots: of eigenvalues below zero. Zero for a positive definite matrix. */
    int negativePivots();

    /** Natural logarithm of the absolute value of the determinant, if the backend shows its pivots. */
    OptionalDouble logAbsDeterminant();

    @Override
    void close();

    /**
     * How well {@code x} solves {@code matrix x = rightHandSide}: ‖b - A x‖∞ / (‖|A|·|x| + |b|‖∞), the normwise form of
     * the backward error of Oettli and Prager (1964). About 1e-16 to 1e-14 is what double precision gives.
     */
    static double residual(SymmetricMatrix matrix, double[] x, double[] rightHandSide) {
        return residuals(matrix, magnitudes(matrix), new double[][] {x}, new double[][] {rightHandSide})[0];
    }

    /** The matrix of the entries' magnitudes. */
    static SymmetricMatrix magnitudes(SymmetricMatrix matrix) {
        double[] values = matrix.values();
        double[] magnitudes = new double[values.length];
        Parallel.chunks(values.length, (from, to) -> {
            for (int k = from; k < to; k++) {
                magnitudes[k] = Math.abs(values[k]);
            }
        });
        return new SymmetricMatrix(matrix.pattern(), magnitudes);
    }

    /** As {@link #residual} for several solutions at once. */
    static double[] residuals(
            SymmetricMatrix matrix, SymmetricMatrix magnitudes, double[][] x, double[][] rightHandSides) {
        double[][] ax = matrix.multiply(x);
        double[][] absX = new double[x.length][];
        for (int k = 0; k < x.length; k++) {
            absX[k] = x[k].clone();
            for (int i = 0; i < absX[k].length; i++) {
                absX[k][i] = Math.abs(absX[k][i]);
            }
        }
        double[][] scale = magnitudes.multiply(absX);
        double[] residuals = new double[x.length];
        for (int k = 0; k < x.length; k++) {
            double worst = 0;
            double largest = 0;
            for (int i = 0; i < ax[k].length; i++) {
                worst = Math.max(worst, Math.abs(rightHandSides[k][i] - ax[k][i]));
                largest = Math.max(largest, scale[k][i] + Math.abs(rightHandSides[k][i]));
            }
            residuals[k] = largest == 0 ? 0 : worst / largest;
        }
        return residuals;
    }
}
