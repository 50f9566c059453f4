// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tubwright.numerics.Backends;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.GridLaplacian;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.RandomMatrices;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/** Lowest eigenpairs against closed forms of strings and membranes and against a dense solver. */
class LowestModesTest {
    static Iterable<DirectSolver> backends() {
        return Backends.all();
    }

    private static SymmetricPattern chain(int nodes, int blockSize) {
        int[][] links = new int[nodes - 1][];
        for (int i = 0; i + 1 < nodes; i++) {
            links[i] = new int[] {i, i + 1};
        }
        return NodeGraph.of(nodes, links).pattern(blockSize);
    }

    /** Copies of a tridiagonal Toeplitz matrix that know nothing of each other, one for each component of the block. */
    private static SymmetricMatrix toeplitz(int nodes, int copies, double diagonal, double beside) {
        SymmetricMatrix a = new SymmetricMatrix(chain(nodes, copies));
        for (int i = 0; i < nodes; i++) {
            for (int c = 0; c < copies; c++) {
                a.add(i * copies + c, i * copies + c, diagonal);
                if (i + 1 < nodes) {
                    a.add(i * copies + c, (i + 1) * copies + c, beside);
                }
            }
        }
        return a;
    }

    @ParameterizedTest
    @MethodSource("backends")
    void aStringOfLinearElementsSoundsAsItsClosedFormSays(DirectSolver solver) {
        // n elements on unit length: λ = 6/h² (1 - cos φ)/(2 + cos φ), φ = kπ/n (Strang and Fix 1973, computed here).
        int n = 400;
        double h = 1.0 / n;
        SymmetricMatrix k = toeplitz(n - 1, 1, 2 / h, -1 / h);
        SymmetricMatrix m = toeplitz(n - 1, 1, 4 * h / 6, h / 6);
        EigenPairs pairs = LowestModes.of(k, m, 12, 0, solver);
        for (int i = 0; i < 12; i++) {
            double phi = (i + 1) * Math.PI / n;
            double exact = 6 / (h * h) * (1 - Math.cos(phi)) / (2 + Math.cos(phi));
            assertEquals(1, pairs.values()[i] / exact, 1e-9);
            assertTrue(pairs.errors()[i] < 1e-12);
            double[] x = pairs.vectors()[i];
            assertEquals(1, Basis.dot(x, m.multiply(x)), 1e-10);
        }
        assertTrue(pairs.count().complete());
    }

