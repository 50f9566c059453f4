// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.rig.explain.CockpitTub;
import tubwright.numerics.solver.Solvers;

/** Small models of the box with a cockpit. */
class ScaleModelTest {
    private static ScaleModel third(double plies, double cores) {
        return ScaleModel.of(
                CockpitTub.TUB, CockpitTub.TORSION, 1 / 3.0, plies, cores, CockpitTub.TUB.meshSize(), Solvers.best());
    }

    @Test
    void aModelToScaleInEverythingHasOneTwentySeventhOfStiffnessAndMass() {
        ScaleModel model = third(1 / 3.0, 1 / 3.0);
        assertEquals(1 / 27.0, model.modelStiffness() / model.fullStiffness(), 1e-9);
        assertEquals(1 / 27.0, model.modelMass() / model.fullMass(), 1e-9);
        assertEquals(0, model.errorOfPlainRule(), 1e-9);
        assertEquals(model.fullStiffness(), model.fullSize(model.modelStiffness()), 1e-6 * model.fullStiffness());
    }

    @Test
    void theSamePliesMakeAModelOfThinWallsNearlyANinthAsStiff() {
        // Bredt 1896: a thin tube's stiffness goes with t A²/(s L), so with the same wall and all lengths a third it is
        // λ² = 1/9; walls, core and joints make it a little other than that, never beyond what all of it to scale would
        // be.
        ScaleModel model = third(1, 1 / 3.0);
        double ratio = model.modelStiffness() / model.fullStiffness();
        assertEquals(1 / 9.0, ratio, 0.25 / 9);
        assertTrue(ratio > 1 / 27.0);
        assertEquals(9 * ratio * 3 - 1, model.errorOfPlainRule(), 1e-9);
        // Equal twist is equal strain when lengths shrink alike.
        assertEquals(2000 * ratio, model.torqueOfEqualStrain(2000), 1e-6);
    }

    @Test
    void aScaleBeyondFullSizeIsRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> ScaleModel.of(
                        CockpitTub.TUB, CockpitTub.TORSION, 3, 1, 1, CockpitTub.TUB.meshSize(), Solvers.best()));
    }
}
