// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The series other tests measure shells against, at every entry of the tables they are known by: square laminated plates,
 * simply supported, first-order theory, shear factor 5/6 (Reddy, Mechanics of Laminated Composite Plates and Shells, ch. 5 to
 * 7; Reddy and Chao 1981; Reddy 1979; from memory, recomputed for the reference sheet). E2 = 1, h = 1, ρ = 1, ν12 = .25.
 */
class PublishedSeriesTest {
    private static final double[] SLENDERNESS = {4, 10, 20, 50, 100};

    private static double[] angles(String code) {
        return switch (code) {
            case "0" -> new double[] {0};
            case "0/90" -> new double[] {0, 90};
            case "0/90/0" -> new double[] {0, 90, 0};
            case "0/90/90/0" -> new double[] {0, 90, 90, 0};
            case "(0/90)4" -> new double[] {0, 90, 0, 90, 0, 90, 0, 90};
            case "45/-45" -> new double[] {45, -45};
            case "(45/-45)4" -> new double[] {45, -45, 45, -45, 45, -45, 45, -45};
            default -> throw new IllegalArgumentException(code);
        };
    }

    private static Navier plate(String code, double e1, double g12, double g23, double a) {
        double[] angles = angles(code);
        double[] c = Laminates.stack(e1, 1, 0.25, g12, g23, 1.0 / angles.length, 0, angles);
        return new Navier(c, a, a, code.contains("45"));
    }

    /** 100 w E2 h³/(q a⁴) at the middle, sinusoidal and uniform pressure, at a/h = 4, 10, 20, 50, 100; E1/E2 = 25. */
    @ParameterizedTest
    @CsvSource({
        "0, 1.6616 .6383 .4836 .4396 .4333, 2.4373 .9520 .7262 .6620 .6528",
        "0/90, 2.1492 1.2373 1.1070 1.0705 1.0653, 3.2709 1.9469 1.7582 1.7055 1.6980",
        "0/90/0, 1.7758 .6693 .4921 .4411 .4337, 2.6595 1.0219 .7572 .6807 .6697",
        "0/90/90/0, 1.7095 .6627 .4912 .4409 .4337, 2.5673 1.0250 .7694 .6942 .6833",
        "(0/90)4, 1.5335 .6216 .4913 .4548 .4496, 2.2903 .9661 .7777 .7251 .7175",
        "45/-45, 1.7403 .8284 .6981 .6617 .6564, 2.6034 1.2792 1.0907 1.0381 1.0305",
        "(45/-45)4, 1.3317 .4198 .2896 .2531 .2479, 1.9614 .6367 .4483 .3958 .3883"
    })
    void deflectionsAreThoseOfTheTable(String code, String wave, String uniform) {
        for (int i = 0; i < SLENDERNESS.length; i++) {
            double a = SLENDERNESS[i];
            Navier plate = plate(code, 25, 0.5, 0.2, a);
            double scale = 100 / Math.pow(a, 4);
            String place = code + ", a/h = " + a;
            assertEquals(Double.parseDouble(wave.split(" ")[i]), scale / plate.condensed(1, 1), 6e-5, place);
            double even = scale * plate.uniformDeflection(1, 199);
            assertEquals(Double.parseDouble(uniform.split(" ")[i]), even, 6e-5, place + ", uniform");
        }
    }

    /** N a²/(E2 h³), compressed along x and both ways alike; E1/E2 = 40. */
    @ParameterizedTest
    @CsvSource({
        "0/90, 5, 8.2773, 4.1386",
        "0/90, 10, 11.3526, 5.6763",
        "0/90, 20, 12.5151, 6.2575",
        "0/90, 100, 12.9390, 6.4695",
        "0/90/0, 5, 10.9839, 5.4920",
        "0/90/0, 10, 22.3151, 10.2024",
        "0/90/0, 20, 31.1959, 13.1472",
        "0/90/0, 100, 35.9290, 14.6328",
        "0/90/90/0, 10, 23.4529, 11.7264",
        "0/90/90/0, 20, 31.7071, 15.8535",
        "0/90/90/0, 100, 35.9550, 17.9775",
        "45/-45, 5, 9.3853, 5.5741",
        "45/-45, 10, 17.5522, 8.7761",
        "45/-45, 20, 20.4955, 10.2477",
        "45/-45, 100, 21.6576, 10.8288",
        "(45/-45)4, 10, 32.9720, 18.9616",
        "(45/-45)4, 20, 54.9834, 27.4917",
        "(45/-45)4, 100, 64.2297, 32.1148"
    })
    void bucklingLoadsAreThoseOfTheTable(String code, double a, double uniaxial, double biaxial) {
        Navier plate = plate(code, 40, 0.6, 0.5, a);
        assertEquals(uniaxial, a * a * plate.buckling(0), 6e-5);
        assertEquals(biaxial, a * a * plate.buckling(1), 6e-5);
    }

