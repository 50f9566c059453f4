// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Grids of springs against what is known of them without solving anything. */
class KnownGridsTest {

    /** Kirchhoff's matrix-tree theorem (1847): a minor of the Laplacian counts spanning trees. Counts from memory. */
    @Test
    void theDeterminantOfAHeldGridCountsItsSpanningTrees() {
        double[] trees = {1, 4, 192, 100352, 557568000.0, 32565539635200.0};
        for (int n = 2; n <= trees.length; n++) {
            boolean[] fixed = new boolean[n * n];
            fixed[n + 1 < n * n ? n + 1 : 0] = true;
            SymmetricMatrix free = GridLaplacian.free(n, n);
            double held = 0;
            for (int i = 0; i < fixed.length; i++) {
                held += fixed[i] ? Math.log(free.get(i, i)) : 0;
            }
            ConstrainedSystem system = ConstrainedSystem.constrain(free, fixed);
            for (DirectSolver solver : Backends.all()) {
                try (var factorisation = solver.factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
                    assertEquals(
                            trees[n - 1], Math.exp(factorisation.logAbsDeterminant() - held), 1e-12 * trees[n - 1]);
                }
            }
        }
    }

    /** Sylvester's law of inertia (1852) against the closed-form spectrum of the grid. */
    @Test
    void negativePivotsCountTheEigenvaluesBelowTheShift() {
        int across = 23;
        int along = 31;
        SymmetricMatrix free = GridLaplacian.free(across, along);
        for (double shift : new double[] {0.013, 0.71, 2.5, 3.999, 6.2, 7.9999}) {
            int below = 0;
            double logDeterminant = 0;
            for (int i = 0; i < across; i++) {
                for (int j = 0; j < along; j++) {
                    double eigenvalue = GridLaplacian.eigenvalue(i, across, j, along) - shift;
                    below += eigenvalue < 0 ? 1 : 0;
                    logDeterminant += Math.log(Math.abs(eigenvalue));
                }
            }
            SymmetricMatrix shifted = free.copy();
            for (int i = 0; i < shifted.order(); i++) {
                shifted.add(i, i, -shift);
            }
            double[] rhs = new double[shifted.order()];
            rhs[5] = 1;
            for (DirectSolver solver : Backends.all()) {
                try (var factorisation = solver.factorise(shifted, Definiteness.INDEFINITE)) {
                    assertEquals(below, factorisation.negativePivots(), solver.name() + " shift " + shift);
                    assertEquals(
                            logDeterminant, factorisation.logAbsDeterminant(), 1e-8, solver.name() + " shift " + shift);
                    double[] x = factorisation.solve(rhs);
                    assertTrue(Factorisation.residual(shifted, x, rhs) < 1e-12, solver.name() + " shift " + shift);
                }
            }
        }
    }

    @Test
    void aFreeGridIsRefused() {
        for (DirectSolver solver : Backends.all()) {
            for (Definiteness definiteness : Definiteness.values()) {
                SymmetricMatrix free = GridLaplacian.free(17, 29);
                assertThrows(
                        SingularMatrixException.class,
                        () -> solver.factorise(free, definiteness),
                        solver.name() + definiteness);
            }
        }
    }

    @Test
    void anUnknownHeldByNothingIsNamed() {
        SymmetricMatrix matrix = new ShellGrid(9, 9).positiveDefinite(3);
        int loose = 6 * 40 + 5;
        for (int other = 0; other < matrix.order(); other++) {
            if (matrix.pattern().position(loose, other) >= 0) {
                matrix.add(loose, other, -matrix.get(loose, other));
            }
        }
        for (DirectSolver solver : Backends.all()) {
            for (Definiteness definiteness : Definiteness.values()) {
                var failure = assertThrows(
                        SingularMatrixException.class, () -> solver.factorise(matrix, definiteness), solver.name());
                assertEquals(loose, failure.unknown(), solver.name() + definiteness);
            }
        }
    }

    @Test
    void aNegativeEigenvalueIsRefusedWherePositiveWasPromised() {
        SymmetricMatrix matrix = GridLaplacian.free(12, 12);
        for (int i = 0; i < matrix.order(); i++) {
            matrix.add(i, i, -0.01);
        }
        for (DirectSolver solver : Backends.all()) {
            assertThrows(SingularMatrixException.class, () -> solver.factorise(matrix, Definiteness.POSITIVE_DEFINITE));
        }
    }
}
