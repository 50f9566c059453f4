// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Edges as a net takes them into the flat, nodes 10 mm apart. */
class TracedLineTest {
    private static final double STEP = 0.010;

    /** A straight line on the face; from the node of number {@code from} on the flat is moved by {@code by}, m. */
    private static TracedLine line(int count, double by, int... moved) {
        TracedLine rim = new TracedLine(false, STEP);
        for (int i = 0; i < count; i++) {
            int at = i;
            double off = Arrays.stream(moved).anyMatch(m -> m == at) ? by : 0;
            rim.add(new double[] {i * STEP + off, 0}, new double[] {i * STEP, 0, 0});
        }
        rim.clean();
        return rim;
    }

    @Test
    void whatLiesInTheFlatAsOnTheFaceIsKeptWhole() {
        TracedLine rim = line(5, 0);
        assertArrayEquals(new double[] {0, 0, STEP, 0, 2 * STEP, 0, 3 * STEP, 0, 4 * STEP, 0}, rim.points(), 1e-12);
        assertTrue(rim.tears().isEmpty());
    }

    @Test
    void clothInShearIsNotTorn() {
        TracedLine rim = new TracedLine(false, STEP);
        for (int i = 0; i < 5; i++) {
            rim.add(new double[] {1.4 * i * STEP, 0}, new double[] {i * STEP, 0, 0});
        }
        assertTrue(rim.tears().isEmpty());
    }

    @Test
    void nodesTakenForTheOtherSidesAreLeftOut() {
        TracedLine rim = line(12, 0.06, 5, 6);
        assertEquals(2 * 10, rim.points().length);
        assertTrue(rim.tears().isEmpty());
    }

    @Test
    void aNetThatMissesItselfIsToldByHowMuchAndWhere() {
        TracedLine rim = line(12, 0.06, 6, 7, 8, 9, 10, 11);
        assertEquals(2 * 12, rim.points().length);
        assertEquals(1, rim.tears().size());
        assertEquals(0.06, rim.tears().getFirst().by(), 1e-12);
        assertEquals(5 * STEP, rim.tears().getFirst().place()[0], 1e-12);
    }

    /** What lies between was never laid: nothing is known of it, but a step elsewhere is told all the same. */
    @Test
    void whatTheNetDoesNotReachIsNoTear() {
        TracedLine line = new TracedLine(false, STEP);
        for (int i = 0; i < 14; i++) {
            if (i == 4) {
                line.miss(0.02);
            }
            double off = i < 4 ? 0 : i < 9 ? 0.05 : 0.11;
            line.add(new double[] {i * STEP + off, 0}, new double[] {i * STEP, 0, 0});
        }
        line.clean();
        assertEquals(1, line.tears().size());
        assertEquals(0.06, line.tears().getFirst().by(), 1e-12);
        assertEquals(0.02, line.missing(), 1e-12);
    }

    /** Beside the seam sides take turns: one crossing over is left of three. */
    @Test
    void besideASeamTheLineGoesOverOnce() {
        TracedLine rim = line(14, 0.06, 5, 8, 9, 10, 11, 12, 13);
        assertEquals(1, rim.tears().size());
        assertEquals(2 * 13, rim.points().length);
    }

    @Test
    void aLoopIsLookedAtRoundItsEndToo() {
        TracedLine rim = new TracedLine(true, STEP);
        int n = 36;
        double radius = STEP * n / (2 * Math.PI);
        for (int i = 0; i < n; i++) {
            double a = 2 * Math.PI * i / n;
            double[] p = {radius * Math.cos(a), radius * Math.sin(a), 0};
            rim.add(i == 0 || i == n - 1 ? new double[] {p[0] + 0.05, p[1]} : new double[] {p[0], p[1]}, p);
        }
        rim.clean();
        assertEquals(2 * (n - 2), rim.points().length);
        assertTrue(rim.tears().isEmpty());
    }
}
