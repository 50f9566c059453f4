// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.Arrays;

/**
 * A symmetric system some of whose unknowns are prescribed. Rows and columns of the prescribed unknowns are cleared but
 * for the diagonal, so that pattern and order stay; what was cleared is kept, to carry prescribed values to the
 * right-hand side and to give reactions.
 *
 * <p>With f the free and c the prescribed unknowns: K_ff u_f = p_f - K_fc u_c, reactions r_c = K_cf u_f + K_cc u_c - p_c.
 */
public final class ConstrainedSystem {
    private final SymmetricMatrix matrix;
    private final boolean[] fixed;
    /** Cleared entries (row, column, value), row ≤ column, at least one of the two prescribed. */
    private final int[] rows;

    private final int[] columns;
    private final double[] values;

    private ConstrainedSystem(SymmetricMatrix matrix, boolean[] fixed, int[] rows, int[] columns, double[] values) {
        this.matrix = matrix;
        this.fixed = fixed;
        this.rows = rows;
        this.columns = columns;
        this.values = values;
    }

    /**
     * Prescribes unknowns. The diagonal of a prescribed unknown stays if it is positive, which keeps the matrix evenly
     * scaled, and becomes 1 otherwise.
     *
     * @param matrix changed in place and from then on owned by the result
     * @param fixed which unknowns are prescribed
     */
    public static ConstrainedSystem constrainInPlace(SymmetricMatrix matrix, boolean[] fixed) {
        if (fixed.length != matrix.order()) {
            throw new IllegalArgumentException("Need one mark for each of " + matrix.order() + " unknowns");
        }
        boolean[] own = fixed.clone();
        Counter counter = new Counter();
        visit(matrix.pattern(), own, counter);
        int[] rows = new int[counter.count];
        int[] columns = new int[counter.count];
        double[] values = new double[counter.count];
        double[] all = matrix.values();
        int[] next = new int[1];
        visit(matrix.pattern(), own, (row, column, position) -> {
            int k = next[0]++;
            rows[k] = row;
            columns[k] = column;
            values[k] = all[position];
            if (row != column) {
                all[position] = 0;
            } else if (!(all[position] > 0)) {
                all[position] = 1;
            }
        });
        return new ConstrainedSystem(matrix, own, rows, columns, values);
    }

    /** As {@link #constrainInPlace}, on a copy. */
    public static ConstrainedSystem constrain(SymmetricMatrix matrix, boolean[] fixed) {
        return constrainInPlace(matrix.copy(), fixed);
    }

    /**
     * Clears rows and columns of prescribed unknowns, diagonal too: for the second matrix of an eigenvalue problem.
     *
     * @param matrix changed in place
     */
    public static void clearInPlace(SymmetricMatrix matrix, boolean[] fixed) {
        double[] all = matrix.values();
        visit(matrix.pattern(), fixed, (row, column, position) -> all[position] = 0);
    }

    /** The matrix with prescribed unknowns decoupled. Not to be modified. */
    public SymmetricMatrix matrix() {
        return matrix;
    }

    /** Whether an unknown is prescribed. */
    public boolean isFixed(int unknown) {
        return fixed[unknown];
    }

    /** Number of unknowns that are not prescribed. */
    public int freeCount() {
        int free = 0;
        for (boolean f : fixed) {
            free += f ? 0 : 1;
        }
        return free;
    }

    /**
     * The right-hand side to solve with {@link #matrix()}.
     *
     * @param loads given right-hand side; entries of prescribed unknowns do not matter; left alone
     * @param prescribed values of the prescribed unknowns, other entries do not matter; left alone
     */
    public double[] rightHandSide(double[] loads, double[] prescribed) {
        double[] b = loads.clone();
        for (int i = 0; i < fixed.length; i++) {
            if (fixed[i]) {
                b[i] = matrix.values()[matrix.pattern().diagonalPosition(i)] * prescribed[i];
            }
        }
        for (int k = 0; k < rows.length; k++) {
            int i = rows[k];
            int j = columns[k];
            if (!fixed[i]) {
                b[i] -= values[k] * prescribed[j];
            } else if (!fixed[j]) {
                b[j] -= values[k] * prescribed[i];
            }
        }
        return b;
    }

    /** Solves for all unknowns with a factorisation of {@link #matrix()}; the prescribed ones come back exactly. */
    public double[] solve(Factorisation factorisation, double[] loads, double[] prescribed) {
        double[] x = rightHandSide(loads, prescribed);
        factorisation.solveInPlace(x);
        for (int i = 0; i < fixed.length; i++) {
            if (fixed[i]) {
                x[i] = prescribed[i];
            }
        }
        return x;
    }

