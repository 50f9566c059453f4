// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import static java.lang.foreign.ValueLayout.JAVA_DOUBLE;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.util.SplittableRandom;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Parallel;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * One handle of the library: pattern, order of elimination and at most one factor. Index and value arrays live off the
 * heap, because the collector must be free to run during the long native calls.
 *
 * <p>The matrix is handed over as D A D, with D the powers of two that bring its diagonal into [1/2, 2): exact, and it
 * makes the size of a pivot mean the same for unknowns of any unit.
 */
final class NativeHandle implements AutoCloseable {
    private static final int ANALYSE = 11;
    private static final int FACTORISE = 22;
    private static final int SOLVE = 33;
    private static final int RELEASE_ALL = -1;
    /** Places of the arguments that change. */
    private static final int VALUES = 6;

    private static final int RIGHT = 13;
    private static final int SOLUTION = 14;
    /** Control words, counted from 0 (the manual counts from 1). */
    private static final int OWN_CONTROL = 0;

    private static final int ORDERING = 1;
    private static final int PERTURBATION = 9;
    private static final int FACTOR_ENTRIES = 17;
    private static final int FACTOR_MEGAFLOPS = 18;
    private static final int PIVOTING = 20;
    private static final int NEGATIVE = 22;
    private static final int BAD_PIVOT = 29;
    private static final int ZERO_BASED = 34;
    private static final int DIAGONAL_WANTED = 55;
    private static final int PERTURBED = 13;

    /** A pivot this small against the diagonal it came from is rounding. */
    private static final double TINY = 1e-13;

    private final Pardiso pardiso;
    private final SymmetricPattern pattern;
    private final boolean positiveDefinite;
    private final Arena arena = Arena.ofShared();
    private final MemorySegment handle = arena.allocate(64 * 8L, 64);
    private final MemorySegment control = arena.allocate(64 * 4L, 64);
    private final MemorySegment phase = arena.allocate(JAVA_INT);
    private final MemorySegment one = arena.allocate(JAVA_INT);
    private final MemorySegment zero = arena.allocate(JAVA_INT);
    private final MemorySegment rightHandSides = arena.allocate(JAVA_INT);
    private final MemorySegment error = arena.allocate(JAVA_INT);
    private final MemorySegment[] arguments;
    private final double[] scale;
    private long factorEntries;

    NativeHandle(Pardiso pardiso, SymmetricPattern pattern, Definiteness definiteness) {
        this.pardiso = pardiso;
        this.pattern = pattern;
        this.positiveDefinite = definiteness == Definiteness.POSITIVE_DEFINITE;
        this.scale = new double[pattern.order()];
        MemorySegment type = arena.allocate(JAVA_INT);
        type.set(JAVA_INT, 0, positiveDefinite ? 2 : -2);
        MemorySegment order = arena.allocate(JAVA_INT);
        order.set(JAVA_INT, 0, pattern.order());
        one.set(JAVA_INT, 0, 1);
        MemorySegment rowStart = arena.allocate(JAVA_INT, pattern.order() + 1L);
        MemorySegment columns = arena.allocate(JAVA_INT, pattern.entries());
        fillIndices(rowStart, columns);
        MemorySegment none = MemorySegment.NULL;
        arguments = new MemorySegment[] {
            handle,
            one,
            one,
            type,
            phase,
            order,
            none,
            rowStart,
            columns,
            none,
            rightHandSides,
            control,
            zero,
            none,
            none,
            error
        };
        setControl(OWN_CONTROL, 1);
        setControl(ORDERING, 2);
        setControl(PERTURBATION, 13);
        setControl(FACTOR_ENTRIES, -1);
        setControl(FACTOR_MEGAFLOPS, -1);
        setControl(PIVOTING, 0);
        setControl(ZERO_BASED, 1);
        setControl(DIAGONAL_WANTED, 1);
        try {
            run(ANALYSE);
        } catch (RuntimeException failure) {
            close();
            throw failure;
        }
        factorEntries = control(FACTOR_ENTRIES);
    }

    private void fillIndices(MemorySegment rowStart, MemorySegment columns) {
        int b = pattern.blockSize();
        int chunk = 1024;
        Parallel.run((pattern.nodes() + chunk - 1) / chunk, part -> {
            int to = Math.min(pattern.nodes(), (part + 1) * chunk);
            for (int node = part * chunk; node < to; node++) {
                long v = pattern.valueStart()[node];
                int from = pattern.nodeStart()[node];
                for (int r = 0; r < b; r++) {
                    rowStart.setAtIndex(JAVA_INT, (long) node * b + r, (int) v);
                    for (int s = r; s < b; s++) {
                        columns.setAtIndex(JAVA_INT, v++, node * b + s);
                    }
                    for (int p = from + 1; p < pattern.nodeStart()[node + 1]; p++) {
                        int column = pattern.nodeColumns()[p] * b;
                        for (int s = 0; s < b; s++) {
                            columns.setAtIndex(JAVA_INT, v++, column + s);
                        }
                    }
                }
            }
        });
        rowStart.setAtIndex(JAVA_INT, pattern.order(), pattern.entries());
    }

    int order() {
        return pattern.order();
    }

    void factorise(SymmetricMatrix matrix) {
        int n = order();
        double[] diagonal = matrix.diagonal();
        for (int i = 0; i < n; i++) {
            double a = Math.abs(diagonal[i]);
            scale[i] =
                    a > 0 && a < Double.POSITIVE_INFINITY ? Math.scalb(1.0, -Math.floorDiv(Math.getExponent(a), 2)) : 1;
        }
        // Values are needed again only for refinement after perturbed pivots, which are refused here.
        try (Arena local = Arena.ofShared()) {
            MemorySegment values = local.allocate(JAVA_DOUBLE, pattern.entries());
            copyScaled(matrix, values);
            arguments[VALUES] = values;
            run(FACTORISE);
            factorEntries = control(FACTOR_ENTRIES);
            checkPivots();
        } finally {
            arguments[VALUES] = MemorySegment.NULL;
        }
    }

