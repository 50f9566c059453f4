// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Cook's skewed panel in shear (Cook 1974, J. Struct. Div. 100:1851): converged displacement 23.97. */
class CookMembraneTest {
    @ParameterizedTest
    @EnumSource
    void fourASideComeWithinTwoPerCent(Kind kind) {
        // A bilinear membrane gives 18.30.
        assertEquals(1, ObstacleCourse.cook(kind, 4) / 23.97, .02);
    }

    @ParameterizedTest
    @EnumSource
    void eightASideComeWithinOnePerCent(Kind kind) {
        assertEquals(1, ObstacleCourse.cook(kind, 8) / 23.97, .01);
    }
}
