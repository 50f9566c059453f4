// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.csc.decomposition.chol.CholeskyUpLooking_DSCC;
import org.ejml.sparse.csc.misc.TriangularSolver_DSCC;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;
import tubwright.numerics.ordering.Graph;
import tubwright.numerics.ordering.NestedDissection;

/** A general-purpose linear algebra library. It brings no fill-reducing order, so it gets ours, and its time counts. */
final class ReferenceLibrary {
    private ReferenceLibrary() {}

    static Contestant.Times run(SymmetricMatrix matrix, double[] load) {
        long t0 = System.nanoTime();
        SymmetricPattern pattern = matrix.pattern();
        int[] order = NestedDissection.order(Graph.of(pattern));
        int b = pattern.blockSize();
        int[] place = new int[matrix.order()];
        for (int k = 0; k < order.length; k++) {
            for (int r = 0; r < b; r++) {
                place[order[k] * b + r] = k * b + r;
            }
        }
        DMatrixSparseCSC permuted = permuted(matrix, place);
        long t1 = System.nanoTime();
        CholeskyUpLooking_DSCC cholesky = new CholeskyUpLooking_DSCC();
        if (!cholesky.decompose(permuted)) {
            throw new IllegalStateException("The factorisation failed");
        }
        long t2 = System.nanoTime();
        DMatrixRMaj x = new DMatrixRMaj(load.length, 1);
        for (int i = 0; i < load.length; i++) {
            x.data[place[i]] = load[i];
        }
        TriangularSolver_DSCC.solveL(cholesky.getL(), x.data);
        TriangularSolver_DSCC.solveTranL(cholesky.getL(), x.data);
        for (int i = 0; i < load.length; i++) {
            load[i] = x.data[place[i]];
        }
        long t3 = System.nanoTime();
        return new Contestant.Times((t1 - t0) / 1e9, (t2 - t1) / 1e9, (t3 - t2) / 1e9, cholesky.getL().nz_length);
    }

    /** The upper triangle, in the order of elimination, which is all the library reads. */
    private static DMatrixSparseCSC permuted(SymmetricMatrix matrix, int[] place) {
        SymmetricPattern pattern = matrix.pattern();
        int b = pattern.blockSize();
        DMatrixSparseTriplet triplets = new DMatrixSparseTriplet(matrix.order(), matrix.order(), pattern.entries());
        int v = 0;
        for (int node = 0; node < pattern.nodes(); node++) {
            for (int r = 0; r < b; r++) {
                for (int p = pattern.nodeStart()[node]; p < pattern.nodeStart()[node + 1]; p++) {
                    for (int s = p == pattern.nodeStart()[node] ? r : 0; s < b; s++) {
                        int i = place[node * b + r];
                        int j = place[pattern.nodeColumns()[p] * b + s];
                        triplets.addItem(Math.min(i, j), Math.max(i, j), matrix.values()[v++]);
                    }
                }
            }
        }
        DMatrixSparseCSC csc = DConvertMatrixStruct.convert(triplets, (DMatrixSparseCSC) null);
        csc.sortIndices(null);
        return csc;
    }
}
