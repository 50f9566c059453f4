// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.structure.BeamSection;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Natural modes of beams, rings and frames against closed forms and the NAFEMS set of 1987 (FV2, FV4, FV5, FV6). */
class BeamModesTest {
    private static final Ladder EULER =
            Ladder.of(Family.BEAMS, "Euler and Bernoulli beams, roots of the frequency equation", Mark.EXACT);
    private static final Ladder RODS =
            Ladder.of(Family.BEAMS, "(2n − 1) c/4L, with the (kh)²/24 of two-node elements", Mark.EXACT);
    private static final Ladder FV6 = Ladder.of(Family.BEAMS, "NAFEMS FV6, ring", Mark.MEMORY_CONFIRMED);
    private static final Ladder FV5 = Ladder.of(Family.BEAMS, "NAFEMS FV5, deep beam", Mark.MEMORY);
    private static final Ladder FV2 = Ladder.of(Family.BEAMS, "NAFEMS FV2, double cross", Mark.MEMORY_CONFIRMED);
    private static final Ladder FV4 =
            Ladder.of(Family.BEAMS, "NAFEMS FV4, cantilever with masses on arms", Mark.MEMORY);

    private static final double E = 200e9;
    private static final double NU = 0.3;
    private static final double G = E / (2 * (1 + NU));
    private static final double RHO = 8000;
    private static final double[] NO_ARMS = new double[6];
    private static final double[] UP = {0, 0, 1};
    private static final double INF = Double.POSITIVE_INFINITY;

    private static StabilityModel bar(int n, double length, BeamSection section) {
        StabilityModel m = new StabilityModel(new double[64]);
        for (int i = 0; i <= n; i++) {
            m.node(length * i / n, 0, 0);
        }
        for (int i = 0; i < n; i++) {
            m.beam(i, i + 1, NO_ARMS, UP, section);
        }
        return m;
    }

    @ParameterizedTest
    @CsvSource({
        "supported, 3.141592654, 6.283185307, 9.424777961",
        "cantilever, 1.875104069, 4.694091133, 7.854757438",
        "clamped, 4.730040745, 7.853204624, 10.99560784",
        "free, 4.730040745, 7.853204624, 10.99560784"
    })
    void slenderBeamsVibrateAsEulerAndBernoulliSay(String ends, double b1, double b2, double b3) {
        double i = 1e-9;
        double area = 1e-4;
        // Only the x-z plane; rotary inertia is I/(A L²) = 1e-5 of translation.
        BeamSection s = new BeamSection(E, G, RHO, area, i, i, i, INF, INF);
        StabilityModel m = bar(24, 1, s);
        for (int k = 0; k <= 24; k++) {
            m.hold(k, 0, 1, 3, 5);
        }
        switch (ends) {
            case "supported" -> {
                m.hold(0, 2);
                m.hold(24, 2);
            }
            case "cantilever" -> m.hold(0, 2, 4);
            case "clamped" -> {
                m.hold(0, 2, 4);
                m.hold(24, 2, 4);
            }
            default -> {}
        }
        boolean free = ends.equals("free");
        double[] w = free ? m.frequencies(5, -1e3) : m.frequencies(3);
        double[] exact = {b1, b2, b3};
        for (int k = 0; k < 3; k++) {
            double reference = exact[k] * exact[k] * Math.sqrt(E * i / (RHO * area));
            EULER.within(
                    1e-3,
                    "Slender beam, " + ends + ", ω" + (k + 1) + " (1/s)",
                    "24 beams",
                    reference,
                    w[k + (free ? 2 : 0)]);
        }
    }

    @Test
    void rodsAndShaftsSoundAtOddQuarterWaves() {
        // (2n - 1) c/4L; two-node elements are high by (kh)²/24.
        BeamSection s = new BeamSection(E, G, RHO, 1e-4, 1e-9, 1e-9, 2e-9, INF, INF);
        for (int freedom : new int[] {0, 3}) {
            StabilityModel m = bar(40, 1, s);
            for (int k = 0; k <= 40; k++) {
                for (int f = 0; f < 6; f++) {
                    if (f != freedom || k == 0) {
                        m.hold(k, f);
                    }
                }
            }
            double c = Math.sqrt((freedom == 0 ? E : G) / RHO);
            double[] w = m.frequencies(3);
            for (int k = 0; k < 3; k++) {
                double exact = (2 * k + 1) * Math.PI / 2 * c;
                double h = (2 * k + 1) * Math.PI / 2 / 40;
                RODS.within(
                        1e-5,
                        (freedom == 0 ? "Rod" : "Shaft") + ", ω" + (k + 1) + " (1/s)",
                        "40 beams",
                        exact * (1 + h * h / 24),
                        w[k]);
            }
        }
    }

