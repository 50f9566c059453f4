// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Place;

/** Sections of bars against published tube tables, closed forms and plain summation over small squares. */
class SectionsTest {
    private static final double MM = 1e-3;
    private static final double MM2 = 1e-6;
    private static final double MM4 = 1e-12;

    private static Amounts at(double... si) {
        return new Amounts(si, new Place[si.length], Place.of("here"));
    }

    @Test
    void steelTubesOfAStudentRuleTable() {
        // Formula SAE rules 2026, tube sizes B and C (transcription): 25.4 x 1.6 and 25.4 x 1.2 mm.
        double[] b = {25.4 * MM, 1.6 * MM};
        double[] c = {25.4 * MM, 1.2 * MM};
        assertEquals(8509, Sections.roundTube(at(b), b).across() / MM4, 0.5);
        assertEquals(6695, Sections.roundTube(at(c), c).across() / MM4, 0.5);
        assertEquals(91, Sections.roundTube(at(c), c).area() / MM2, 0.5);
    }

    @Test
    void aRoundTubeTwistsTwiceAsStiffAsItBends() {
        double[] s = {22 * MM, 1.6 * MM};
        Sections.Geometry tube = Sections.roundTube(at(s), s);
        assertEquals(2 * tube.across(), tube.torsion(), 1e-18);
        assertEquals(tube.across(), tube.in(), 0);
    }

    @Test
    void aThinSquareTubeTwistsAsBredtSays() {
        // Bredt 1896: 4 A² t / s, for a square of middle side a: a³ t.
        double[] s = {20 * MM, 20 * MM, 1.5 * MM};
        assertEquals(Math.pow(18.5, 3) * 1.5, Sections.squareTube(at(s), s).torsion() / MM4, 1e-6);
    }

    @Test
    void anAngleSummedOverSmallSquares() {
        double b = 30;
        double h = 20;
        double t = 2;
        double step = 0.02;
        double area = 0;
        double y = 0;
        double z = 0;
        double yy = 0;
        double zz = 0;
        for (double v = step / 2; v < h; v += step) {
            for (double u = step / 2; u < b; u += step) {
                if (v < t || u < t) {
                    area += step * step;
                    y += u * step * step;
                    z += v * step * step;
                    yy += u * u * step * step;
                    zz += v * v * step * step;
                }
            }
        }
        Sections.Geometry angle = Sections.angle(new double[] {b * MM, h * MM, t * MM});
        assertEquals(area, angle.area() / MM2, 1e-6);
        assertEquals(z / area, angle.depth() / MM, 1e-6);
        assertEquals(zz - z * z / area, angle.across() / MM4, 0.5);
        assertEquals(yy - y * y / area, angle.in() / MM4, 0.5);
    }

    @Test
    void aFlatStrip() {
        Sections.Geometry flat = Sections.flat(new double[] {30 * MM, 3 * MM});
        assertEquals(30 * 27 / 12.0, flat.across() / MM4, 1e-9);
        assertEquals(3 * 27000 / 12.0, flat.in() / MM4, 1e-9);
        assertEquals(1.5, flat.depth() / MM, 1e-12);
    }

    @Test
    void sizesReadAsTheyAreWritten() {
        assertEquals(
                "angle 25 × 25 × 1.6 mm",
                Sections.angle(new double[] {0.025, 0.025, 0.0016}).words());
    }
}