    private void copyScaled(SymmetricMatrix matrix, MemorySegment target) {
        int b = pattern.blockSize();
        int chunk = 1024;
        double[] values = matrix.values();
        int[] nodeColumns = pattern.nodeColumns();
        Parallel.run((pattern.nodes() + chunk - 1) / chunk, part -> {
            int to = Math.min(pattern.nodes(), (part + 1) * chunk);
            for (int node = part * chunk; node < to; node++) {
                int v = pattern.valueStart()[node];
                for (int r = 0; r < b; r++) {
                    double rowScale = scale[node * b + r];
                    for (int s = r; s < b; s++, v++) {
                        target.setAtIndex(JAVA_DOUBLE, v, values[v] * rowScale * scale[node * b + s]);
                    }
                    for (int p = pattern.nodeStart()[node] + 1; p < pattern.nodeStart()[node + 1]; p++) {
                        int column = nodeColumns[p] * b;
                        for (int s = 0; s < b; s++, v++) {
                            target.setAtIndex(JAVA_DOUBLE, v, values[v] * rowScale * scale[column + s]);
                        }
                    }
                }
            }
        });
    }

    /** The library carries on past a vanishing pivot in both modes: look for it. */
    private void checkPivots() {
        double smallest = Double.POSITIVE_INFINITY;
        for (double pivot : pivots()) {
            smallest = Math.min(smallest, Math.abs(pivot));
        }
        if (!(smallest > TINY) || control(PERTURBED) > 0) {
            throw new SingularMatrixException(loosest(), "a pivot vanishes (" + smallest + ")");
        }
    }

    /** The unknown that moves most under an arbitrary load when the matrix is all but singular. */
    private int loosest() {
        SplittableRandom random = new SplittableRandom(1);
        double[] x = random.doubles(order(), -1, 1).toArray();
        solveInPlace(new double[][] {x});
        int most = 0;
        for (int i = 1; i < x.length; i++) {
            most = Math.abs(x[i] / scale[i]) > Math.abs(x[most] / scale[most]) ? i : most;
        }
        return most;
    }

    /** Pivots of the scaled matrix, in the library's own order. */
    private double[] pivots() {
        int n = order();
        try (Arena local = Arena.ofConfined()) {
            MemorySegment factor = local.allocate(JAVA_DOUBLE, n);
            MemorySegment matrix = local.allocate(JAVA_DOUBLE, n);
            pardiso.getDiagonal(handle, factor, matrix, one, error);
            return factor.toArray(JAVA_DOUBLE);
        }
    }

    void solveInPlace(double[][] vectors) {
        int n = order();
        int count = vectors.length;
        try (Arena local = Arena.ofShared()) {
            MemorySegment b = local.allocate(JAVA_DOUBLE, (long) n * count);
            MemorySegment x = local.allocate(JAVA_DOUBLE, (long) n * count);
            for (int k = 0; k < count; k++) {
                if (vectors[k].length != n) {
                    throw new IllegalArgumentException("Need vectors of length " + n);
                }
                long base = (long) k * n;
                for (int i = 0; i < n; i++) {
                    b.setAtIndex(JAVA_DOUBLE, base + i, vectors[k][i] * scale[i]);
                }
            }
            rightHandSides.set(JAVA_INT, 0, count);
            arguments[RIGHT] = b;
            arguments[SOLUTION] = x;
            try {
                run(SOLVE);
            } finally {
                arguments[RIGHT] = MemorySegment.NULL;
                arguments[SOLUTION] = MemorySegment.NULL;
            }
            for (int k = 0; k < count; k++) {
                long base = (long) k * n;
                for (int i = 0; i < n; i++) {
                    vectors[k][i] = x.getAtIndex(JAVA_DOUBLE, base + i) * scale[i];
                }
            }
        }
    }

    long factorEntries() {
        return factorEntries;
    }

    double flops() {
        return 1e6 * control(FACTOR_MEGAFLOPS);
    }

    int negativePivots() {
        return positiveDefinite ? 0 : control(NEGATIVE);
    }

    double logAbsDeterminant() {
        double[] pivots = pivots();
        double sum = 0;
        for (int i = 0; i < pivots.length; i++) {
            sum += Math.log(Math.abs(pivots[i])) - 2 * Math.log(scale[i]);
        }
        return sum;
    }

    private void setControl(int word, int value) {
        control.setAtIndex(JAVA_INT, word, value);
    }

    private int control(int word) {
        return control.getAtIndex(JAVA_INT, word);
    }

    private void run(int phaseNumber) {
        phase.set(JAVA_INT, 0, phaseNumber);
        error.set(JAVA_INT, 0, 0);
        pardiso.call(arguments);
        int code = error.get(JAVA_INT, 0);
        switch (code) {
            case 0 -> {}
            case -4 ->
                throw new SingularMatrixException(
                        control(BAD_PIVOT) - 1, "a pivot is " + (positiveDefinite ? "not positive" : "zero"));
            case -2 ->
                throw new OutOfMemoryError("The native solver needs more memory than there is. Use a coarser model.");
            case -1 -> throw new IllegalArgumentException("The native solver found the matrix inconsistent");
            default -> throw new IllegalStateException("The native solver stopped with code " + code);
        }
    }

    @Override
    public void close() {
        phase.set(JAVA_INT, 0, RELEASE_ALL);
        pardiso.call(arguments);
        arena.close();
    }
}
