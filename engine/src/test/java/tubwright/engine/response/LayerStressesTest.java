// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminateResponse;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Property;
import tubwright.engine.strength.StrengthBasis;

/** The streaming stresses and factors are those of lamination theory done the slow way. */
class LayerStressesTest {
    private static final long SEED = 20261125;
    private static final Material TAPE =
            MaterialLibrary.shipped().find("ud-as4-3502").orElseThrow();
    private static final Material CLOTH =
            MaterialLibrary.shipped().find("pw-t650-976").orElseThrow();
    private static final Laminate LAMINATE = new Laminate(
            List.of(
                    Layer.ofDegrees(CLOTH, 45),
                    Layer.ofDegrees(TAPE, 0),
                    Layer.ofDegrees(TAPE, -30),
                    Layer.ofDegrees(TAPE, 90)),
            Reference.OUTER);

    @Test
    void stressesAreThoseOfLaminationTheory() {
        LayerStresses ready = new LayerStresses(LAMINATE, StrengthBasis.USUAL);
        assertFalse(ready.slots().isEmpty());
        Random random = new Random(SEED);
        double[] strains = random.doubles(6, -1e-3, 1e-3).toArray();
        LaminateResponse slow = LaminateResponse.underStrains(LAMINATE, strains, Climate.NONE);
        double[] fast = new double[3];
        for (LayerStresses.Slot slot : ready.slots()) {
            var state = slow.layers().get(slot.layer());
            slot.stress(strains, 0, fast);
            assertArrayEquals(state.outer().plyStress(), fast, 1e-3, "seed " + SEED);
            slot.stress(strains, 1, fast);
            assertArrayEquals(state.inner().plyStress(), fast, 1e-3, "seed " + SEED);
        }
    }

    @Test
    void fibresAndMatrixAreKeptApartAndTheirLesserIsTheWhole() {
        LayerStresses ready = new LayerStresses(LAMINATE, StrengthBasis.USUAL);
        Random random = new Random(SEED);
        for (LayerStresses.Slot slot : ready.slots()) {
            double[] m = random.doubles(3, -5e7, 5e7).toArray();
            double[] r = {0, 1e6, 0};
            double[] least = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
            slot.criterion().lower(m[0], m[1], m[2], r[0], r[1], r[2], least, 0);
            double whole = slot.criterion().reserveFactor(m[0], m[1], m[2], r[0], r[1], r[2]);
            assertEquals(whole, Math.min(least[0], least[1]), 1e-12 * whole, "seed " + SEED);
            assertEquals(slot.criterion().assess(m, r, true).reserveFactor(), least[0], "seed " + SEED);
            assertEquals(slot.criterion().assess(m, r, false).reserveFactor(), least[1], "seed " + SEED);
        }
    }

    @Test
    void tapeAcrossTapeIsLeftInTensionByTheCure() {
        // Cooling shrinks resin more than fibre: plies laid across each other pull one another open (Kaw 2006, ch. 4).
        Laminate crossed = Laminate.of(
                Layer.ofDegrees(TAPE, 0),
                Layer.ofDegrees(TAPE, 90),
                Layer.ofDegrees(TAPE, 90),
                Layer.ofDegrees(TAPE, 0));
        LayerStresses ready = new LayerStresses(crossed, StrengthBasis.USUAL);
        boolean known = TAPE.properties().has(Property.STRESS_FREE_TEMPERATURE);
        for (LayerStresses.Slot slot : ready.slots()) {
            assertTrue(known ? slot.residual()[1] > 1e6 : slot.residual()[1] == 0);
        }
        assertEquals(known, ready.notChecked().isEmpty(), "what is not known is said");
    }
}
