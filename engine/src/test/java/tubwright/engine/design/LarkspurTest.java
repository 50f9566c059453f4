// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;

/** The demonstration design is a tub, not a box, and every name in it finds what it stands for. */
class LarkspurTest {
    private static final Design LARKSPUR = Design.read(Path.of("../examples/larkspur"));

    @Test
    void itHasTheFeaturesOfATub() {
        Tub tub = LARKSPUR.asDesigned().tub();
        assertEquals("Larkspur", tub.name());
        assertTrue(tub.shape().frames().size() >= 8);
        assertTrue(tub.shape().strips().size() >= 5);
        assertTrue(tub.shape().openings().size() >= 2);
        assertTrue(tub.shape().walls().size() >= 4);
        assertTrue(tub.layout().zones().size() >= 10);
        assertTrue(tub.hardpoints().size() >= 16);
        assertTrue(tub.laminates().values().stream()
                .anyMatch(l -> l.layersWith(LayerRole.CORE).isEmpty()));
        assertTrue(tub.laminates().values().stream()
                .anyMatch(l -> !l.layersWith(LayerRole.CORE).isEmpty()));
        double length = tub.shape().rear() - tub.shape().front();
        assertEquals(2.3, length, 0.1);
    }

    @Test
    void theNoseIsNarrowAndTheFloorRisesToIt() {
        var shape = LARKSPUR.asDesigned().tub().shape();
        assertTrue(shape.section(0).area() < 0.4 * shape.section(1.65).area());
        assertTrue(shape.section(0).bottom() > shape.section(1.4).bottom() + 0.08);
        assertTrue(shape.section(0.95).top() > shape.section(1.4).top() + 0.01, "the scuttle stands above the cockpit");
    }

    @Test
    void everyZoneHasALaminateAndEveryPatchItsPlies() {
        for (Design.Variant variant : LARKSPUR.variants()) {
            Tub tub = variant.tub();
            tub.layout().zones().forEach(z -> assertTrue(tub.laminates().containsKey(z.name()), z.name()));
            tub.layout().patches().forEach(p -> assertTrue(tub.patchPlies().containsKey(p.name()), p.name()));
        }
    }

    @Test
    void theTorsionCaseHoldsTheEngineMountsAndTwistsTheFrontPickUps() {
        Case.Torsion torsion =
                (Case.Torsion) LARKSPUR.asDesigned().tub().cases().getFirst();
        assertEquals(4, torsion.hold().size());
        assertEquals(8, torsion.loaded().size());
        assertEquals(1000, torsion.couple(), 1e-9);
        assertTrue(torsion.frontStation() < torsion.rearStation());
    }

    @Test
    void theAluminiumVariantHasTheSameSurfaceInRivetedSheet() {
        Tub carbon = LARKSPUR.asDesigned().tub();
        Tub metal = LARKSPUR.variant("aluminium").orElseThrow().tub();
        assertEquals(carbon.shape().skinArea(), metal.shape().skinArea(), 1e-12);
        assertTrue(metal.laminates().values().stream()
                .allMatch(l -> l.layersWith(LayerRole.SHEET).size() == 1));
        assertTrue(metal.joints().stream().allMatch(j -> j.fastenerPitch() > 0));
        assertTrue(metal.layout().pieces().size() > carbon.layout().pieces().size());
        assertTrue(metal.stiffeners().size() > 4);
        assertEquals(0, carbon.stiffeners().size());
    }

    @Test
    void itIsWithoutWarningsOfMissingJoints() {
        assertTrue(LARKSPUR.warnings().stream().noneMatch(w -> w.text().contains("no joint is written")));
    }
}
