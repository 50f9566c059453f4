// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tubwright.numerics.Analysis;
import tubwright.numerics.Backends;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.RandomMatrices;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/** Critical load factors against closed forms and a dense solver. */
class CriticalFactorsTest {
    static Iterable<DirectSolver> backends() {
        return Backends.all();
    }

    private static CriticalFactors.Both solve(
            SymmetricMatrix k, SymmetricMatrix g, int positive, int negative, DirectSolver solver) {
        try (Analysis analysis = solver.analyse(k.pattern(), Definiteness.INDEFINITE);
                Factorisation factor = analysis.factorise(k)) {
            return CriticalFactors.of(k, g, positive, negative, analysis, factor);
        }
    }

    /** The column of finite differences: K the square of G, G the second difference times -1. */
    private static SymmetricMatrix[] column(int n, int blockSize) {
        int[][] links = new int[n - 2][];
        for (int i = 0; i < links.length; i++) {
            links[i] = new int[] {i, i + 1, i + 2};
        }
        SymmetricPattern pattern = NodeGraph.of(n, links).pattern(blockSize);
        SymmetricMatrix k = new SymmetricMatrix(pattern);
        SymmetricMatrix g = new SymmetricMatrix(pattern);
        for (int c = 0; c < blockSize; c++) {
            for (int i = 0; i < n; i++) {
                int d = i * blockSize + c;
                k.add(d, d, i == 0 || i == n - 1 ? 5 : 6);
                g.add(d, d, -2);
                if (i + 1 < n) {
                    k.add(d, d + blockSize, -4);
                    g.add(d, d + blockSize, 1);
                }
                if (i + 2 < n) {
                    k.add(d, d + 2 * blockSize, 1);
                }
            }
        }
        return new SymmetricMatrix[] {k, g};
    }

    @ParameterizedTest
    @MethodSource("backends")
    void aPinnedColumnBucklesAtEulersLoadsAndNeverUnderTension(DirectSolver solver) {
        int n = 100;
        SymmetricMatrix[] column = column(n, 5);
        CriticalFactors.Both both = solve(column[0], column[1], 12, 3, solver);
        for (int i = 0; i < 12; i++) {
            double exact = 2 - 2 * Math.cos((i / 5 + 1) * Math.PI / (n + 1));
            assertEquals(1, both.positive().values()[i] / exact, 1e-8, "factor " + i);
        }
        assertTrue(both.positive().count().complete());
        assertEquals(0, both.negative().size());
    }

    @ParameterizedTest
    @MethodSource("backends")
    void randomLoadsOfBothSignsAgreeWithADenseSolver(DirectSolver solver) {
        for (int seed = 1; seed <= 8; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            SymmetricMatrix k = RandomMatrices.positiveDefinite(20 + 4 * seed, 1 + seed % 3, random);
            SymmetricMatrix g = new SymmetricMatrix(k.pattern());
            for (int i = 0; i < g.values().length; i++) {
                g.values()[i] = random.nextDouble(-1, 1);
            }
            double[] mu = Dense.eigenvalues(g, k);
            double[] factors = Arrays.stream(mu).map(v -> -1 / v).sorted().toArray();
            double[] up = Arrays.stream(factors).filter(v -> v > 0).toArray();
            double[] down = Arrays.stream(factors).filter(v -> v < 0).toArray();
            CriticalFactors.Both both = solve(k, g, 4, 3, solver);
            for (int i = 0; i < 4; i++) {
                assertEquals(1, both.positive().values()[i] / up[i], 1e-8, "seed " + seed + ", factor " + i);
                assertTrue(both.positive().errors()[i] < 1e-9);
            }
            for (int i = 0; i < 3; i++) {
                double exact = down[down.length - 1 - i];
                assertEquals(1, both.negative().values()[i] / exact, 1e-8, "seed " + seed + ", reversed " + i);
            }
            assertTrue(both.negative().count().complete());
        }
    }

    @ParameterizedTest
    @MethodSource("backends")
    void crowdedFactorsAreReachedByAShift(DirectSolver solver) {
        // Diagonal problem, factors 1, 1 + 1e-4, 1 + 2e-4, ...: the inverse crowds them, the shift spreads them.
        int n = 1000;
        int[][] links = new int[n - 1][];
        for (int i = 0; i + 1 < n; i++) {
            links[i] = new int[] {i, i + 1};
        }
        SymmetricMatrix k = new SymmetricMatrix(NodeGraph.of(n, links).pattern(1));
        SymmetricMatrix g = new SymmetricMatrix(k.pattern());
        for (int i = 0; i < n; i++) {
            k.add(i, i, 1 + 1e-4 * i);
            g.add(i, i, i % 2 == 0 ? -1 : 1);
        }
        CriticalFactors.Both both = solve(k, g, 5, 2, solver);
        for (int i = 0; i < 5; i++) {
            assertEquals(1 + 2e-4 * i, both.positive().values()[i], 1e-9);
        }
        assertEquals(-1.0001, both.negative().values()[0], 1e-9);
        assertEquals(-1.0003, both.negative().values()[1], 1e-9);
    }
}
