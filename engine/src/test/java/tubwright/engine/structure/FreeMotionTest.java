// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FreeMotionTest {
    private static final double[] POINTS = {0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0};
    private static final List<int[]> ONE_BODY = List.of(new int[] {0, 1, 2, 3});

    private static boolean[] fix(int... unknowns) {
        boolean[] fixed = new boolean[24];
        for (int u : unknowns) {
            fixed[u] = true;
        }
        return fixed;
    }

    @Test
    void threePointsHeldInAllTranslationsHoldABody() {
        assertEquals(List.of(), new FreeMotion(POINTS, ONE_BODY).of(0, fix(0, 1, 2, 6, 7, 8, 12, 13, 14)));
    }

    @Test
    void aHingeLeavesOneRotation() {
        List<String> free = new FreeMotion(POINTS, ONE_BODY).of(0, fix(0, 1, 2, 6, 7, 8));
        assertEquals(List.of("rotation about x (roll)"), free);
    }

    @Test
    void withoutSupportsAllSixMotionsAreFree() {
        assertEquals(6, new FreeMotion(POINTS, ONE_BODY).of(0, fix()).size());
    }

    @Test
    void aMissingDirectionIsNamed() {
        List<String> free = new FreeMotion(POINTS, ONE_BODY).of(0, fix(0, 2, 6, 8, 12, 14));
        assertTrue(free.contains("translation along y (sideways)"), free.toString());
    }

    @Test
    void partsThatNothingConnectsAreBodiesOfTheirOwn() {
        FreeMotion motion = new FreeMotion(POINTS, List.of(new int[] {0, 1}, new int[] {2, 3}));
        assertEquals(0, motion.root(1));
        assertEquals(2, motion.root(3));
    }
}
