// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a system is at some of its unknowns is what it is there: the same displacements under the same loads. */
class CondensedTest {
    private static final ShellGrid GRID = new ShellGrid(13, 11);

    private static int[] kept() {
        return IntStream.range(0, GRID.pattern.order())
                .filter(i -> i / 6 % 13 == 5 || i / 78 == 4 && i % 6 < 4)
                .toArray();
    }

    @Test
    void movesAsTheWholeDoes() {
        SymmetricMatrix whole = GRID.positiveDefinite(3);
        double[] load = new SplittableRandom(4)
                .doubles(whole.order(), -1, 1)
                .map(x -> x < 0.5 ? 0 : x)
                .toArray();
        int[] kept = kept();
        for (DirectSolver solver : Backends.all()) {
            double[] u;
            try (Factorisation factor = solver.factorise(whole, Definiteness.POSITIVE_DEFINITE)) {
                u = factor.solve(load);
            }
            Condensed reduced = solver.condense(whole, kept, load);
            double work = reduced.give();
            double all = 0;
            double largest = 0;
            for (int i = 0; i < kept.length; i++) {
                double out = -reduced.load()[i];
                for (int j = 0; j < kept.length; j++) {
                    out += reduced.matrix()[i * kept.length + j] * u[kept[j]];
                }
                largest = Math.max(largest, Math.abs(out));
                work += reduced.load()[i] * u[kept[i]];
            }
            for (int i = 0; i < u.length; i++) {
                all += load[i] * u[i];
            }
            assertEquals(0, largest, 1e-10, solver.name());
            assertEquals(all, work, 1e-10 * all, solver.name());
        }
    }

    @Test
    void allSolversFindTheSame() {
        SymmetricMatrix whole = GRID.positiveDefinite(7);
        int[] kept = kept();
        Condensed one = Condensed.bySolving(Backends.all().getFirst(), whole, kept, new double[whole.order()]);
        for (DirectSolver solver : Backends.all()) {
            Condensed other = solver.condense(whole, kept, new double[whole.order()]);
            for (int i = 0; i < one.matrix().length; i++) {
                assertEquals(one.matrix()[i], other.matrix()[i], 1e-9, solver.name());
            }
        }
    }

    @Test
    void whatIsNotHeldIsRefused() {
        SymmetricMatrix whole = GRID.positiveDefinite(7);
        // Unknown 300 hangs on nothing.
        for (int j = 0; j < whole.order(); j++) {
            int at = whole.pattern().position(300, j);
            if (at >= 0) {
                whole.values()[at] = 0;
            }
        }
        for (DirectSolver solver : Backends.all()) {
            assertThrows(
                    SingularMatrixException.class,
                    () -> solver.condense(whole, kept(), new double[whole.order()]),
                    solver.name());
        }
    }
}
