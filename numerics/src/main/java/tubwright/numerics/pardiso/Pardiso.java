// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;
import tubwright.numerics.Parallel;

/** The native routines used, bound once for the life of the process. */
final class Pardiso {
    /** The library's mode in which equal runs give equal bits, on the best instructions of this processor. */
    private static final int REPRODUCIBLE = 2;

    private final SymbolLookup symbols;
    private final MethodHandle pardiso;
    private final MethodHandle getDiagonal;
    private final MethodHandle setThreadsHere;

    private Pardiso(SymbolLookup symbols, MethodHandle pardiso, MethodHandle getDiagonal, MethodHandle setThreadsHere) {
        this.symbols = symbols;
        this.pardiso = pardiso;
        this.getDiagonal = getDiagonal;
        this.setThreadsHere = setThreadsHere;
    }

    /** Unpacks if need be, loads and binds. */
    @SuppressWarnings("restricted")
    static Pardiso load() throws IOException {
        SymbolLookup lookup = null;
        for (Path library : NativeLibraries.forThisPlatform().unpack()) {
            System.load(library.toString());
            lookup = SymbolLookup.libraryLookup(library, Arena.global());
        }
        Linker linker = Linker.nativeLinker();
        var pointer = ValueLayout.ADDRESS;
        FunctionDescriptor sixteen = FunctionDescriptor.ofVoid(
                pointer, pointer, pointer, pointer, pointer, pointer, pointer, pointer, pointer, pointer, pointer,
                pointer, pointer, pointer, pointer, pointer);
        MethodHandle pardiso = linker.downcallHandle(lookup.findOrThrow("pardiso"), sixteen);
        MethodHandle getDiagonal = linker.downcallHandle(
                lookup.findOrThrow("pardiso_getdiag"),
                FunctionDescriptor.ofVoid(pointer, pointer, pointer, pointer, pointer));
        MethodHandle setThreads = linker.downcallHandle(
                lookup.findOrThrow("MKL_Set_Num_Threads"), FunctionDescriptor.ofVoid(ValueLayout.JAVA_INT));
        MethodHandle setThreadsHere = linker.downcallHandle(
                lookup.findOrThrow("MKL_Set_Num_Threads_Local"),
                FunctionDescriptor.of(ValueLayout.JAVA_INT, ValueLayout.JAVA_INT));
        MethodHandle setReproducible = linker.downcallHandle(
                lookup.findOrThrow("MKL_CBWR_Set"), FunctionDescriptor.of(ValueLayout.JAVA_INT, ValueLayout.JAVA_INT));
        try {
            int refused = (int) setReproducible.invokeExact(REPRODUCIBLE);
            if (refused != 0) {
                throw new IOException("the native solver cannot be made reproducible (code " + refused + ")");
            }
            setThreads.invokeExact(Parallel.threads());
        } catch (IOException failure) {
            throw failure;
        } catch (Throwable failure) {
            throw new IOException("the native solver does not start", failure);
        }
        return new Pardiso(lookup, pardiso, getDiagonal, setThreadsHere);
    }

    /** The library's names, for callers that want it bare. */
    SymbolLookup symbols() {
        return symbols;
    }

    /** One call with the arguments of the routine, all by reference, as its manual lists them. */
    void call(MemorySegment[] a) {
        try {
            // A setting of the calling thread, which may belong to a pool that shares the processors with others.
            int _ = (int) setThreadsHere.invokeExact(Parallel.threads());
            pardiso.invokeExact(
                    a[0], a[1], a[2], a[3], a[4], a[5], a[6], a[7], a[8], a[9], a[10], a[11], a[12], a[13], a[14],
                    a[15]);
        } catch (Throwable failure) {
            throw new IllegalStateException("The native solver could not be called", failure);
        }
    }

    /** Diagonal of the factor and of the matrix, both in the order of the matrix. */
    void getDiagonal(
            MemorySegment handle,
            MemorySegment factor,
            MemorySegment matrix,
            MemorySegment number,
            MemorySegment error) {
        try {
            getDiagonal.invokeExact(handle, factor, matrix, number, error);
        } catch (Throwable failure) {
            throw new IllegalStateException("The native solver could not be called", failure);
        }
    }
}
