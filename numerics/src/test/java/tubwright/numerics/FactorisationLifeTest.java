// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** How analyses and factorisations may be used, and that using them again changes nothing. */
class FactorisationLifeTest {
    private final ShellGrid grid = new ShellGrid(60, 40);
    private final SymmetricMatrix matrix = grid.positiveDefinite(1);
    private final SymmetricMatrix other = grid.positiveDefinite(2);
    private final double[] load = RandomMatrices.vector(matrix.order(), new SplittableRandom(3));

    @Test
    void theSameSystemGivesTheSameBitsEveryTime() {
        for (DirectSolver solver : Backends.all()) {
            for (Definiteness definiteness : Definiteness.values()) {
                double[] first;
                try (var factorisation = solver.factorise(matrix, definiteness)) {
                    first = factorisation.solve(load);
                }
                for (int again = 0; again < 6; again++) {
                    try (var factorisation = solver.factorise(matrix, definiteness)) {
                        assertArrayEquals(first, factorisation.solve(load), solver.name() + " " + definiteness);
                    }
                }
            }
        }
    }

    @Test
    void oneAnalysisServesManyMatricesAtATime() {
        for (DirectSolver solver : Backends.all()) {
            try (Analysis analysis = solver.analyse(grid.pattern, Definiteness.POSITIVE_DEFINITE);
                    Factorisation a = analysis.factorise(matrix);
                    Factorisation b = analysis.factorise(other)) {
                double[] x = a.solve(load);
                double[] y = b.solve(load);
                assertTrue(Factorisation.residual(matrix, x, load) < 1e-14, solver.name());
                assertTrue(Factorisation.residual(other, y, load) < 1e-14, solver.name());
            }
        }
    }

    @Test
    void aFactorisationOutlivesItsAnalysis() {
        for (DirectSolver solver : Backends.all()) {
            Analysis analysis = solver.analyse(grid.pattern, Definiteness.INDEFINITE);
            try (Factorisation first = analysis.factorise(other)) {
                assertTrue(Factorisation.residual(other, first.solve(load), load) < 1e-14, solver.name());
            }
            try (Factorisation second = analysis.factorise(matrix)) {
                analysis.close();
                assertTrue(Factorisation.residual(matrix, second.solve(load), load) < 1e-14, solver.name());
            }
        }
    }

    @Test
    void manyRightHandSidesGiveWhatEachWouldAlone() {
        SplittableRandom random = new SplittableRandom(4);
        double[][] loads = new double[5][];
        for (int k = 0; k < loads.length; k++) {
            loads[k] = RandomMatrices.vector(matrix.order(), random);
        }
        for (DirectSolver solver : Backends.all()) {
            try (var factorisation = solver.factorise(matrix, Definiteness.POSITIVE_DEFINITE)) {
                double[][] together = factorisation.solve(loads);
                for (int k = 0; k < loads.length; k++) {
                    assertTrue(Factorisation.residual(matrix, together[k], loads[k]) < 1e-14, solver.name());
                }
            }
        }
    }

    @Test
    void aMatrixOfAnotherPatternIsRefused() {
        SymmetricMatrix smaller = new ShellGrid(5, 5).positiveDefinite(1);
        for (DirectSolver solver : Backends.all()) {
            try (Analysis analysis = solver.analyse(grid.pattern, Definiteness.POSITIVE_DEFINITE)) {
                assertThrows(IllegalArgumentException.class, () -> analysis.factorise(smaller), solver.name());
            }
        }
    }

    @Test
    void aForcedSolverThatDoesNotExistIsRefused() {
        String before = System.setProperty("tubwright.solver", "abacus");
        try {
            assertThrows(IllegalStateException.class, tubwright.numerics.solver.Solvers::best);
        } finally {
            if (before == null) {
                System.clearProperty("tubwright.solver");
            } else {
                System.setProperty("tubwright.solver", before);
            }
        }
    }
}
