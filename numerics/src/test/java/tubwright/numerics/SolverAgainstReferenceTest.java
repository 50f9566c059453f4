// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.DecompositionFactory_DSCC;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;
import org.junit.jupiter.api.Test;

/** Both backends against the sparse Cholesky of a general-purpose library (EJML). */
class SolverAgainstReferenceTest {

    static DMatrixSparseCSC toReference(SymmetricMatrix matrix) {
        SymmetricPattern pattern = matrix.pattern();
        int b = pattern.blockSize();
        DMatrixSparseTriplet triplets = new DMatrixSparseTriplet(matrix.order(), matrix.order(), 2 * pattern.entries());
        for (int node = 0; node < pattern.nodes(); node++) {
            for (int p = pattern.nodeStart()[node]; p < pattern.nodeStart()[node + 1]; p++) {
                for (int i = node * b; i < node * b + b; i++) {
                    for (int j = pattern.nodeColumns()[p] * b; j < pattern.nodeColumns()[p] * b + b; j++) {
                        if (j >= i) {
                            triplets.addItem(i, j, matrix.get(i, j));
                        }
                        if (j > i) {
                            triplets.addItem(j, i, matrix.get(i, j));
                        }
                    }
                }
            }
        }
        return DConvertMatrixStruct.convert(triplets, (DMatrixSparseCSC) null);
    }

    @Test
    void randomPositiveDefiniteSystemsHaveTheReferenceSolutionAndDeterminant() {
        long seed = 20260611;
        SplittableRandom random = new SplittableRandom(seed);
        for (int trial = 0; trial < 30; trial++) {
            int b = 1 + trial % 7;
            SymmetricMatrix matrix = RandomMatrices.positiveDefinite(1 + random.nextInt(120), b, random);
            String what = "seed " + seed + " trial " + trial;
            double[] rhs = RandomMatrices.vector(matrix.order(), random);
            var reference = LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);
            assertTrue(reference.setA(toReference(matrix)), what);
            DMatrixRMaj expected = new DMatrixRMaj(matrix.order(), 1);
            reference.solve(DMatrixRMaj.wrap(matrix.order(), 1, rhs.clone()), expected);
            var cholesky = DecompositionFactory_DSCC.cholesky();
            assertTrue(cholesky.decompose(toReference(matrix)), what);
            double logDeterminant = Math.log(cholesky.computeDeterminant().getReal());
            for (DirectSolver solver : Backends.all()) {
                for (Definiteness definiteness : Definiteness.values()) {
                    String which = what + " " + solver.name() + " " + definiteness;
                    try (Factorisation factorisation = solver.factorise(matrix, definiteness)) {
                        double[] x = factorisation.solve(rhs);
                        assertTrue(Factorisation.residual(matrix, x, rhs) < 1e-14, which);
                        double scale = 0;
                        for (double value : expected.data) {
                            scale = Math.max(scale, Math.abs(value));
                        }
                        assertArrayEquals(expected.data, x, 1e-9 * scale, which);
                        assertEquals(0, factorisation.negativePivots(), which);
                        if (Double.isFinite(logDeterminant)
                                && factorisation.logAbsDeterminant().isPresent()) {
                            assertEquals(
                                    logDeterminant,
                                    factorisation.logAbsDeterminant().getAsDouble(),
                                    1e-11 * Math.max(1, Math.abs(logDeterminant)),
                                    which);
                        }
                    }
                }
            }
        }
    }

    @Test
    void theProductAgreesWithTheReference() {
        long seed = 7;
        SplittableRandom random = new SplittableRandom(seed);
        SymmetricMatrix matrix = new ShellGrid(40, 45).positiveDefinite(seed);
        double[] x = RandomMatrices.vector(matrix.order(), random);
        DMatrixRMaj expected = new DMatrixRMaj(matrix.order(), 1);
        org.ejml.sparse.csc.CommonOps_DSCC.mult(toReference(matrix), DMatrixRMaj.wrap(matrix.order(), 1, x), expected);
        assertTrue(matrix.pattern().entries() > 200_000, "large enough for the parallel product");
        assertArrayEquals(expected.data, matrix.multiply(x), 1e-11);
    }
}
