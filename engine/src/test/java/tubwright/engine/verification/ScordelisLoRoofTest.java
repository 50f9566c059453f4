// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Scordelis–Lo roof (Scordelis and Lo 1964, J. Am. Concr. Inst. 61): 0.3024 is the value in use since (citation from
 * memory). */
class ScordelisLoRoofTest {
    private static final double PUBLISHED = .3024;

    @Test
    void quadsComeWithinTwoPerCentOnSixteenASide() {
        assertEquals(1, ObstacleCourse.scordelisLo(Kind.QUADS, 16) / PUBLISHED, .02);
    }

    @Test
    void quadsComeWithinTwoPerCentOnEightASideAlready() {
        assertEquals(1, ObstacleCourse.scordelisLo(Kind.QUADS, 8) / PUBLISHED, .02);
    }

    @Test
    void trianglesComeWithinTwoPerCent() {
        assertEquals(1, ObstacleCourse.scordelisLo(Kind.TRIANGLES, 16) / PUBLISHED, .02);
    }
}
