// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Square laminated plates, simply supported: deflection, buckling and frequencies against Navier's series of first-order
 * theory with shear factor 5/6, and the series against the tables of Reddy (Mechanics of Laminated Composite Plates and
 * Shells, ch. 5 to 7; Reddy and Chao 1981; from memory, recomputed here). E2 = 1, h = 1, ρ = 1.
 */
class LaminatedPlateStabilityTest {
    private static final Ladder TABLE = Ladder.of(
            Family.LAMINATED_PLATES,
            "Reddy, ch. 5 to 7; Reddy and Chao 1981, against the series",
            Mark.MEMORY_CONFIRMED);
    private static final Ladder SERIES =
            Ladder.of(Family.LAMINATED_PLATES, "Navier's series of first-order theory, summed in the test", Mark.EXACT);

    private static final double ROTARY = 1.0 / 12;

    /** E1/E2 = 40, G12 = G13 = 0.6, G23 = 0.5. */
    private static double[] stability(double[] angles) {
        return Laminates.stack(40, 1, 0.25, 0.6, 0.5, 1.0 / angles.length, 0, angles);
    }

    /** E1/E2 = 25, G12 = G13 = 0.5, G23 = 0.2. */
    private static double[] bending(double[] angles) {
        return Laminates.stack(25, 1, 0.25, 0.5, 0.2, 1.0 / angles.length, 0, angles);
    }

    private static double[] angles(String code) {
        return switch (code) {
            case "0" -> new double[] {0};
            case "0/90" -> new double[] {0, 90};
            case "0/90/0" -> new double[] {0, 90, 0};
            case "0/90/90/0" -> new double[] {0, 90, 90, 0};
            case "(0/90)4" -> new double[] {0, 90, 0, 90, 0, 90, 0, 90};
            case "-45/45" -> new double[] {-45, 45};
            default -> new double[] {-45, 45, -45, 45, -45, 45, -45, 45};
        };
    }

    private static boolean angled(String code) {
        return code.contains("45");
    }

    @ParameterizedTest
    @CsvSource({
        "0/90, 5, 8.2773, 4.1386, 8.8333",
        "0/90, 10, 11.3526, 5.6763, 10.4731",
        "0/90, 100, 12.9390, 6.4695, 11.2990",
        "0/90/0, 10, 22.3151, 10.2024, 14.7662",
        "0/90/0, 20, 31.1959, 13.1472, 17.5164",
        "0/90/90/0, 20, 31.7071, 15.8535, 17.6596",
        "0/90/90/0, 10, 23.4529, 11.7264, 15.1426",
        "-45/45, 5, 9.3853, 5.5741, 10.3353",
        "-45/45, 10, 17.5522, 8.7761, 13.0439",
        "(-45/45)4, 10, 32.9720, 18.9616, 19.2895",
        "(-45/45)4, 100, 64.2297, 32.1148, 25.1757"
    })
    void theSeriesGivesReddysTables(String code, double a, double uniaxial, double biaxial, double frequency) {
        Navier navier = new Navier(stability(angles(code)), a, a, angled(code));
        String name = "[" + code + "], a/h = " + a;
        TABLE.equal(name + ", uniaxial buckling by the series", uniaxial, navier.buckling(0) * a * a, 1e-4);
        TABLE.equal(name + ", biaxial buckling by the series", biaxial, navier.buckling(1) * a * a, 1e-4);
        TABLE.equal(name + ", frequency by the series", frequency, navier.frequency(1, 1, 1, ROTARY) * a * a, 1e-4);
    }

