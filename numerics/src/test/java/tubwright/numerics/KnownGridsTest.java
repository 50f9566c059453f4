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
                            trees[n - 1],
                            Math.exp(factorisation.logAbsDeterminant().orElseThrow() - held),
                            1e-12 * trees[n - 1]);
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
                            logDeterminant,
                            factorisation.logAbsDeterminant().orElseThrow(),
                            1e-8,
                            solver.name() + " shift " + shift);
                    double[] x = factorisation.solve(rhs);
                    assertTrue(Factorisation.residual(shifted, x, rhs) < 1e-12, solver.name() + " shift " + shift);
                }
            }
        }
    }

    /** Eigenvalues of a Kronecker product are the products of the eigenvalues. */
    @Test
    void negativePivotsCountEigenvaluesOfBlockMatricesToo() {
        int across = 9;
        int along = 14;
        double[] springs = {0.4, 1, 1.7, 2.2, 5, 9};
        SymmetricMatrix free = GridLaplacian.freeBlocks(across, along, GridLaplacian.withEigenvalues(springs));
        for (double shift : new double[] {0.031, 1.37, 8.1, 30}) {
            int below = 0;
            double logDeterminant = 0;
            for (int i = 0; i < across; i++) {
                for (int j = 0; j < along; j++) {
                    for (double spring : springs) {
                        double eigenvalue = spring * GridLaplacian.eigenvalue(i, across, j, along) - shift;
                        below += eigenvalue < 0 ? 1 : 0;
                        logDeterminant += Math.log(Math.abs(eigenvalue));
                    }
                }
            }
            SymmetricMatrix shifted = free.copy();
            for (int i = 0; i < shifted.order(); i++) {
                shifted.add(i, i, -shift);
            }
            double[] rhs = new double[shifted.order()];
            rhs[7] = 1;
            for (DirectSolver solver : Backends.all()) {
                try (var factorisation = solver.factorise(shifted, Definiteness.INDEFINITE)) {
                    assertEquals(below, factorisation.negativePivots(), solver.name() + " shift " + shift);
                    assertEquals(
                            logDeterminant, factorisation.logAbsDeterminant().orElse(logDeterminant), 1e-8);
                    double[] x = factorisation.solve(rhs);
                    assertTrue(Factorisation.residual(shifted, x, rhs) < 1e-12, solver.name() + " shift " + shift);
                }
            }
        }
    }

    @Test
    void aFreeGridOfBlocksIsRefused() {
        double[][] spring = GridLaplacian.withEigenvalues(0.01, 1, 20, 300, 5e3, 1e5);
        for (int n : new int[] {2, 5, 17, 45}) {
            SymmetricMatrix free = GridLaplacian.freeBlocks(n, n + 1, spring);
            for (DirectSolver solver : Backends.all()) {
                for (Definiteness definiteness : Definiteness.values()) {
                    assertThrows(
                            SingularMatrixException.class,
                            () -> solver.factorise(free, definiteness),
                            () -> solver.name() + " " + definiteness + " " + n);
                }
            }
        }
    }

    /** Rigid links joined by unit rotation springs: each joint turns by its arm, so the tip moves by the sum of arms squared. */
    @Test
    void aLongSlenderCantileverIsNotTakenForAMechanism() {
        int n = 1500;
        // Second differences squared, the two nodes at the root held.
        int[][] triples = new int[n][];
        for (int e = 0; e < n; e++) {
            triples[e] = new int[] {e, e + 1, e + 2};
        }
        SymmetricMatrix matrix =
                new SymmetricMatrix(NodeGraph.of(n + 2, triples).pattern(1));
        double[] difference = {1, -2, 1};
        for (int[] triple : triples) {
            for (int i = 0; i < 3; i++) {
                for (int j = i; j < 3; j++) {
                    matrix.add(triple[i], triple[j], difference[i] * difference[j]);
                }
            }
        }
        boolean[] fixed = new boolean[n + 2];
        fixed[0] = true;
        fixed[1] = true;
        ConstrainedSystem system = ConstrainedSystem.constrainInPlace(matrix, fixed);
        double[] load = new double[n + 2];
        load[n + 1] = 1;
        double exact = n * (n + 1.0) * (2.0 * n + 1) / 6;
        for (DirectSolver solver : Backends.all()) {
            try (var factorisation = solver.factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
                double tip = system.solve(factorisation, load)[n + 1];
                assertEquals(exact, tip, 1e-3 * exact, solver.name());
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