    @ParameterizedTest
    @MethodSource("backends")
    void aSquareMembraneSoundsItsTwinNotesTwice(DirectSolver solver) {
        int n = 24;
        SymmetricMatrix k = GridLaplacian.free(n, n);
        SymmetricMatrix m = new SymmetricMatrix(k.pattern());
        for (int i = 0; i < k.order(); i++) {
            m.add(i, i, 1);
        }
        double[] exact = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                exact[i * n + j] = GridLaplacian.eigenvalue(i, n, j, n);
            }
        }
        Arrays.sort(exact);
        // Free: the lowest eigenvalue is zero, the shift must be negative. 20 cuts a pair of twins nowhere and 21 does.
        for (int count : new int[] {1, 2, 20, 21}) {
            EigenPairs pairs = LowestModes.of(k, m, count, -0.01, solver);
            assertEquals(0, pairs.values()[0], 1e-12);
            for (int i = 1; i < count; i++) {
                assertEquals(1, pairs.values()[i] / exact[i], 1e-9, "eigenvalue " + i);
            }
            assertTrue(pairs.count().complete());
        }
    }

    /** A free membrane moved as a whole: told beforehand, it costs no solution and changes nothing else. */
    @ParameterizedTest
    @MethodSource("backends")
    void aMotionWithoutStiffnessNeedNotBeLookedFor(DirectSolver solver) {
        int n = 24;
        SymmetricMatrix k = GridLaplacian.free(n, n);
        SymmetricMatrix m = new SymmetricMatrix(k.pattern());
        for (int i = 0; i < k.order(); i++) {
            m.add(i, i, 1 + i % 3);
        }
        double[] whole = new double[k.order()];
        Arrays.fill(whole, 3);
        EigenPairs looked = LowestModes.of(k, m, 9, -0.01, solver);
        EigenPairs told = LowestModes.of(k, m, 9, -0.01, List.of(whole), solver);
        assertEquals(0, told.values()[0], 1e-12);
        for (int i = 1; i < 9; i++) {
            assertEquals(1, told.values()[i] / looked.values()[i], 1e-9);
            assertTrue(told.errors()[i] < 1e-12, "error " + told.errors()[i]);
        }
        assertTrue(told.count().complete());
        assertTrue(told.solves() <= looked.solves(), told.solves() + " solutions, " + looked.solves() + " without");
        assertThrows(IllegalArgumentException.class, () -> LowestModes.of(k, m, 9, 0, List.of(whole), solver));
    }

    @ParameterizedTest
    @MethodSource("backends")
    void sixEqualStringsGiveEveryNoteSixTimes(DirectSolver solver) {
        int nodes = 60;
        SymmetricMatrix k = toeplitz(nodes, 6, 2, -1);
        SymmetricMatrix m = toeplitz(nodes, 6, 1, 0);
        EigenPairs pairs = LowestModes.of(k, m, 14, 0, solver);
        for (int i = 0; i < 14; i++) {
            double exact = 2 - 2 * Math.cos((i / 6 + 1) * Math.PI / (nodes + 1));
            assertEquals(1, pairs.values()[i] / exact, 1e-9, "eigenvalue " + i);
            for (int j = 0; j < i; j++) {
                assertEquals(0, Basis.dot(pairs.vectors()[i], m.multiply(pairs.vectors()[j])), 1e-8);
            }
        }
        assertTrue(pairs.count().counted() >= 14);
    }

    @ParameterizedTest
    @MethodSource("backends")
    void massOnEverySecondNodeIsEnough(DirectSolver solver) {
        // Massless nodes between the masses join two springs to one of half the stiffness: λ = (1 - cos φ)/m.
        int masses = 30;
        SymmetricMatrix k = toeplitz(2 * masses + 1, 1, 2, -1);
        SymmetricMatrix m = new SymmetricMatrix(k.pattern());
        for (int i = 0; i < masses; i++) {
            m.add(2 * i + 1, 2 * i + 1, 3);
        }
        EigenPairs all = LowestModes.of(k, m, 100, 0, solver);
        assertEquals(masses, all.size());
        EigenPairs some = LowestModes.of(k, m, 5, 0, solver);
        for (int i = 0; i < masses; i++) {
            double exact = (1 - Math.cos((i + 1) * Math.PI / (masses + 1))) / 3;
            assertEquals(1, all.values()[i] / exact, 1e-8);
            if (i < 5) {
                assertEquals(1, some.values()[i] / exact, 1e-9);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("backends")
    void randomMatricesAgreeWithADenseSolver(DirectSolver solver) {
        for (int seed = 1; seed <= 8; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            SymmetricMatrix k = RandomMatrices.positiveDefinite(6 + 3 * seed, 1 + seed % 3, random);
            SymmetricMatrix m = new SymmetricMatrix(k.pattern());
            double[] values = k.copy().values();
            for (int i = 0; i < values.length; i++) {
                m.values()[i] = 0.02 * values[i] * random.nextDouble(0.9, 1.1);
            }
            for (int i = 0; i < m.order(); i++) {
                m.add(i, i, random.nextDouble(1, 20));
            }
            int count = Math.min(5, k.order());
            double[] exact = Dense.eigenvalues(k, m);
            EigenPairs pairs = LowestModes.of(k, m, count, 0, solver);
            for (int i = 0; i < count; i++) {
                assertEquals(1, pairs.values()[i] / exact[i], 1e-9, "seed " + seed + ", eigenvalue " + i);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("backends")
    void aShiftAboveAnEigenvalueIsRefused(DirectSolver solver) {
        SymmetricMatrix k = toeplitz(20, 1, 2, -1);
        SymmetricMatrix m = toeplitz(20, 1, 1, 0);
        assertThrows(IllegalArgumentException.class, () -> LowestModes.of(k, m, 2, 0.777, solver));
        assertThrows(IllegalArgumentException.class, () -> LowestModes.of(k, m, 0, 0, solver));
    }
}
