// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.numerics.multifrontal.LocalInverse;
import tubwright.numerics.multifrontal.LocalInverses;
import tubwright.numerics.solver.Solvers;

/** Blocks of an inverse are what whole solutions of unit loads say. */
class LocalInversesTest {
    private static final long SEED = 20261126;

    @Test
    void blocksOfAShellsInverseAreWhatUnitLoadsDo() {
        int across = 13;
        SymmetricMatrix matrix = new ShellGrid(across, 17).positiveDefinite(SEED);
        List<LocalInverses.Place> places = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(SEED);
        for (int p = 0; p < 12; p++) {
            int corner = random.nextInt(across - 5) + across * random.nextInt(12);
            int[] loaded = IntStream.range(0, 9)
                    .map(i -> corner + (i * 5 % 9) % 3 + across * ((i * 5 % 9) / 3))
                    .toArray();
            int[] read = IntStream.range(0, 25)
                    .map(i -> corner + i % 5 + across * (i / 5))
                    .toArray();
            places.add(new LocalInverses.Place(
                    loaded, p == 7 ? IntStream.range(0, across * 17).toArray() : read));
        }
        check(matrix, places);
    }

    @Test
    void nodesFarFromOneAnotherWillDoToo() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int trial = 0; trial < 8; trial++) {
            int across = 2 + random.nextInt(9);
            int along = 2 + random.nextInt(9);
            SymmetricMatrix matrix = new ShellGrid(across, along).positiveDefinite(SEED + trial);
            List<LocalInverses.Place> places = new ArrayList<>();
            for (int p = 0; p < 4; p++) {
                places.add(new LocalInverses.Place(some(across * along, random), some(across * along, random)));
            }
            check(matrix, places);
        }
    }

    private static int[] some(int nodes, SplittableRandom random) {
        return random.ints(1 + random.nextInt(6), 0, nodes).distinct().toArray();
    }

    private static void check(SymmetricMatrix matrix, List<LocalInverses.Place> places) {
        int b = matrix.pattern().blockSize();
        AtomicInteger visited = new AtomicInteger();
        try (Factorisation whole = Solvers.pureJava().factorise(matrix, Definiteness.POSITIVE_DEFINITE)) {
            LocalInverses.of(matrix).visit(places, (p, inverse) -> {
                visited.incrementAndGet();
                compare(whole, b, places.get(p), inverse);
            });
        }
        assertEquals(places.size(), visited.get());
    }

    private static void compare(Factorisation whole, int b, LocalInverses.Place place, LocalInverse inverse) {
        int width = place.loaded().length * b;
        double[][] block = inverse.between();
        double[][] unit = new double[width][width];
        for (int i = 0; i < width; i++) {
            unit[i][i] = 1;
        }
        double[][] spread = inverse.spread(unit);
        for (int i = 0; i < width; i++) {
            double[] x = new double[whole.order()];
            x[place.loaded()[i / b] * b + i % b] = 1;
            whole.solveInPlace(x);
            double size = 0;
            for (double v : x) {
                size = Math.max(size, Math.abs(v));
            }
            for (int j = 0; j < width; j++) {
                assertEquals(x[place.loaded()[j / b] * b + j % b], block[i][j], 1e-10 * size, "between");
            }
            for (int j = 0; j < place.read().length * b; j++) {
                assertEquals(x[place.read()[j / b] * b + j % b], spread[i][j], 1e-10 * size, "spread");
            }
        }
    }

    @Test
    void partsThatNothingJoinsHaveNoBlockInCommon() {
        SymmetricMatrix matrix =
                new SymmetricMatrix(NodeGraph.of(2, new int[][] {{0}, {1}}).pattern(1));
        matrix.add(0, 0, 1);
        matrix.add(1, 1, 1);
        LocalInverses inverses = LocalInverses.of(matrix);
        List<LocalInverses.Place> places = List.of(new LocalInverses.Place(new int[] {0}, new int[] {1}));
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> inverses.visit(places, (_, _) -> {}));
        assertTrue(refused.getMessage().contains("nothing joins"), refused.getMessage());
    }
}
