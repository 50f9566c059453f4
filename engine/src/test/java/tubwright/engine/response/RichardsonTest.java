// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class RichardsonTest {
    private static Converged.Sample sample(double h, double order) {
        return new Converged.Sample(h, 1, 10 + 3 * Math.pow(h, order));
    }

    @Test
    void threeMeshesFindTheOrderAndTheLimit() {
        Converged c = Richardson.extrapolate(List.of(sample(0.4, 1.7), sample(0.3, 1.7), sample(0.2, 1.7)));
        assertEquals(10, c.value(), 1e-9);
        assertEquals(1.7, c.order(), 1e-9);
    }

    @Test
    void twoMeshesAssumeSecondOrderAndWidenTheBand() {
        Converged c = Richardson.extrapolate(List.of(sample(0.4, 2), sample(0.2, 2)));
        assertEquals(10, c.value(), 1e-9);
        assertEquals(3 * 3 * 0.04, c.error(), 1e-9);
    }

    @Test
    void valuesThatSwingAreNotExtrapolated() {
        Converged c = Richardson.extrapolate(List.of(
                new Converged.Sample(0.4, 1, 9), new Converged.Sample(0.3, 1, 11), new Converged.Sample(0.2, 1, 10)));
        assertEquals(10, c.value());
        assertEquals(2, c.error());
    }

    /** Roache's own example has the band 1.25 |f1 − f0|: the exact value of a monotone series lies inside. */
    @Test
    void theBandHoldsTheExactValue() {
        for (double order = 0.6; order < 3.9; order += 0.3) {
            Converged c = Richardson.extrapolate(List.of(sample(0.5, order), sample(0.35, order), sample(0.25, order)));
            assertTrue(Math.abs(c.value() - 10) <= c.error(), "order " + order);
        }
    }
}
