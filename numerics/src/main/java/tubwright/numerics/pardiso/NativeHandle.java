// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import static java.lang.foreign.ValueLayout.JAVA_DOUBLE;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.util.OptionalDouble;
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
 * <p>The matrix is handed over as D A D, with D the powers of two that bring its diagonal into [1, 4): exact, and it
 * makes the size of a pivot mean the same for unknowns of any unit. It goes over in whole blocks, one for each pair of
 * nodes: the analysis then works on the graph of the nodes, in a fifth of the time it takes for that of the unknowns.
 */
final class NativeHandle implements AutoCloseable {
    private static final int ANALYSE = 11;
    private static final int FACTORISE = 22;
    private static final int SOLVE = 33;
    private static final int RELEASE_ALL = -1;
    private static final int OUT_OF_MEMORY = -2;
    private static final int ZERO_PIVOT = -4;
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
    private static final int REPRODUCIBLE_ON = 33;
    private static final int ZERO_BASED = 34;
    private static final int BLOCK_SIZE = 36;
    private static final int DIAGONAL_WANTED = 55;
    private static final int PERTURBED = 13;

    /** A pivot this small against the diagonal it came from is rounding. */
    private static final double TINY = 1e-13;
    /** Right-hand sides solved in one call: more of them share little more of the reading of the factor. */
    private static final int AT_ONCE = 16;

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
    /** Right-hand sides and solutions off the heap, kept from call to call. */
    private Arena spare = Arena.ofShared();

    private MemorySegment workspace = MemorySegment.NULL;

    NativeHandle(Pardiso pardiso, SymmetricPattern pattern, Definiteness definiteness) {
        this.pardiso = pardiso;
        this.pattern = pattern;
        this.positiveDefinite = definiteness == Definiteness.POSITIVE_DEFINITE;
        this.scale = new double[pattern.order()];
        MemorySegment type = arena.allocate(JAVA_INT);
        type.set(JAVA_INT, 0, positiveDefinite ? 2 : -2);
        MemorySegment order = arena.allocate(JAVA_INT);
        order.set(JAVA_INT, 0, pattern.nodes());
        one.set(JAVA_INT, 0, 1);
        MemorySegment rowStart = copied(pattern.nodeStart());
        MemorySegment columns = copied(pattern.nodeColumns());
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
        setControl(REPRODUCIBLE_ON, Parallel.threads());
        setControl(ZERO_BASED, 1);
        if (pattern.blockSize() == 1) {
            setControl(DIAGONAL_WANTED, 1);
        } else {
            setControl(BLOCK_SIZE, pattern.blockSize());
        }
        try {
            run(ANALYSE);
        } catch (RuntimeException failure) {
            close();
            throw failure;
        }
        factorEntries = blockEntries(control(FACTOR_ENTRIES));
    }

    private MemorySegment copied(int[] array) {
        return arena.allocateFrom(JAVA_INT, array);
    }

    int order() {
        return pattern.order();
    }

    void factorise(SymmetricMatrix matrix) {
        int n = order();
        double[] diagonal = matrix.diagonal();
        for (int i = 0; i < n; i++) {
            if (positiveDefinite && !(diagonal[i] > 0)) {
                throw new SingularMatrixException(i, "a diagonal entry is not positive (" + diagonal[i] + ")");
            }
            double a = Math.abs(diagonal[i]);
            scale[i] =
                    a > 0 && a < Double.POSITIVE_INFINITY ? Math.scalb(1.0, -Math.floorDiv(Math.getExponent(a), 2)) : 1;
        }
        // Values are needed again only for refinement after perturbed pivots, which are refused here.
        try (Arena local = Arena.ofShared()) {
            MemorySegment values = local.allocate(8 * blockEntries(pattern.nodeColumns().length), 64);
            copyScaled(matrix, values);
            arguments[VALUES] = values;
            int code = call(FACTORISE);
            if (code != 0 && code != OUT_OF_MEMORY && positiveDefinite) {
                throw diagnosed(matrix);
            }
            judge(code);
            factorEntries = blockEntries(control(FACTOR_ENTRIES));
            checkPivots();
        } finally {
            arguments[VALUES] = MemorySegment.NULL;
        }
    }

    private long blockEntries(long blocks) {
        return blocks * pattern.blockSize() * pattern.blockSize();
    }

    private void copyScaled(SymmetricMatrix matrix, MemorySegment target) {
        int chunk = 512;
        Parallel.run((pattern.nodes() + chunk - 1) / chunk, part -> {
            int to = Math.min(pattern.nodes(), (part + 1) * chunk);
            for (int node = part * chunk; node < to; node++) {
                copyScaled(matrix.values(), target, node);
            }
        });
    }

    /** The blocks of a node, each row-major; the one on the diagonal whole as well. */
    private void copyScaled(double[] values, MemorySegment target, int node) {
        int b = pattern.blockSize();
        int from = pattern.nodeStart()[node];
        for (int r = 0; r < b; r++) {
            double rowScale = scale[node * b + r];
            int position = pattern.rowStart(node, r) - r;
            long place = blockEntries(from) + (long) r * b;
            for (int q = 0; q < b; q++) {
                int mirrored = q < r ? pattern.rowStart(node, q) + r - q : position + q;
                target.setAtIndex(JAVA_DOUBLE, place + q, values[mirrored] * rowScale * scale[node * b + q]);
            }
            for (int p = from + 1; p < pattern.nodeStart()[node + 1]; p++) {
                position += b;
                place += (long) b * b;
                int column = pattern.nodeColumns()[p] * b;
                for (int q = 0; q < b; q++) {
                    target.setAtIndex(JAVA_DOUBLE, place + q, values[position + q] * rowScale * scale[column + q]);
                }
            }
        }
    }

