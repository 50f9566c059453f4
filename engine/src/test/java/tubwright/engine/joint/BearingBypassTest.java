// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tubwright.engine.strength.Check;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Efficiencies of a bolt row after Hart-Smith 1976 (formulas from memory, values computed apart). */
class BearingBypassTest {
    private static final Ladder LADDER =
            Ladder.of(Family.JOINTS, "Hart-Smith 1976, NASA CR-144899, from memory; values computed", Mark.COMPUTED);

    private static BearingBypass row(double widthOverDiameter) {
        return new BearingBypass(6e-3, widthOverDiameter * 6e-3, 1, BearingBypass.QUASI_ISOTROPIC);
    }

    @Test
    void aSingleRowIsBestAtThreeDiameters() {
        double[] ratio = {3, 4, 5, 6, 8};
        double[] loaded = {0.427, 0.423, 0.400, 0.373, 0.323};
        double[] open = {0.503, 0.553, 0.581, 0.5975, 0.617};
        for (int i = 0; i < ratio.length; i++) {
            LADDER.equal(
                    "Bolt row at W/d = " + ratio[i] + ", loaded efficiency",
                    loaded[i],
                    row(ratio[i]).loadedEfficiency(),
                    0.00051);
            LADDER.equal(
                    "Bolt row at W/d = " + ratio[i] + ", open efficiency",
                    open[i],
                    row(ratio[i]).openEfficiency(),
                    0.00051);
        }
        LADDER.equal("Bolt row at W/d = 3, concentration", 1.562, row(3).loadedConcentration(), 0.00051);
    }

    /** By hand: W/d = 4, e/W = ½, so Θ = ½ and kte = 2 + 3 − 1.5 · 3/5 · ½. */
    @Test
    void aNearEdgeConcentratesTheLoadMore() {
        BearingBypass near = new BearingBypass(6e-3, 24e-3, 12e-3, BearingBypass.QUASI_ISOTROPIC);
        assertEquals(1 + 0.25 * (5 - 1.5 * 0.6 * 0.5 - 1), near.loadedConcentration(), 1e-12);
        assertEquals(true, near.loadedConcentration() > row(4).loadedConcentration());
    }

    @Test
    void bearingAndBypassAddOnTheNetSection() {
        BearingBypass row = row(4);
        double strip = 500e6 * row.width() * 3e-3;
        var checks = row.checks(3e-3, 0.2 * strip, 0.3 * strip, 500e6, OptionalDouble.empty());
        var net = assertInstanceOf(Check.Reserve.class, checks.get(0));
        assertEquals(1 / (0.2 / 0.423 + 0.3 / 0.553), net.reserveFactor(), 2e-3);
        var bearing = assertInstanceOf(Check.NotChecked.class, checks.get(1));
        assertTrue(bearing.toString().contains("not checked: needs bearing strength"), bearing.toString());
    }
}
