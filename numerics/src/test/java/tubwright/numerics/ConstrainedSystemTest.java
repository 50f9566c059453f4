// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ConstrainedSystemTest {

    /** Three equal springs in a row, ends held and moved: the statics of it fit on the back of an envelope. */
    @Test
    void springsInARowShareAPrescribedStretch() {
        double stiffness = 2000;
        SymmetricMatrix matrix = new SymmetricMatrix(NodeGraph.of(4, new int[][] {{0, 1}, {1, 2}, {2, 3}})
                .pattern(1));
        for (int i = 0; i < 3; i++) {
            matrix.add(i, i, stiffness);
            matrix.add(i + 1, i + 1, stiffness);
            matrix.add(i, i + 1, -stiffness);
        }
        boolean[] fixed = {true, false, false, true};
        double[] prescribed = {0, 0, 0, 0.003};
        double[] loads = {0, 0, 6, 1};
        ConstrainedSystem system = ConstrainedSystem.constrain(matrix, fixed);
        for (DirectSolver solver : Backends.all()) {
            try (var factorisation = solver.factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
                double[] u = system.solve(factorisation, loads, prescribed);
                // Stretch alone moves node 2 by 2 mm; the load adds 6 N / (k + k/2) = 2 mm, half of it at node 1.
                assertEquals(0.004, u[2], 1e-15);
                assertEquals(0.002, u[1], 1e-15);
                assertEquals(0.003, u[3]);
                double[] reactions = system.reactions(u, loads);
                assertEquals(-2000 * 0.002, reactions[0], 1e-11);
                assertEquals(2000 * (0.003 - 0.004) - 1, reactions[3], 1e-11);
                assertEquals(0, reactions[1]);
            }
        }
    }

    @Test
    void loadsAndReactionsBalanceTheWholeMatrix() {
        long seed = 99;
        SplittableRandom random = new SplittableRandom(seed);
        SymmetricMatrix matrix = new ShellGrid(14, 11).positiveDefinite(seed);
        int n = matrix.order();
        boolean[] fixed = new boolean[n];
        for (int i = 0; i < n; i++) {
            fixed[i] = random.nextInt(5) == 0;
        }
        double[] prescribed = RandomMatrices.vector(n, random);
        double[] loads = RandomMatrices.vector(n, random);
        ConstrainedSystem system = ConstrainedSystem.constrain(matrix, fixed);
        for (DirectSolver solver : Backends.all()) {
            try (var factorisation = solver.factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
                double[] u = system.solve(factorisation, loads, prescribed);
                double[] reactions = system.reactions(u, loads);
                double[] total = new double[n];
                for (int i = 0; i < n; i++) {
                    total[i] = loads[i] + reactions[i];
                    if (fixed[i]) {
                        assertEquals(prescribed[i], u[i]);
                    } else {
                        assertEquals(0, reactions[i]);
                    }
                }
                assertTrue(Factorisation.residual(matrix, u, total) < 1e-14, solver.name() + " seed " + seed);
            }
        }
    }
}
