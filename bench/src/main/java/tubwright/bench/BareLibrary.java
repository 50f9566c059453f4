// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_DOUBLE;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.util.Collections;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;
import tubwright.numerics.pardiso.NativeSolver;

/** The native library with nothing of ours between: compressed rows of single entries, defaults as it sets them. */
final class BareLibrary {
    private BareLibrary() {}

    @SuppressWarnings("restricted")
    static Contestant.Times run(SymmetricMatrix matrix, double[] load) {
        SymbolLookup library = NativeSolver.library().orElseThrow();
        Linker linker = Linker.nativeLinker();
        MethodHandle pardiso = linker.downcallHandle(
                library.findOrThrow("pardiso"),
                FunctionDescriptor.ofVoid(Collections.nCopies(16, ADDRESS).toArray(MemoryLayout[]::new)));
        MethodHandle defaults = linker.downcallHandle(
                library.findOrThrow("pardisoinit"), FunctionDescriptor.ofVoid(ADDRESS, ADDRESS, ADDRESS));
        SymmetricPattern pattern = matrix.pattern();
        int n = pattern.order();
        try (Arena arena = Arena.ofShared()) {
            MemorySegment handle = arena.allocate(64 * 8L, 64);
            MemorySegment control = arena.allocate(64 * 4L, 64);
            MemorySegment type = arena.allocateFrom(JAVA_INT, 2);
            defaults.invokeExact(handle, type, control);
            control.setAtIndex(JAVA_INT, 17, -1);
            MemorySegment rows = arena.allocate(JAVA_INT, n + 1L);
            MemorySegment columns = arena.allocate(JAVA_INT, pattern.entries());
            indices(pattern, rows, columns);
            MemorySegment values = arena.allocate(JAVA_DOUBLE, pattern.entries());
            MemorySegment.copy(matrix.values(), 0, values, JAVA_DOUBLE, 0, pattern.entries());
            MemorySegment b = arena.allocate(JAVA_DOUBLE, n);
            MemorySegment x = arena.allocate(JAVA_DOUBLE, n);
            MemorySegment.copy(load, 0, b, JAVA_DOUBLE, 0, n);
            MemorySegment one = arena.allocateFrom(JAVA_INT, 1);
            MemorySegment order = arena.allocateFrom(JAVA_INT, n);
            MemorySegment zero = arena.allocateFrom(JAVA_INT, 0);
            MemorySegment error = arena.allocateFrom(JAVA_INT, 0);
            int[] phases = {11, 22, 33, -1};
            double[] seconds = new double[phases.length];
            for (int p = 0; p < phases.length; p++) {
                MemorySegment phase = arena.allocateFrom(JAVA_INT, phases[p]);
                long start = System.nanoTime();
                pardiso.invokeExact(
                        handle, one, one, type, phase, order, values, rows, columns, zero, one, control, zero, b, x,
                        error);
                seconds[p] = (System.nanoTime() - start) / 1e9;
                if (error.get(JAVA_INT, 0) != 0) {
                    throw new IllegalStateException("Phase " + phases[p] + ": code " + error.get(JAVA_INT, 0));
                }
            }
            MemorySegment.copy(x, JAVA_DOUBLE, 0, load, 0, n);
            return new Contestant.Times(seconds[0], seconds[1], seconds[2], control.getAtIndex(JAVA_INT, 17));
        } catch (RuntimeException | Error failure) {
            throw failure;
        } catch (Throwable failure) {
            throw new IllegalStateException(failure);
        }
    }

    /** Row starts and columns, counted from 1 as the defaults want them. */
    private static void indices(SymmetricPattern pattern, MemorySegment rows, MemorySegment columns) {
        int b = pattern.blockSize();
        long k = 0;
        for (int node = 0; node < pattern.nodes(); node++) {
            for (int r = 0; r < b; r++) {
                rows.setAtIndex(JAVA_INT, (long) node * b + r, (int) k + 1);
                for (int p = pattern.nodeStart()[node]; p < pattern.nodeStart()[node + 1]; p++) {
                    int column = pattern.nodeColumns()[p] * b;
                    for (int s = p == pattern.nodeStart()[node] ? r : 0; s < b; s++) {
                        columns.setAtIndex(JAVA_INT, k++, column + s + 1);
                    }
                }
            }
        }
        rows.setAtIndex(JAVA_INT, pattern.order(), (int) k + 1);
    }
}
