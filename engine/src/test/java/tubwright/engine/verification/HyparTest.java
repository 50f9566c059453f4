// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Partly clamped hyperbolic paraboloid (Bathe, Iosilevich and Chapelle 2000, Comput. Struct. 75:1). */
class HyparTest {
    @Test
    void moderatelyThin() {
        assertEquals(1, ObstacleCourse.hypar(Kind.QUADS, 32, 1e-3) / 6.3941e-3, .02);
    }

    @Test
    void veryThin() {
        assertEquals(1, ObstacleCourse.hypar(Kind.QUADS, 32, 1e-4) / 5.2988e-1, .03);
        // Floor on the coarse mesh: .928, plain MITC4 (computed here, independent program).
        assertEquals(1, ObstacleCourse.hypar(Kind.QUADS, 8, 1e-4) / 5.2988e-1, .07);
    }

    @Test
    void thickEnoughForShear() {
        assertEquals(1, ObstacleCourse.hypar(Kind.QUADS, 16, 1e-2) / 9.3355e-5, .015);
        assertEquals(1, ObstacleCourse.hypar(Kind.TRIANGLES, 32, 1e-2) / 9.3355e-5, .015);
    }
}
