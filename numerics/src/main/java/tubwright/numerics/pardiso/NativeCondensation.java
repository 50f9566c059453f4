// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import static java.lang.foreign.ValueLayout.JAVA_DOUBLE;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.util.Arrays;
import java.util.Optional;
import tubwright.numerics.Condensed;
import tubwright.numerics.Parallel;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * A Schur complement by the library: the wanted unknowns are left over at the end of one factorisation, which costs a small
 * part of solving for as many columns. The load goes along as one more unknown that is left over: its column becomes what
 * arrives, its diagonal what gives.
 */
final class NativeCondensation {
    private static final int ANALYSE_AND_FACTORISE = 12;
    private static final int RELEASE_ALL = -1;
    private static final int SYMMETRIC = -2;
    /** Control words, counted from 0. */
    private static final int OWN_CONTROL = 0;

    private static final int ORDERING = 1;
    private static final int PERTURBATION = 9;
    private static final int PERTURBED = 13;
    private static final int PIVOTING = 20;
    private static final int NEGATIVE = 22;
    private static final int REPRODUCIBLE_ON = 33;
    private static final int ZERO_BASED = 34;
    private static final int SCHUR = 35;

    private final SymmetricMatrix matrix;
    private final SymmetricPattern pattern;
    private final int[] kept;
    private final double[] load;
    private final double[] scale;
    private final boolean[] left;
    private int[] rowStart = new int[0];
    private int[] columns = new int[0];
    private double[] values = new double[0];

    NativeCondensation(SymmetricMatrix matrix, int[] kept, double[] load) {
        this.matrix = matrix;
        this.kept = kept;
        this.load = load;
        pattern = matrix.pattern();
        left = new boolean[pattern.order() + 1];
        Arrays.stream(kept).forEach(i -> left[i] = true);
        left[pattern.order()] = true;
        scale = new double[left.length];
        Arrays.fill(scale, 1);
        double[] diagonal = matrix.diagonal();
        for (int i = 0; i < diagonal.length; i++) {
            if (!left[i] && diagonal[i] > 0 && diagonal[i] < Double.POSITIVE_INFINITY) {
                scale[i] = Math.scalb(1.0, -Math.floorDiv(Math.getExponent(diagonal[i]), 2));
            }
        }
    }

    /**
     * Works it out.
     *
     * @return not there where the others are not held, or the library cannot do it
     */
    Optional<Condensed> by(Pardiso pardiso) {
        int n = pattern.order() + 1;
        int m = kept.length + 1;
        rows();
        try (Arena arena = Arena.ofShared()) {
            MemorySegment handle = arena.allocate(64 * 8L, 64);
            MemorySegment control = arena.allocate(64 * 4L, 64);
            MemorySegment schur = arena.allocate(8L * m * m, 64);
            MemorySegment error = arena.allocate(JAVA_INT);
            int[] marks = new int[n];
            for (int i = 0; i < n; i++) {
                marks[i] = left[i] ? 1 : 0;
            }
            set(control, OWN_CONTROL, 1);
            set(control, ORDERING, 2);
            set(control, PERTURBATION, 13);
            set(control, PIVOTING, 0);
            set(control, NEGATIVE, -1);
            set(control, REPRODUCIBLE_ON, Parallel.threads());
            set(control, ZERO_BASED, 1);
            set(control, SCHUR, 1);
            MemorySegment[] arguments = {
                handle,
                arena.allocateFrom(JAVA_INT, 1),
                arena.allocateFrom(JAVA_INT, 1),
                arena.allocateFrom(JAVA_INT, SYMMETRIC),
                arena.allocateFrom(JAVA_INT, ANALYSE_AND_FACTORISE),
                arena.allocateFrom(JAVA_INT, n),
                arena.allocateFrom(JAVA_DOUBLE, values),
                arena.allocateFrom(JAVA_INT, rowStart),
                arena.allocateFrom(JAVA_INT, columns),
                arena.allocateFrom(JAVA_INT, marks),
                arena.allocateFrom(JAVA_INT, 1),
                control,
                arena.allocateFrom(JAVA_INT, 0),
                schur,
                schur,
                error
            };
            pardiso.call(arguments);
            boolean good = error.get(JAVA_INT, 0) == 0 && get(control, PERTURBED) == 0 && get(control, NEGATIVE) <= 0;
            arguments[4].set(JAVA_INT, 0, RELEASE_ALL);
            pardiso.call(arguments);
            return good ? Optional.of(read(schur, m)) : Optional.empty();
        }
    }

    private Condensed read(MemorySegment schur, int m) {
        int k = m - 1;
        double[] reduced = new double[k * k];
        double[] arrived = new double[k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                reduced[i * k + j] = schur.getAtIndex(JAVA_DOUBLE, (long) Math.max(i, j) * m + Math.min(i, j));
            }
            arrived[i] = schur.getAtIndex(JAVA_DOUBLE, (long) k * m + i);
        }
        return new Condensed(reduced, arrived, -schur.getAtIndex(JAVA_DOUBLE, (long) k * m + k));
    }

    /** Upper triangle by single entries, with the load as a last column. */
    private void rows() {
        int b = pattern.blockSize();
        int n = pattern.order();
        int loaded = (int) Arrays.stream(load).filter(p -> p != 0).count();
        rowStart = new int[n + 2];
        columns = new int[pattern.entries() + loaded + 1];
        values = new double[columns.length];
        int at = 0;
        for (int i = 0; i < n; i++) {
            int node = i / b;
            int from = pattern.rowStart(node, i % b);
            int start = at;
            for (int p = pattern.nodeStart()[node]; p < pattern.nodeStart()[node + 1]; p++) {
                int first = pattern.nodeColumns()[p] * b;
                for (int q = pattern.nodeColumns()[p] == node ? i % b : 0; q < b; q++) {
                    columns[at++] = first + q;
                }
            }
            for (int e = start; e < at; e++) {
                values[e] = matrix.values()[from + e - start] * scale[i] * scale[columns[e]];
            }
            if (load[i] != 0) {
                columns[at] = n;
                values[at++] = load[i] * scale[i];
            }
            rowStart[i + 1] = at;
        }
        columns[at++] = n;
        rowStart[n + 1] = at;
    }

    private static void set(MemorySegment control, int word, int value) {
        control.setAtIndex(JAVA_INT, word, value);
    }

    private static int get(MemorySegment control, int word) {
        return control.getAtIndex(JAVA_INT, word);
    }
}