    /**
     * Thick plates give way in shear with waves as short as one likes; the tables stop at a pair of half waves, which is
     * asked for here.
     */
    @ParameterizedTest
    @CsvSource({
        "0/90/90/0, 5, 1, 0, 11.5632",
        "0/90/90/0, 1, 1, 1, 6.0731",
        "(45/-45)4, 4, 1, 0, 11.3225",
        "(45/-45)4, 1, 1, 1, 8.4608"
    })
    void thickPlatesWithTheWavesOfTheTable(String code, int m, int n, double ratio, double table) {
        double a = 5;
        double p = m * Math.PI / a;
        double q = n * Math.PI / a;
        double load = plate(code, 40, 0.6, 0.5, a).condensed(m, n) / (p * p + ratio * q * q);
        assertEquals(table, a * a * load, 6e-5);
    }

    /**
     * 10³ w E2 h³/(q a⁴) of cross-ply panels, curved both ways or (inf) along x only, sinusoidal and uniform pressure;
     * first-order theory after Sanders (Reddy 1984, J. Eng. Mech. 110:794), E1/E2 = 25.
     */
    @ParameterizedTest
    @CsvSource({
        "0/90, 100, 1, 1, .0536, .0718",
        "0/90, 100, 2, 2, .2111, .2855",
        "0/90, 100, 5, 5, 1.1948, 1.7535",
        "0/90, 100, 10, 10, 3.5760, 5.5428",
        "0/90, 100, inf, inf, 10.653, 16.980",
        "0/90/0, 100, 5, 5, 1.0337, 1.5118",
        "0/90/0, 100, 10, 10, 2.4109, 3.6445",
        "0/90, 10, 5, 5, 11.428, 17.944",
        "0/90/0, 10, 5, 5, 6.4245, 9.7930",
        "0/90, 100, inf, 5, 3.5811, 5.5631"
    })
    void curvedPanelsDeflectAsTheTableSays(
            String code, double a, String alongX, String alongY, String wave, String uniform) {
        Navier flat = plate(code, 25, 0.5, 0.2, a);
        Navier panel = flat.curved(curvature(alongX, a), curvature(alongY, a));
        double scale = 1000 / Math.pow(a, 4);
        assertEquals(Double.parseDouble(wave), scale / panel.condensed(1, 1), half(wave));
        assertEquals(Double.parseDouble(uniform), scale * panel.uniformDeflection(1, 199), half(uniform));
    }

    private static double curvature(String radiusOverSide, double a) {
        return radiusOverSide.equals("inf") ? 0 : 1 / (Double.parseDouble(radiusOverSide) * a);
    }

    /** A little over half a unit of the last digit. */
    private static double half(String printed) {
        return 0.6 * Math.pow(10, printed.indexOf('.') + 1 - printed.length());
    }

    /** ω a²/h √(ρ/E2) with rotary inertia at a/h = 5, 10, 20, 100; E1/E2 = 40. */
    @ParameterizedTest
    @CsvSource({
        "0/90, 8.8333 10.4731 11.0779 11.2990",
        "0/90/0, 10.2895 14.7662 17.5164 18.8294",
        "0/90/90/0, 10.8540 15.1426 17.6596 18.8362",
        "(0/90)4, 11.6079 15.6923 17.6587 18.4721",
        "45/-45, 10.3353 13.0439 14.1790 14.6183",
        "(45/-45)4, 12.8925 19.2895 23.2591 25.1757"
    })
    void frequenciesAreThoseOfTheTable(String code, String table) {
        double[] slenderness = {5, 10, 20, 100};
        for (int i = 0; i < slenderness.length; i++) {
            double a = slenderness[i];
            double found = a * a * plate(code, 40, 0.6, 0.5, a).frequency(1, 1, 1, 1.0 / 12);
            assertEquals(Double.parseDouble(table.split(" ")[i]), found, 6e-5, code + ", a/h = " + a);
        }
    }
}
