// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import java.util.OptionalDouble;
import tubwright.numerics.Factorisation;

/** A numeric factorisation held by the library. */
final class NativeFactorisation implements Factorisation {
    private final NativeAnalysis analysis;
    private final NativeHandle handle;
    private boolean closed;

    NativeFactorisation(NativeAnalysis analysis, NativeHandle handle) {
        this.analysis = analysis;
        this.handle = handle;
    }

    @Override
    public int order() {
        return handle.order();
    }

    @Override
    public void solveInPlace(double[] vector) {
        solveInPlace(new double[][] {vector});
    }

    @Override
    public void solveInPlace(double[][] vectors) {
        open().solveInPlace(vectors);
    }

    @Override
    public long factorEntries() {
        return open().factorEntries();
    }

    @Override
    public double flops() {
        return open().flops();
    }

    @Override
    public int negativePivots() {
        return open().negativePivots();
    }

    @Override
    public OptionalDouble logAbsDeterminant() {
        return open().logAbsDeterminant();
    }

    private NativeHandle open() {
        if (closed) {
            throw new IllegalStateException("This factorisation has been closed");
        }
        return handle;
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            analysis.giveBack(handle);
        }
    }
}
