// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.structure.BeamSection;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Columns, frames and narrow beams against closed forms of elastic stability (Timoshenko and Gere 1961; from memory). */
class BeamStabilityTest {
    private static final Ladder LADDER = Ladder.of(Family.BEAMS, "Timoshenko and Gere 1961", Mark.MEMORY_CONFIRMED);

    private static final double E = 200e9;
    private static final double G = 80e9;
    private static final double L = 2;
    private static final double I = 4e-8;
    private static final double[] NO_ARMS = new double[6];
    private static final double[] UP = {0, 0, 1};

    /** Slender in the x-z plane, ten times as stiff in the x-y plane. */
    private static BeamSection section(double shearArea) {
        return new BeamSection(E, G, 8000, 1e-3, I, 10 * I, 2 * I, shearArea, shearArea);
    }

    private static StabilityModel column(int elements, BeamSection section) {
        StabilityModel m = new StabilityModel(new double[64]);
        for (int i = 0; i <= elements; i++) {
            m.node(L * i / elements, 0, 0);
        }
        for (int i = 0; i < elements; i++) {
            m.beam(i, i + 1, NO_ARMS, UP, section);
        }
        return m;
    }

    @ParameterizedTest
    @CsvSource({"pinned, 1", "cantilever, 0.25", "propped, 2.0457483", "clamped, 4"})
    void columnsBuckleAtEulersLoad(String ends, double factor) {
        // Propped: tan x = x, x = 4.4934095, (x/π)² = 2.04575.
        StabilityModel m = column(8, section(Double.POSITIVE_INFINITY));
        boolean clampedRoot = !ends.equals("pinned");
        m.hold(0, 0, 1, 2, 3);
        if (clampedRoot) {
            m.hold(0, 4, 5);
        }
        switch (ends) {
            case "cantilever" -> {}
            case "clamped" -> m.hold(8, 1, 2, 4, 5);
            default -> m.hold(8, 1, 2);
        }
        m.load(8, 0, -1);
        double exact = factor * Math.PI * Math.PI * E * I / (L * L);
        LADDER.within(1e-3, "Column, " + ends + ", load (N)", "8 beams", exact, m.buckling(1)[0]);
    }

    @Test
    void oneCubicElementGivesTwelveForPiSquaredAndFourGiveAlmostAll() {
        double[] expected = {12 / (Math.PI * Math.PI), 1.0075, 1.0005};
        for (int k = 0; k < 3; k++) {
            int n = 1 << k;
            StabilityModel m = column(n, section(Double.POSITIVE_INFINITY));
            m.hold(0, 0, 1, 2, 3);
            m.hold(n, 1, 2);
            m.load(n, 0, -1);
            double euler = Math.PI * Math.PI * E * I / (L * L);
            LADDER.within(
                    k == 0 ? 1e-9 : 1e-4,
                    "Pinned column, share of Euler's load",
                    n + " beams",
                    expected[k],
                    m.buckling(1)[0] / euler);
        }
    }

    @Test
    void shearFlexibilityLowersTheLoadAsEngesserSays() {
        double area = 1e-6;
        StabilityModel m = column(16, section(area));
        m.hold(0, 0, 1, 2, 3);
        m.hold(16, 1, 2);
        m.load(16, 0, -1);
        double euler = Math.PI * Math.PI * E * I / (L * L);
        double engesser = 1 / (1 / euler + 1 / (G * area));
        LADDER.within(1e-3, "Column soft in shear (N)", "16 beams", engesser, m.buckling(1)[0]);
    }

    @ParameterizedTest
    @CsvSource({"0.5", "1", "4"})
    void aPortalOnPinnedFeetSways(double stiffness) {
        // x tan x = 6 (I_b/L)/(I_c/h), P = x² E I_c/h², two equal loads on the column heads.
        double h = 1.5;
        StabilityModel m = new StabilityModel(new double[64]);
        int n = 6;
        for (int i = 0; i <= n; i++) {
            m.node(0, 0, h * i / n);
        }
        for (int i = 1; i <= n; i++) {
            m.node(L * i / n, 0, h);
        }
        for (int i = 1; i <= n; i++) {
            m.node(L, 0, h - h * i / n);
        }
        // Beams keep their length: the frame only bends.
        BeamSection post = new BeamSection(E, G, 0, 1, I, 10 * I, I, 1e9, 1e9);
        double beam = stiffness * I * L / h;
        BeamSection girder = new BeamSection(E, G, 0, 1, beam, 10 * beam, beam, 1e9, 1e9);
        double[] back = {1, 0, 0.1};
        for (int i = 0; i < 3 * n; i++) {
            boolean across = i >= n && i < 2 * n;
            m.beam(i, i + 1, NO_ARMS, across ? UP : back, across ? girder : post);
        }
        for (int i = 0; i <= 3 * n; i++) {
            m.hold(i, 1, 3, 5);
        }
        m.hold(0, 0, 2);
        m.hold(3 * n, 0, 2);
        m.load(n, 2, -1);
        m.load(2 * n, 2, -1);
        double right = 6 * stiffness;
        double low = 0;
        double high = Math.PI / 2;
        for (int k = 0; k < 80; k++) {
            double x = 0.5 * (low + high);
            if (x * Math.tan(x) < right) {
                low = x;
            } else {
                high = x;
            }
        }
        LADDER.within(
                1e-4,
                "Portal on pinned feet, girder " + stiffness + " as stiff, sway (N)",
                "18 beams",
                low * low * E * I / (h * h),
                m.buckling(1)[0]);
    }

    @Test
    void aNarrowCantileverTipsOverSideways() {
        // Dead load at the tip's centroid: P = 4.0126 √(E I_z G J)/L², I_y large.
        BeamSection narrow = new BeamSection(E, G, 0, 1e-3, 1e4 * I, I, I / 2, 1e9, 1e9);
        int n = 16;
        StabilityModel m = column(n, narrow);
        m.hold(0, 0, 1, 2, 3, 4, 5);
        m.load(n, 2, -1);
        double exact = 4.0126 * Math.sqrt(E * I * G * I / 2) / (L * L);
        LADDER.within(2e-3, "Narrow cantilever tipping over (N)", "16 beams", exact, m.buckling(1)[0]);
    }

    @Test
    void aNarrowBeamUnderEndMomentsTipsOverSideways() {
        // Ends held against twist and sideways movement, free to turn: M = (π/L) √(E I_z G J).
        BeamSection narrow = new BeamSection(E, G, 0, 1e-3, 1e4 * I, I, I / 2, 1e9, 1e9);
        int n = 16;
        StabilityModel m = column(n, narrow);
        m.hold(0, 0, 1, 2, 3);
        m.hold(n, 1, 2, 3);
        m.load(0, 4, 1);
        m.load(n, 4, -1);
        double exact = Math.PI / L * Math.sqrt(E * I * G * I / 2);
        LADDER.within(2e-3, "Narrow beam under end moments (N·m)", "16 beams", exact, m.buckling(1)[0]);
    }

    @Test
    void anOpenColumnTwistsBeforeItBends() {
        // P = G J A/I_p without warping stiffness; one end held against twist, bending out of reach.
        BeamSection open = new BeamSection(E, G, 0, 1e-3, 1e3 * I, 1e3 * I, I / 100, 1e9, 1e9);
        int n = 4;
        StabilityModel m = column(n, open);
        m.hold(0, 0, 1, 2, 3, 4, 5);
        m.load(n, 0, -1);
        LADDER.within(1e-9, "Open column twisting (N)", "4 beams", G * I / 100 * 1e-3 / (2e3 * I), m.buckling(1)[0]);
    }
}
