// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** Plates 20 000 times wider than thick: no trace of shear locking may show. Quarter models. */
class ThinPlateTest {
    /** Navier's double series, centre deflection of the simply supported plate 2 × b of MacNeal and Harder. */
    static double navier(double b, boolean point) {
        double d = 1.6e-6;
        double a = 2;
        double sum = 0;
        for (int m = 1; m < 800; m += 2) {
            for (int n = 1; n < 800; n += 2) {
                double k = m * m / (a * a) + n * n / (b * b);
                double sign = (m + n) / 2 % 2 == 1 ? 1 : -1;
                double pi4 = Math.pow(Math.PI, 4);
                sum += point
                        ? 4 * 4e-4 / (a * b * pi4 * d * k * k)
                        : 16 * 1e-4 * sign / (Math.pow(Math.PI, 6) * m * n * d * k * k);
            }
        }
        return sum;
    }

    @Test
    void simplySupportedUnderPressure() {
        assertEquals(1, ObstacleCourse.plate(Kind.QUADS, 8, 2, false, false) / navier(2, false), .005);
        assertEquals(1, ObstacleCourse.plate(Kind.QUADS, 8, 10, false, false) / navier(10, false), .01);
        assertEquals(1, ObstacleCourse.plate(Kind.TRIANGLES, 8, 2, false, false) / navier(2, false), .015);
        assertEquals(1, ObstacleCourse.plate(Kind.TRIANGLES, 8, 10, false, false) / navier(10, false), .01);
    }

    @Test
    void simplySupportedUnderAPointForce() {
        assertEquals(1, ObstacleCourse.plate(Kind.QUADS, 8, 2, false, true) / navier(2, true), .005);
        assertEquals(1, ObstacleCourse.plate(Kind.QUADS, 8, 10, false, true) / navier(10, true), .03);
        assertEquals(1, ObstacleCourse.plate(Kind.TRIANGLES, 8, 2, false, true) / navier(2, true), .025);
    }

    @Test
    void clamped() {
        // .00126532 qa⁴/D and .0056120 Pa²/D (Timoshenko and Woinowsky-Krieger 1959; Taylor and Govindjee 2004), from
        // memory
        assertEquals(1, ObstacleCourse.plate(Kind.QUADS, 8, 2, true, false) / (.00126532 * 1e-4 * 16 / 1.6e-6), .005);
        assertEquals(1, ObstacleCourse.plate(Kind.QUADS, 8, 2, true, true) / (.0056120 * 4e-4 * 4 / 1.6e-6), .015);
        assertEquals(
                1, ObstacleCourse.plate(Kind.TRIANGLES, 8, 2, true, false) / (.00126532 * 1e-4 * 16 / 1.6e-6), .015);
    }
}
