// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Pinched cylinder with end diaphragms, 1.82488e-5 under the load in common use (citation from memory: Belytschko
 * et al. 1985, CMAME 51:221). */
class PinchedCylinderTest {
    private static final double PUBLISHED = 1.82488e-5;

    @Test
    void quadsComeWithinTwoPerCentOnThirtyTwoASide() {
        assertEquals(1, ObstacleCourse.pinchedCylinder(Kind.QUADS, 32) / PUBLISHED, .02);
    }

    @Test
    void coarseQuadsAreAtLeastAsGoodAsPlainOnes() {
        // Plain MITC4 with bilinear membrane: 0.380, 0.748, 0.930 at 4, 8, 16 (computed here, independent program).
        assertTrue(ObstacleCourse.pinchedCylinder(Kind.QUADS, 4) / PUBLISHED > .380);
        assertTrue(ObstacleCourse.pinchedCylinder(Kind.QUADS, 8) / PUBLISHED > .748);
        assertTrue(ObstacleCourse.pinchedCylinder(Kind.QUADS, 16) / PUBLISHED > .930);
    }

    @Test
    void trianglesComeWithinFourPerCent() {
        assertEquals(1, ObstacleCourse.pinchedCylinder(Kind.TRIANGLES, 32) / PUBLISHED, .04);
    }
}
