// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Beam pre-twisted by 90°, thick and thin, 12 × 2 elements: warped elements in bending. */
class TwistedBeamTest {
    // Exact beam theory: Zupan and Saje (2004, Finite Elem. Anal. Des. 40:1445); thin: Simo, Fox and Rifai (1989).
    private static final double THICK_ACROSS = .001753248285256;
    private static final double THICK_ALONG = .005424534868469;
    private static final double THIN_ACROSS = .001294;
    private static final double THIN_ALONG = .005256;

    @Test
    void thick() {
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.QUADS, 12, 2, .32, 1) / THICK_ACROSS, .02);
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.QUADS, 12, 2, .32, 2) / THICK_ALONG, .008);
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.TRIANGLES, 12, 2, .32, 1) / THICK_ACROSS, .02);
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.TRIANGLES, 12, 2, .32, 2) / THICK_ALONG, .02);
    }

    @Test
    void thin() {
        // Floor: .975 and .964, plain MITC4 on this mesh (computed here, independent program).
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.QUADS, 12, 2, .0032, 1) / THIN_ACROSS, .02);
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.QUADS, 12, 2, .0032, 2) / THIN_ALONG, .02);
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.TRIANGLES, 12, 2, .0032, 1) / THIN_ACROSS, .03);
        assertEquals(1, ObstacleCourse.twistedBeam(Kind.TRIANGLES, 12, 2, .0032, 2) / THIN_ALONG, .03);
    }
}
