// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * What lets the search for the lowest factor pass over plies: a state said to be clear of a factor has no lower one, and
 * nor has anything between two of them. The factors themselves, found without that, are the measure.
 */
class ClearStatesTest {
    private static final long SEED = 31;
    private static final PlyStrengths TAPE = PlyStrengths.unidirectional(1.5e9, 1.2e9, 4e7, 2e8, 7e7);
    private static final PlyStrengths CLOTH = new PlyStrengths(8e8, 7e8, 7.5e8, 6.5e8, 9e7, true);

    private static final PlyCriterion[] CONVEX = {
        MaximumStress.of(TAPE),
        MaximumStress.of(CLOTH),
        TsaiWu.of(TAPE, TsaiWu.USUAL_INTERACTION),
        TsaiWu.of(CLOTH, 0.7),
        Hashin.of(TAPE),
        Puck.of(TAPE, PuckSlopes.CARBON),
        Puck.of(TAPE, PuckSlopes.GLASS),
        VonMises.of(3e8)
    };

    @Test
    void nothingBetweenTwoClearStatesFailsBefore() {
        Random random = new Random(SEED);
        for (PlyCriterion criterion : CONVEX) {
            int clear = 0;
            for (int i = 0; i < 20_000; i++) {
                double[] m = state(random, 1);
                double[] n = state(random, 1);
                double[] r = state(random, 0.2);
                double[] s = state(random, 0.2);
                double[] kept = {2 * random.nextDouble(), 2 * random.nextDouble()};
                if (!criterion.bounds(r[0], r[1], r[2])
                        || !criterion.bounds(s[0], s[1], s[2])
                        || !criterion.clears(m[0], m[1], m[2], r[0], r[1], r[2], kept[0], kept[1])
                        || !criterion.clears(n[0], n[1], n[2], s[0], s[1], s[2], kept[0], kept[1])) {
                    continue;
                }
                clear++;
                for (double t : new double[] {0, random.nextDouble(), 1}) {
                    double[] a = between(m, n, t);
                    double[] b = between(r, s, t);
                    double[] least = kept.clone();
                    int lowered = criterion.lower(a[0], a[1], a[2], b[0], b[1], b[2], least, 0);
                    assertEquals(0, lowered, () -> criterion + ", seed " + SEED);
                }
            }
            assertTrue(clear > 200, criterion + " cleared only " + clear);
        }
    }

    @Test
    void whatWasNeverFoundAndWhatTheCureHasBrokenIsNeverClear() {
        for (PlyCriterion criterion : CONVEX) {
            assertFalse(
                    criterion.clears(1e6, 1e6, 1e6, 0, 0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY),
                    criterion::toString);
            assertFalse(criterion.bounds(2e9, 2e9, 0), criterion::toString);
        }
    }

    @Test
    void surfacesThatCaveInBoundNothing() {
        assertFalse(TsaiHill.modified(TAPE).bounds(0, 0, 0));
        assertFalse(Hashin.of(TAPE, TAPE.yc() / 2, 1).bounds(0, 0, 0), "shear is free beside fibre compression");
        assertFalse(Puck.of(TAPE, new PuckSlopes(0.2, 0.3)).bounds(0, 0, 0), "a dent where A meets B");
    }

    private static double[] state(Random random, double share) {
        return new double[] {
            share * 1.5e9 * random.nextGaussian(),
            share * 1e8 * random.nextGaussian(),
            share * 7e7 * random.nextGaussian()
        };
    }

    private static double[] between(double[] a, double[] b, double t) {
        double[] c = new double[3];
        for (int i = 0; i < 3; i++) {
            c[i] = (1 - t) * a[i] + t * b[i];
        }
        return c;
    }
}