    @Test
    void aThickPlateGivesWayInShearWithWavesAsShortAsOneLikes() {
        // Tables of [0/90/90/0] at a/h = 5 stop at five half waves, 11.5632; the limit of short waves is the shear
        // stiffness K55 a² = 11.4583.
        double[] c = stability(angles("0/90/90/0"));
        Navier navier = new Navier(c, 5, 5, false);
        double p = 5 * Math.PI / 5;
        assertEquals(11.5632, navier.condensed(5, 1) / (p * p) * 25, 1e-4);
        double limit = c[54] * 25;
        assertEquals(11.4583, limit, 1e-4);
        assertTrue(navier.buckling(0) * 25 < 11.5632 && navier.buckling(0) * 25 > limit);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 4, 2.4373",
        "0, 10, .9520",
        "0/90, 10, 1.9469",
        "0/90/0, 10, 1.0219",
        "0/90/90/0, 20, .7694",
        "(0/90)4, 10, .9661",
        "-45/45, 10, 1.2792",
        "(-45/45)4, 100, .3883"
    })
    void platesUnderPressureBendAsReddysTablesSay(String code, double a, double table) {
        double[] c = bending(angles(code));
        double exact = 100 * new Navier(c, a, a, angled(code)).uniformDeflection(1, 199) / Math.pow(a, 4);
        assertEquals(table, exact, 2e-4);
        int n = 16;
        StabilityModel m = plate(ObstacleCourse.Kind.QUADS, c, a, n, angled(code));
        m.surfaceLoad(0, 0, 1);
        double w = m.solve().at(n / 2 * (n + 2), 2);
        SERIES.within(
                2e-3,
                "[" + code + "], a/h = " + a + ", deflection under pressure, E1/E2 = 25",
                "16 × 16 quads",
                exact,
                100 * w / Math.pow(a, 4));
    }

    private static StabilityModel plate(ObstacleCourse.Kind kind, double[] c, double a, int n, boolean angled) {
        StabilityModel m = Plates.flat(kind, c, a, a, n, n);
        m.inertia = new double[] {1, 0, ROTARY};
        if (angled) {
            Plates.angle(m, a, a);
        } else {
            Plates.cross(m, a, a);
        }
        return m;
    }

    @ParameterizedTest
    @CsvSource({
        "QUADS, 0/90/0, 5e-3",
        "QUADS, 0/90, 5e-3",
        "QUADS, 0/90/90/0, 5e-3",
        "QUADS, (-45/45)4, 5e-3",
        "QUADS, -45/45, 5e-3",
        "TRIANGLES, 0/90/0, 1e-2",
        "TRIANGLES, 0/90, 1.1e-2",
        "TRIANGLES, (-45/45)4, 1e-2"
    })
    void frequenciesConvergeQuadraticallyToTheSeries(ObstacleCourse.Kind kind, String code, double gate) {
        double a = 10;
        double[] c = stability(angles(code));
        double exact = new Navier(c, a, a, angled(code)).frequency(1, 1, 1, ROTARY);
        double[] w = new double[3];
        for (int k = 0; k < 3; k++) {
            w[k] = plate(kind, c, a, 4 << k, angled(code)).frequencies(1)[0];
        }
        Plates.Limit limit = Plates.Limit.of(w[0], w[1], w[2]);
        SERIES.converges(
                "[" + code + "], a/h = 10, frequency",
                ObstacleCourseTest.label(kind),
                new int[] {4, 8, 16},
                size -> w[Integer.numberOfTrailingZeros(size) - 2],
                exact,
                gate,
                1.8);
        assertEquals(2, limit.order(), kind == ObstacleCourse.Kind.QUADS ? 0.1 : 0.2);
        assertEquals(1, limit.value() / exact, 1.5e-3);
    }

    @ParameterizedTest
    @CsvSource({
        "QUADS, 0/90/0, 10, 0, 7e-3",
        "QUADS, 0/90, 10, 0, 7e-3",
        "QUADS, 0/90, 100, 0, 7e-3",
        "QUADS, 0/90/90/0, 10, 1, 7e-3",
        "QUADS, (-45/45)4, 10, 0, 7e-3",
        "QUADS, (-45/45)4, 10, 1, 7e-3",
        "QUADS, (-45/45)4, 100, 0, 7e-3",
        "QUADS, -45/45, 10, 0, 7e-3",
        "TRIANGLES, 0/90/0, 10, 0, 1e-2",
        "TRIANGLES, 0/90, 100, 0, 1.5e-2",
        "TRIANGLES, (-45/45)4, 100, 0, 1.5e-2"
    })
    void platesBuckleAtTheLoadsOfTheSeries(ObstacleCourse.Kind kind, String code, double a, double ratio, double gate) {
        double[] c = stability(angles(code));
        double exact = new Navier(c, a, a, angled(code)).buckling(ratio);
        double factor = plate(kind, c, a, 16, angled(code)).uniformBuckling(1, -1, -ratio, 0)[0];
        SERIES.within(
                gate,
                "[" + code + "], a/h = " + a + ", buckling, Ny/Nx = " + ratio,
                "16 × 16, " + ObstacleCourseTest.label(kind),
                exact,
                factor);
    }

    @ParameterizedTest
    @CsvSource({"QUADS", "TRIANGLES"})
    void theBucklingLoadConvergesQuadratically(ObstacleCourse.Kind kind) {
        double a = 10;
        double[] c = stability(angles("0/90/0"));
        double[] n = new double[3];
        for (int k = 0; k < 3; k++) {
            n[k] = plate(kind, c, a, 4 << k, false).uniformBuckling(1, -1, 0, 0)[0];
        }
        Plates.Limit limit = Plates.Limit.of(n[0], n[1], n[2]);
        SERIES.converges(
                "[0/90/0], a/h = 10, uniaxial buckling",
                ObstacleCourseTest.label(kind),
                new int[] {4, 8, 16},
                size -> n[Integer.numberOfTrailingZeros(size) - 2],
                new Navier(c, a, a, false).buckling(0),
                1e-2,
                1.88);
        assertEquals(2, limit.order(), 0.12);
        assertEquals(1, limit.value() / new Navier(c, a, a, false).buckling(0), 2e-3);
    }

    @ParameterizedTest
    @CsvSource({"0/90, 0.991", "-45/45, 0.993"})
    void theReferenceSurfaceOfAThickUnsymmetricPlateMovesInItsOwnPlaneAndThatCounts(String code, double share) {
        // The series with u,x and v,x beside w,x: 0.9 % and 0.7 % lower than with w,x alone. The elements go there.
        double a = 10;
        double[] c = stability(angles(code));
        Navier navier = new Navier(c, a, a, angled(code));
        double exact = navier.bucklingOfFullGradient(0);
        assertEquals(share, exact / navier.buckling(0), 1e-3);
        double[] n = new double[3];
        for (int k = 0; k < 3; k++) {
            n[k] = plate(ObstacleCourse.Kind.QUADS, c, a, 6 << k, angled(code)).uniformBuckling(1, -1, 0, 0)[0];
        }
        Plates.Limit limit = Plates.Limit.of(n[0], n[1], n[2]);
        assertEquals(1, limit.value() / exact, 1.5e-3);
    }
}