    /**
     * The library carries on past a vanishing pivot, so look for one: under an arbitrary load b an all but singular matrix
     * answers x, dominated by the motion nothing resists, and then bᵀx / x_i² estimates the pivot unknown i would have had
     * if it had come last.
     */
    private void checkPivots() {
        double[] load = new SplittableRandom(1).doubles(order(), -1, 1).toArray();
        double[] x = new double[order()];
        for (int i = 0; i < x.length; i++) {
            x[i] = load[i] / scale[i];
        }
        solveInPlace(new double[][] {x});
        double work = 0;
        double largest = 0;
        int loosest = -1;
        for (int i = 0; i < x.length; i++) {
            double xi = x[i] / scale[i];
            work += load[i] * xi;
            if (!(Math.abs(xi) <= largest)) {
                largest = Math.abs(xi);
                loosest = i;
            }
        }
        double pivot = work / (largest * largest);
        if (!(Math.abs(pivot) > TINY) || control(PERTURBED) > 0) {
            throw new SingularMatrixException(loosest, "a pivot vanishes");
        }
    }

    void solveInPlace(double[][] vectors) {
        int n = order();
        int count = vectors.length;
        for (double[] vector : vectors) {
            if (vector.length != n) {
                throw new IllegalArgumentException("Need vectors of length " + n);
            }
        }
        for (int from = 0; from < count; from += AT_ONCE) {
            solve(vectors, from, Math.min(count, from + AT_ONCE));
        }
    }

    // The arena is kept for the next solve and closed with the handle.
    @SuppressWarnings("MustBeClosedChecker")
    private void solve(double[][] vectors, int from, int to) {
        int n = order();
        int count = to - from;
        long length = 8L * n * count;
        if (workspace.byteSize() < 2 * length) {
            spare.close();
            spare = Arena.ofShared();
            workspace = spare.allocate(2 * length, 64);
        }
        MemorySegment b = workspace.asSlice(0, length);
        MemorySegment x = workspace.asSlice(length, length);
        Parallel.run(count, k -> {
            long base = (long) k * n;
            double[] vector = vectors[from + k];
            for (int i = 0; i < n; i++) {
                b.setAtIndex(JAVA_DOUBLE, base + i, vector[i] * scale[i]);
            }
        });
        rightHandSides.set(JAVA_INT, 0, count);
        arguments[RIGHT] = b;
        arguments[SOLUTION] = x;
        try {
            run(SOLVE);
        } finally {
            arguments[RIGHT] = MemorySegment.NULL;
            arguments[SOLUTION] = MemorySegment.NULL;
        }
        Parallel.run(count, k -> {
            long base = (long) k * n;
            double[] vector = vectors[from + k];
            for (int i = 0; i < n; i++) {
                vector[i] = x.getAtIndex(JAVA_DOUBLE, base + i) * scale[i];
            }
        });
    }

    long factorEntries() {
        return factorEntries;
    }

    double flops() {
        // In block mode the library counts blocks and operations on blocks.
        return 1e6 * control(FACTOR_MEGAFLOPS) * Math.pow(pattern.blockSize(), 3);
    }

    int negativePivots() {
        return positiveDefinite ? 0 : control(NEGATIVE);
    }

    /** The library shows its pivots only where blocks are single entries. */
    OptionalDouble logAbsDeterminant() {
        if (pattern.blockSize() > 1) {
            return OptionalDouble.empty();
        }
        int n = order();
        try (Arena local = Arena.ofConfined()) {
            MemorySegment factor = local.allocate(JAVA_DOUBLE, n);
            MemorySegment matrix = local.allocate(JAVA_DOUBLE, n);
            pardiso.getDiagonal(handle, factor, matrix, one, error);
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += Math.log(Math.abs(factor.getAtIndex(JAVA_DOUBLE, i))) - 2 * Math.log(scale[i]);
            }
            return OptionalDouble.of(sum);
        }
    }

    private void setControl(int word, int value) {
        control.setAtIndex(JAVA_INT, word, value);
    }

    private int control(int word) {
        return control.getAtIndex(JAVA_INT, word);
    }

    private void run(int phaseNumber) {
        judge(call(phaseNumber));
    }

    private int call(int phaseNumber) {
        phase.set(JAVA_INT, 0, phaseNumber);
        error.set(JAVA_INT, 0, 0);
        pardiso.call(arguments);
        return error.get(JAVA_INT, 0);
    }

    private static void judge(int code) {
        switch (code) {
            case 0 -> {}
            case ZERO_PIVOT -> throw new SingularMatrixException(-1, "a pivot is zero");
            case OUT_OF_MEMORY ->
                throw new OutOfMemoryError("The native solver needs more memory than there is. Use a coarser model.");
            case -1 -> throw new IllegalArgumentException("The native solver found the matrix inconsistent");
            default -> throw new IllegalStateException("The native solver stopped with code " + code);
        }
    }

    /** In block mode a Cholesky factorisation that breaks down does not say where: the indefinite one tells. */
    private SingularMatrixException diagnosed(SymmetricMatrix matrix) {
        try (NativeHandle other = new NativeHandle(pardiso, pattern, Definiteness.INDEFINITE)) {
            other.factorise(matrix);
            return new SingularMatrixException(-1, other.negativePivots() + " pivot(s) are negative");
        } catch (SingularMatrixException singular) {
            return singular;
        }
    }

    @Override
    public void close() {
        phase.set(JAVA_INT, 0, RELEASE_ALL);
        pardiso.call(arguments);
        spare.close();
        arena.close();
    }
}