    @Test
    void aRingVibratesInAndOutOfItsPlane() {
        // NAFEMS FV6 (from memory, confirmed by the closed forms): 51.849 Hz out of plane, 53.382 Hz in plane.
        double d = 0.1;
        double area = Math.PI * d * d / 4;
        double i = Math.PI * Math.pow(d, 4) / 64;
        BeamSection s = new BeamSection(E, G, RHO, area, i, i, 2 * i, INF, INF);
        int n = 60;
        StabilityModel m = new StabilityModel(new double[64]);
        for (int k = 0; k < n; k++) {
            m.node(Math.cos(2 * Math.PI * k / n), Math.sin(2 * Math.PI * k / n), 0);
        }
        for (int k = 0; k < n; k++) {
            m.beam(k, (k + 1) % n, NO_ARMS, UP, s);
        }
        double[] w = m.frequencies(10, -1e3);
        double root = Math.sqrt(E * i / (RHO * area));
        double out = 6 / Math.sqrt(5 + NU) * root / (2 * Math.PI);
        double in = 6 / Math.sqrt(5) * root / (2 * Math.PI);
        assertEquals(51.849, out, 0.02);
        assertEquals(53.382, in, 0.02);
        for (int k = 0; k < 2; k++) {
            FV6.within(4e-3, "Ring out of its plane, " + (k + 1) + " (Hz)", "60 beams", out, w[6 + k] / (2 * Math.PI));
            FV6.within(4e-3, "Ring in its plane, " + (k + 1) + " (Hz)", "60 beams", in, w[8 + k] / (2 * Math.PI));
        }
        assertTrue(w[5] < 1e-2 * w[6]);
    }

    @Test
    void theDeepBeamOfNafemsFv5() {
        // From memory; torsion (with I_p for J) and stretching confirmed by closed forms. 42.649 twice, 77.542, 125.00,
        // 148.31 twice, 233.10, 284.55 twice.
        double area = 4;
        double i = 16.0 / 12;
        BeamSection s = new BeamSection(E, G, RHO, area, i, i, 2 * i, area * 5 / 6, area * 5 / 6);
        StabilityModel m = bar(20, 10, s);
        m.hold(0, 0, 1, 2, 3);
        m.hold(20, 1, 2);
        double[] expected = {42.649, 42.649, 77.542, 125.00, 148.31, 148.31, 233.10, 284.55, 284.55};
        double[] w = m.frequencies(9);
        for (int k = 0; k < 9; k++) {
            FV5.within(.01, "Deep beam, mode " + (k + 1) + " (Hz)", "20 beams", expected[k], w[k] / (2 * Math.PI));
        }
    }

    @Test
    void theDoubleCrossOfNafemsFv2() {
        // From memory, confirmed: arms pinned at the rim, the hub turns (π, 2π) or not (3.9266, 7.0686).
        double a = 0.125;
        double area = a * a;
        double i = area * area / 12;
        BeamSection s = new BeamSection(E, G, RHO, area, i, i, 2 * i, INF, INF);
        StabilityModel m = new StabilityModel(new double[64]);
        int hub = m.node(0, 0, 0);
        int per = 8;
        for (int arm = 0; arm < 8; arm++) {
            double c = Math.cos(arm * Math.PI / 4);
            double n = Math.sin(arm * Math.PI / 4);
            int last = hub;
            for (int k = 1; k <= per; k++) {
                int next = m.node(5 * c * k / per, 5 * n * k / per, 0);
                m.beam(last, next, NO_ARMS, UP, s);
                last = next;
            }
            m.hold(last, 0, 1);
        }
        for (int k = 0; k < m.nodes.size(); k++) {
            m.hold(k, 2, 3, 4);
        }
        // The closed form knows no stretch of arms: left free, the hub lowers two of the last seven by 0.6 %.
        m.hold(hub, 0, 1);
        double[] w = m.frequencies(16);
        double unit = Math.sqrt(E * i / (RHO * area)) / (2 * Math.PI * 25);
        double[] roots = {Math.PI, 3.926602312, 2 * Math.PI, 7.068582746};
        double[] published = {11.336, 17.709, 45.345, 57.390};
        for (int k = 0; k < 4; k++) {
            assertEquals(published[k], roots[k] * roots[k] * unit, 0.005 * published[k]);
        }
        for (int k = 0; k < 16; k++) {
            double root = roots[k == 0 ? 0 : k < 8 ? 1 : k == 8 ? 2 : 3];
            FV2.within(
                    .002,
                    "Double cross, mode " + (k + 1) + " (Hz)",
                    "8 beams an arm",
                    root * root * unit,
                    w[k] / (2 * Math.PI));
        }
    }

    @Test
    void theCantileverWithMassesOnArmsOfNafemsFv4() {
        // From memory, of medium trust: 1.723, 1.727, 7.413, 9.972, 18.155, 26.957 Hz.
        double d = 0.5;
        double area = Math.PI * d * d / 4;
        double i = Math.PI * Math.pow(d, 4) / 64;
        BeamSection s = new BeamSection(E, G, RHO, area, i, i, 2 * i, area / 1.1, area / 1.1);
        int n = 10;
        StabilityModel m = bar(n, 10, s);
        int heavy = m.node(10, 2, 0);
        int light = m.node(10, -2, 0);
        // Rigid arms: beams a thousand times as stiff, without mass.
        BeamSection arm = new BeamSection(1e3 * E, 1e3 * G, 0, area, i, i, 2 * i, INF, INF);
        m.beam(n, heavy, NO_ARMS, UP, arm);
        m.beam(n, light, NO_ARMS, UP, arm);
        m.pointMass(heavy, 10000);
        m.pointMass(light, 1000);
        m.hold(0, 0, 1, 2, 3, 4, 5);
        double[] expected = {1.723, 1.727, 7.413, 9.972, 18.155, 26.957};
        double[] w = m.frequencies(6);
        for (int k = 0; k < 6; k++) {
            FV4.within(.01, "Masses on arms, mode " + (k + 1) + " (Hz)", "10 beams", expected[k], w[k] / (2 * Math.PI));
        }
    }
}
