// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tubwright.engine.strength.Plies.MPA;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The reserve factor is a factor on the load: multiplied by it, the load just breaks the ply, residual stress held. */
class LoadScalingTest {
    private static final PlyStrengths S = Plies.strengths(Plies.AS4_3501_6);
    private static final List<PlyCriterion> ALL = List.of(
            MaximumStress.of(S),
            TsaiHill.plain(S),
            TsaiHill.modified(S),
            TsaiWu.of(S, -0.5),
            Hashin.of(S),
            Hashin.of(S, 75.36 * MPA, 1),
            Puck.of(S, PuckSlopes.CARBON),
            (PlyCriterion) Criterion.MAXIMUM_STRAIN.prepare(Plies.AS4_3501_6, KnockDown.NONE));

    @Test
    void theScaledLoadLiesOnTheSurfaceAndNoSmallerOneDoes() {
        long seed = 20_26;
        Random random = new Random(seed);
        for (int i = 0; i < 4000; i++) {
            double[] m = stress(random, 300, 30, 30);
            double[] r = stress(random, 60, 20, 5);
            for (PlyCriterion criterion : ALL) {
                double factor = criterion.reserveFactor(m[0], m[1], m[2], r[0], r[1], r[2]);
                String where = criterion + ", seed " + seed + ", trial " + i;
                if (factor == 0) {
                    assertTrue(whole(criterion, m, r, 0) <= 1, where);
                    continue;
                }
                // At the failure load the total stress has no reserve; well below and above it lies in and out.
                assertEquals(1, whole(criterion, m, r, factor), 1e-6, where);
                for (double share = 0.05; share < 0.999; share += 0.05) {
                    assertTrue(whole(criterion, m, r, share * factor) > 1, where + " at " + share);
                }
            }
        }
    }

    /** Reserve of the total stress taken as if all of it were load. */
    private static double whole(PlyCriterion criterion, double[] m, double[] r, double factor) {
        return criterion.reserveFactor(r[0] + factor * m[0], r[1] + factor * m[1], r[2] + factor * m[2]);
    }

    private static double[] stress(Random random, double s1, double s2, double s12) {
        return new double[] {
            s1 * MPA * random.nextGaussian(), s2 * MPA * random.nextGaussian(), s12 * MPA * random.nextGaussian()
        };
    }

    @Test
    void aPathThroughNoStressAtAllDoesNotFailThere() {
        double factor = Puck.of(S, PuckSlopes.CARBON).reserveFactor(0, MPA, 0, 0, -10 * MPA, 0);
        assertEquals(58, factor, 1e-9);
    }

    @Test
    void residualStressIsTakenOffAndNotScaled() {
        PlyCriterion criterion = MaximumStress.of(S);
        assertEquals(0.4, criterion.reserveFactor(0, 20 * MPA, 0, 0, 40 * MPA, 0), 1e-12);
        var broken = criterion.assess(new double[] {0, MPA, 0}, new double[] {0, 50 * MPA, 0});
        assertInstanceOf(PlyFailure.ByResidualStress.class, broken);
        assertEquals(0, broken.reserveFactor());
    }

    @Test
    void noLoadNeverBreaksAPly() {
        for (PlyCriterion criterion : ALL) {
            assertInstanceOf(PlyFailure.Never.class, criterion.assess(new double[3], new double[3]));
        }
    }
}
