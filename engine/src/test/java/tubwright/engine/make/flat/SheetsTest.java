// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Notches, wedges and ramps of a rectangle, whose places and areas are known. */
class SheetsTest {
    private static final Distortion NONE = new Distortion(0, 0, 0, 0, 0, 0, 0);

    /** 400 by 300 mm with a hole of 50 by 50, a line from side to side at mid height, started at (100, 100). */
    private static FlatPattern sheet() {
        return new FlatPattern(
                "sheet",
                List.of(
                        new double[] {0, 0, 0.4, 0, 0.4, 0.3, 0, 0.3},
                        new double[] {0.2, 0.2, 0.25, 0.2, 0.25, 0.25, 0.2, 0.25}),
                List.of(new double[] {0, 0.15, 0.4, 0.15}),
                new double[] {0.1, 0.1},
                0,
                NONE,
                0);
    }

    @Test
    void notchesStandWhereLinesRunOutAndWhereTheWarpMeetsTheEdge() {
        List<double[]> notches = Notches.on(sheet()).marks(Mark.Kind.NOTCH);
        assertEquals(4, notches.size());
        assertArrayEquals(new double[] {0, 0.15, Notches.DEPTH, 0.15}, notches.get(0), 1e-12);
        assertArrayEquals(new double[] {0.4, 0.15, 0.4 - Notches.DEPTH, 0.15}, notches.get(1), 1e-12);
        assertArrayEquals(new double[] {0.4, 0.1, 0.4 - Notches.DEPTH, 0.1}, notches.get(2), 1e-12);
        assertArrayEquals(new double[] {0, 0.1, Notches.DEPTH, 0.1}, notches.get(3), 1e-12);
    }

    @Test
    void aNotchGoesIntoTheSheetAlsoFromAHole() {
        FlatPattern flat = sheet();
        FlatPattern toTheHole = new FlatPattern(
                "sheet", flat.outlines(), List.of(new double[] {0, 0.22, 0.2, 0.22}), flat.start(), 0, NONE, 0);
        List<double[]> notches = Notches.on(toTheHole).marks(Mark.Kind.NOTCH);
        assertArrayEquals(new double[] {0.2, 0.22, 0.2 - Notches.DEPTH, 0.22}, notches.get(1), 1e-12);
    }

    @Test
    void aWedgeTakesItsOwnAreaAndAWedgeThatPartsTheSheetIsNotCut() {
        FlatPattern flat = sheet();
        // A wedge 100 mm deep and 20 mm wide at the lower edge, drawn a little past it.
        FlatPattern cut = Sheets.without(flat, new double[] {0.3, 0.1, 0.312, -0.02, 0.288, -0.02});
        assertEquals(flat.area() - 0.1 * 0.02 / 2, cut.area(), 1e-9);
        assertEquals(2, cut.outlines().size());
        assertEquals(7, cut.outlines().getFirst().length / 2);
        assertSame(flat, Sheets.without(flat, new double[] {0.35, -1, 0.36, -1, 0.36, 1, 0.35, 1}));
    }

    /** Along all edges of the outer outline the ramp begins on a rectangle smaller by its width all round. */
    @Test
    void rampsRunAtTheirWidthFromTheEdgesNamed() {
        FlatPattern flat = sheet();
        double[] round = {0, 0, 0.4, 0, 0.4, 0.3, 0, 0.3, 0, 0};
        List<double[]> lines = Sheets.inwardOf(flat, List.of(round), 0.03);
        double length = 0;
        for (double[] line : lines) {
            for (int i = 0; i + 3 < line.length; i += 2) {
                length += Math.hypot(line[i + 2] - line[i], line[i + 3] - line[i + 1]);
            }
        }
        assertEquals(2 * (0.34 + 0.24), length, 1e-3);
        List<double[]> one = Sheets.inwardOf(flat, List.of(new double[] {0, 0, 0, 0.3}), 0.03);
        assertEquals(1, one.size());
        for (int i = 0; i < one.getFirst().length; i += 2) {
            assertEquals(0.03, one.getFirst()[i], 1e-6);
        }
    }

    @Test
    void whereAnOutlineCrossesItselfIsTold() {
        double[] bow = {0, 0, 0.2, 0.2, 0.2, 0, 0, 0.2};
        assertTrue(Outlines.crossesItself(bow));
        assertArrayEquals(new double[] {0.1, 0.1}, Outlines.crossing(bow), 1e-12);
        assertEquals(0, Outlines.crossing(sheet().outlines().getFirst()).length);
    }
}
