// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;

/** What lacks data says so; nothing passes in silence. */
class MissingDataTest {
    private static final MaterialLibrary SHIPPED = MaterialLibrary.shipped();

    @Test
    void everyShippedPlyIsCheckedOrSaysWhatItNeeds() {
        int checked = 0;
        int refused = 0;
        for (Material material : SHIPPED.all()) {
            if (!(material instanceof Ply)) {
                continue;
            }
            for (Criterion criterion : Criterion.values()) {
                switch (criterion.prepare(material, KnockDown.NONE)) {
                    case PlyCriterion _ -> checked++;
                    case Check.NotChecked(String mode, var needs) -> {
                        refused++;
                        assertTrue(mode.contains(material.name()), mode);
                        assertFalse(needs.isEmpty());
                    }
                }
            }
        }
        assertTrue(checked > 50, checked + " checked");
        assertTrue(refused > 0, "cloths have no inter-fibre direction");
    }

    @Test
    void theNeedNamesThePropertyAndTheMaterial() {
        Material weak = SHIPPED.all().stream()
                .filter(m -> m instanceof Ply && !m.properties().has(Property.S12))
                .findFirst()
                .orElseThrow();
        var refusal = assertInstanceOf(Check.NotChecked.class, Criterion.TSAI_WU.prepare(weak, KnockDown.NONE));
        assertTrue(refusal.toString().contains("S12 of " + weak.name()), refusal.toString());
    }

    @Test
    void aLaminateListsThePliesItCouldNotCheck() {
        Material weak = SHIPPED.all().stream()
                .filter(m -> m instanceof Ply && !m.properties().has(Property.S12))
                .findFirst()
                .orElseThrow();
        Laminate laminate =
                Laminate.of(Layer.ofDegrees(weak, 0), Layer.ofDegrees(Plies.T300_5208, 0), Layer.ofDegrees(weak, 0));
        FirstPlyFailure first = FirstPlyFailure.of(
                laminate,
                new double[] {1e5, 0, 0, 0, 0, 0},
                Climate.NONE,
                LayerCriteria.of(Criterion.MAXIMUM_STRESS, KnockDown.NONE));
        assertEquals(1, first.notChecked().size());
        assertEquals(1, first.fibre().orElseThrow().index());
    }

    @Test
    void aClothFailsByItsFibresBothWays() {
        Material cloth = SHIPPED.all().stream()
                .filter(m -> m instanceof Ply p
                        && p.form() == Ply.Form.CLOTH
                        && PlyStrengths.missing(p).isEmpty())
                .findFirst()
                .orElseThrow();
        assertInstanceOf(Check.NotChecked.class, Criterion.PUCK.prepare(cloth, KnockDown.NONE));
        var criterion = (PlyCriterion) Criterion.MAXIMUM_STRESS.prepare(cloth, KnockDown.NONE);
        var failure = (PlyFailure.Reached) criterion.assess(new double[] {0, 1e6, 0}, new double[3]);
        assertEquals(FailureMode.WEFT_TENSION, failure.mode());
        assertTrue(failure.mode().isFibre());
    }
}
