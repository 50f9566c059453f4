// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.joint.FastenerChecks;
import tubwright.engine.joint.FastenerFlexibility;
import tubwright.engine.joint.InterRivetBuckling;
import tubwright.engine.joint.JointDetail;
import tubwright.engine.joint.LineLoad;
import tubwright.engine.joint.ShearPanel;
import tubwright.engine.joint.Sheet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/** Rivets between sheet and flange carry q (1 + 0.414 k) by Kuhn, Peterson and Levin 1952, NACA TN 2661. */
class SheetFoldsTest {
    private static final Metal METAL = MaterialLibrary.shipped().get("al-2024-t3", Metal.class);
    private static final double T = 0.8e-3;
    private static final double PITCH = 0.025;
    private static final ShearPanel PANEL = new ShearPanel(0.5, 0.25, T, METAL, 60e-6);

    private static FastenerChecks rivets() {
        Sheet sheet = Sheet.of(new Laminate(List.of(new Layer(METAL, T, 0, LayerRole.SHEET)), Reference.MIDDLE), 0);
        var row = new JointDetail.Fasteners(
                0.004,
                0.008,
                PITCH,
                1,
                0,
                0.012,
                METAL,
                InterRivetBuckling.Head.values()[0],
                new FastenerFlexibility.NelsonBuninHartSmith());
        return new FastenerChecks(row, sheet, sheet, KnockDown.NONE);
    }

    private static double factor(double tau, int element) {
        SheetFolds folds = new SheetFolds(List.of(PANEL), new double[] {tau}, new int[] {0, -1});
        return folds.under(rivets(), new LineLoad(0, tau * T, 0, 0), element).stream()
                .filter(Check.Reserve.class::isInstance)
                .map(Check.Reserve.class::cast)
                .filter(c -> c.mode().equals("fasteners in shear and tension"))
                .findFirst()
                .orElseThrow()
                .reserveFactor();
    }

    @Test
    void theFactorIsThatAtWhichRivetsGiveWayUnderTheFoldsThereAreAtThatLoad() {
        double tau = 3 * PANEL.bucklingStress();
        double f = factor(tau, 0);
        double k = PANEL.under(f * tau).factor();
        assertTrue(k > 0.3, "well buckled at failure");
        double strength = Math.PI / 4 * 0.004 * 0.004 * METAL.properties().require(Property.S12);
        double carried = f * tau * T * PITCH;
        assertEquals(strength, carried * Math.hypot(1, k), 0.005 * strength);
        // The report's straight line for the sum of both, 1 + 0.414 k, is above it and meets it at k = 0 and 1.
        assertTrue(carried * (1 + 0.414 * k) > strength);
        assertTrue(carried * (1 + 0.414 * k) < 1.09 * strength);
    }

    @Test
    void sheetThatHasNotBuckledWhenItsRivetsGiveWayPullsOnNothing() {
        double tau = 1e-6 * PANEL.bucklingStress();
        double flat = Math.PI / 4 * 0.004 * 0.004 * METAL.properties().require(Property.S12) / (tau * T * PITCH);
        assertEquals(flat, factor(tau, 1), 1e-9 * flat, "no panel beside the row");
        assertTrue(factor(tau, 0) <= flat);
    }
}
