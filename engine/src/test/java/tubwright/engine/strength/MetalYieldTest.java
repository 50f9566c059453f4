// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import org.junit.jupiter.api.Test;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;

/** Metal sheets yield as von Mises 1913 says. */
class MetalYieldTest {
    @Test
    void aSheetYieldsInShearAtOneOverRootThree() {
        PlyCriterion criterion = VonMises.of(300e6);
        assertEquals(3, criterion.reserveFactor(100e6, 0, 0), 1e-12);
        assertEquals(3 / Math.sqrt(3), criterion.reserveFactor(0, 0, 100e6), 1e-12);
        assertEquals(3, criterion.reserveFactor(100e6, 100e6, 0), 1e-12);
        assertEquals(3 / Math.sqrt(3), criterion.reserveFactor(100e6, -100e6, 0), 1e-12);
    }

    @Test
    void everyShippedMetalIsCheckedByTheLowerOfItsYields() {
        for (var material : MaterialLibrary.shipped().all()) {
            if (material instanceof Metal metal) {
                var criterion = assertInstanceOf(
                        PlyCriterion.class, Criterion.PUCK.prepare(metal, KnockDown.NONE), metal.name());
                double tension = metal.properties().require(Property.TENSILE_YIELD);
                double lower = Math.min(
                        tension,
                        metal.properties().si(Property.COMPRESSIVE_YIELD).orElse(tension));
                assertEquals(lower, criterion.reserveFactor(1, 0, 0), 1e-6 * lower);
            }
        }
    }
}
