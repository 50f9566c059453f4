// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tubwright.engine.joint.FastenerFlexibility.Huth;
import tubwright.engine.joint.FastenerFlexibility.Plate;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Shares of three rows: a worked example read in a tutorial on load transfer, and one computed apart. */
class FastenerRowTest {
    private static final Ladder LADDER = Ladder.of(Family.FASTENERS, "Tutorial on load transfer", Mark.READ);
    private static final Ladder APART = Ladder.of(Family.FASTENERS, "Independent program", Mark.COMPUTED);

    private static final double MM = 1e-3;

    private static double[] percent(double thickness, double diameter) {
        Plate plate = new Plate(thickness * MM, 72e9);
        double c = Huth.BOLTED_METAL.singleShear(plate, plate, diameter * MM, 200e9);
        double[] shares = FastenerRow.even(plate, plate, 3, 25 * MM, 25 * MM, c).shares();
        return Arrays.stream(shares).map(s -> 100 * s).toArray();
    }

    @Test
    void theOuterRowsOfThreeTakeMore() {
        Plate plate = new Plate(3 * MM, 72e9);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 3 mm, Huth (1e-5 mm/N)",
                1.988,
                Huth.BOLTED_METAL.singleShear(plate, plate, 6.35 * MM, 200e9) * 1e8,
                0.0005);
        double[] read = {35.6, 28.9, 35.6};
        double[] computed = {36.06, 27.87, 36.06};
        for (int row = 0; row < 3; row++) {
            LADDER.equal(
                    "Three rows, 3 mm plates, share of row " + (row + 1) + " (%)",
                    read[row],
                    percent(3, 6.35)[row],
                    0.051);
            APART.equal(
                    "Three rows, 2 mm plates, share of row " + (row + 1) + " (%)",
                    computed[row],
                    percent(2, 6)[row],
                    0.01);
        }
    }

    @Test
    void rigidFastenersLeaveTheMiddleRowNothingAndSoftOnesShareEvenly() {
        Plate plate = new Plate(3 * MM, 72e9);
        assertArrayEquals(
                new double[] {0.5, 0, 0.5},
                FastenerRow.even(plate, plate, 3, 25 * MM, 25 * MM, 1e-16).shares(),
                1e-6);
        assertArrayEquals(
                new double[] {0.25, 0.25, 0.25, 0.25},
                FastenerRow.even(plate, plate, 4, 25 * MM, 25 * MM, 1e-2).shares(),
                1e-6);
    }

    @Test
    void theEndOfTheStifferPlateTakesMore() {
        double[] shares = FastenerRow.even(new Plate(6 * MM, 72e9), new Plate(2 * MM, 72e9), 3, 25 * MM, 25 * MM, 2e-8)
                .shares();
        // The thin plate stretches most where it carries all: at the last row, where it goes on.
        assertEquals(1, Arrays.stream(shares).sum(), 1e-12);
        assertEquals(true, shares[2] > shares[0]);
    }

    @Test
    void theJointStretchesByMaxwellAndBetti() {
        // Slip seen from either plate is the same.
        Plate one = new Plate(4 * MM, 72e9);
        Plate two = new Plate(2 * MM, 55e9);
        double[] pitch = {20 * MM, 30 * MM};
        double[] soft = {2e-8, 3e-8, 4e-8};
        double forward = new FastenerRow(one, two, pitch, 25 * MM, soft).jointFlexibility();
        double backward = new FastenerRow(
                        two, one, new double[] {30 * MM, 20 * MM}, 25 * MM, new double[] {4e-8, 3e-8, 2e-8})
                .jointFlexibility();
        assertEquals(forward, backward, 1e-12 * forward);
    }
}
