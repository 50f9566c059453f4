// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Cook's skewed panel in shear (Cook 1974, J. Struct. Div. 100:1851): converged displacement 23.97. */
class CookMembraneTest {
    @Test
    void fourASideComeWithinThreePerCent() {
        // A bilinear membrane gives 18.30.
        assertEquals(1, ObstacleCourse.cook(Kind.QUADS, 4) / 23.97, .03);
        assertEquals(1, ObstacleCourse.cook(Kind.TRIANGLES, 4) / 23.97, .05);
    }

    @Test
    void eightASideComeWithinOnePerCent() {
        assertEquals(1, ObstacleCourse.cook(Kind.QUADS, 8) / 23.97, .01);
        assertEquals(1, ObstacleCourse.cook(Kind.TRIANGLES, 8) / 23.97, .02);
    }
}
