// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Hard bodies through laminates: the law against the balance of energy it comes from. */
class PerforationTest {
    private static final double D = 12.7e-3;
    private static final double T = 4e-3;
    private static final double RHO = 1550;
    private static final double RESISTANCE = 180e6;

    /** ½ m V² = ¼ π D² T σe (1 + β √(ρ/σe) V): Wen 2000, from memory. */
    @Test
    void theLimitSpeedKeepsTheBalanceOfEnergy() {
        for (double mass : new double[] {0.01, 0.1, 2}) {
            double v = Perforation.limitSpeed(Perforation.Nose.FLAT, mass, D, T, RHO, RESISTANCE);
            double right = Perforation.slowEnergy(D, T, RESISTANCE) * (1 + 2 * Math.sqrt(RHO / RESISTANCE) * v);
            assertEquals(right, 0.5 * mass * v * v, 1e-9 * right);
        }
    }

    @Test
    void aHeavyBodyNeedsTheEnergyOfASlowPunch() {
        double slow = Perforation.slowEnergy(D, T, RESISTANCE);
        assertEquals(slow, Perforation.energy(Perforation.Nose.FLAT, 1e6, D, T, RHO, RESISTANCE), 1e-3 * slow);
        assertTrue(Perforation.energy(Perforation.Nose.FLAT, 0.01, D, T, RHO, RESISTANCE) > 1.05 * slow);
        assertTrue(Perforation.energy(Perforation.Nose.ROUND, 0.01, D, T, RHO, RESISTANCE)
                < Perforation.energy(Perforation.Nose.FLAT, 0.01, D, T, RHO, RESISTANCE));
    }

    @Test
    void negativeValuesAreRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Perforation.limitSpeed(Perforation.Nose.FLAT, -1, D, T, RHO, RESISTANCE));
    }
}
