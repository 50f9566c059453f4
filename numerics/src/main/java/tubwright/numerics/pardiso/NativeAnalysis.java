// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import java.util.Optional;
import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * The symbolic part. The library keeps it together with one factor; a second factorisation while the first is still in
 * use gets a handle of its own.
 */
final class NativeAnalysis implements Analysis {
    private final Pardiso pardiso;
    private final SymmetricPattern pattern;
    private final Definiteness definiteness;
    private final long factorEntries;
    private Optional<NativeHandle> idle;
    private boolean closed;

    NativeAnalysis(Pardiso pardiso, SymmetricPattern pattern, Definiteness definiteness) {
        this.pardiso = pardiso;
        this.pattern = pattern;
        this.definiteness = definiteness;
        NativeHandle handle = new NativeHandle(pardiso, pattern, definiteness);
        this.factorEntries = handle.factorEntries();
        this.idle = Optional.of(handle);
    }

    @Override
    public Factorisation factorise(SymmetricMatrix matrix) {
        if (!matrix.pattern().sameAs(pattern)) {
            throw new IllegalArgumentException("The matrix has another pattern than the one analysed");
        }
        NativeHandle handle = take();
        try {
            handle.factorise(matrix);
        } catch (RuntimeException | Error failure) {
            handle.close();
            throw failure;
        }
        return new NativeFactorisation(this, handle);
    }

    private synchronized NativeHandle take() {
        Optional<NativeHandle> handle = idle;
        idle = Optional.empty();
        return handle.orElseGet(() -> new NativeHandle(pardiso, pattern, definiteness));
    }

    /** Takes a handle back for the next factorisation, or frees it. */
    synchronized void giveBack(NativeHandle handle) {
        if (closed || idle.isPresent()) {
            handle.close();
        } else {
            idle = Optional.of(handle);
        }
    }

    @Override
    public long factorEntries() {
        return factorEntries;
    }

    @Override
    public synchronized void close() {
        closed = true;
        idle.ifPresent(NativeHandle::close);
        idle = Optional.empty();
    }
}