    /** As {@link #solve(Factorisation, double[], double[])} with all prescribed unknowns zero. */
    public double[] solve(Factorisation factorisation, double[] loads) {
        return solve(factorisation, loads, new double[fixed.length]);
    }

    /**
     * What must act on the prescribed unknowns, beside the given loads, to hold them at their values.
     *
     * @param u a solution
     * @param loads right-hand side it was solved for
     * @return reactions, zero at free unknowns
     */
    public double[] reactions(double[] u, double[] loads) {
        double[] r = new double[fixed.length];
        for (int k = 0; k < rows.length; k++) {
            int i = rows[k];
            int j = columns[k];
            if (fixed[i]) {
                r[i] += values[k] * u[j];
            }
            if (i != j && fixed[j]) {
                r[j] += values[k] * u[i];
            }
        }
        for (int i = 0; i < fixed.length; i++) {
            if (fixed[i]) {
                r[i] -= loads[i];
            }
        }
        return r;
    }

    /**
     * What couples some prescribed unknowns to all others: their rows of the full matrix, for columns of a condensation, one
     * prescribed unknown at a time, without a walk through the whole matrix for each.
     *
     * @param start where the entries of each begin, length one more than there are unknowns
     * @param others the other unknown of each entry
     * @param values of the matrix
     * @param fixed which unknowns are prescribed
     */
    public record Couplings(int[] start, int[] others, double[] values, boolean[] fixed) {
        /** Subtracts from a right-hand side what the k-th of them at one, all other prescribed ones at zero, leaves there. */
        public void subtract(int k, double[] from) {
            for (int e = start[k]; e < start[k + 1]; e++) {
                if (!fixed[others[e]]) {
                    from[others[e]] -= values[e];
                }
            }
        }

        /** What must act on the k-th of them to hold a field. */
        public double reaction(int k, double[] field) {
            double sum = 0;
            for (int e = start[k]; e < start[k + 1]; e++) {
                sum += values[e] * field[others[e]];
            }
            return sum;
        }
    }

    /** The couplings of prescribed unknowns. */
    public Couplings couplings(int[] unknowns) {
        int[] number = new int[fixed.length];
        Arrays.fill(number, -1);
        for (int k = 0; k < unknowns.length; k++) {
            number[unknowns[k]] = k;
        }
        int[] start = new int[unknowns.length + 1];
        for (int e = 0; e < rows.length; e++) {
            start[number[rows[e]] + 1] += number[rows[e]] >= 0 ? 1 : 0;
            start[number[columns[e]] + 1] += number[columns[e]] >= 0 && columns[e] != rows[e] ? 1 : 0;
        }
        for (int k = 0; k < unknowns.length; k++) {
            start[k + 1] += start[k];
        }
        int[] next = start.clone();
        int[] others = new int[start[unknowns.length]];
        double[] own = new double[others.length];
        for (int e = 0; e < rows.length; e++) {
            int i = number[rows[e]];
            int j = number[columns[e]];
            if (i >= 0) {
                others[next[i]] = columns[e];
                own[next[i]++] = values[e];
            }
            if (j >= 0 && j != i) {
                others[next[j]] = rows[e];
                own[next[j]++] = values[e];
            }
        }
        return new Couplings(start, others, own, fixed);
    }

    @FunctionalInterface
    private interface EntryVisitor {
        void visit(int row, int column, int position);
    }

    private static final class Counter implements EntryVisitor {
        private int count;

        @Override
        public void visit(int row, int column, int position) {
            count++;
        }
    }

    /** Visits every stored entry of a row or column of a prescribed unknown, in the order of the value array. */
    private static void visit(SymmetricPattern pattern, boolean[] fixed, EntryVisitor visitor) {
        int b = pattern.blockSize();
        boolean[] touched = new boolean[pattern.nodes()];
        for (int i = 0; i < fixed.length; i++) {
            touched[i / b] |= fixed[i];
        }
        for (int node = 0; node < pattern.nodes(); node++) {
            int from = pattern.nodeStart()[node];
            for (int p = from; p < pattern.nodeStart()[node + 1]; p++) {
                int other = pattern.nodeColumns()[p];
                if (!touched[node] && !touched[other]) {
                    continue;
                }
                for (int r = 0; r < b; r++) {
                    int row = node * b + r;
                    int position = pattern.rowStart(node, r) + (p - from) * b - r;
                    for (int s = p == from ? r : 0; s < b; s++) {
                        int column = other * b + s;
                        if (fixed[row] || fixed[column]) {
                            visitor.visit(row, column, position + s);
                        }
                    }
                }
            }
        }
    }
}
