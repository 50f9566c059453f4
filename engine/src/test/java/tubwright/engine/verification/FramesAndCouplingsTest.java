// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tubwright.engine.structure.Beam;
import tubwright.engine.structure.BeamSection;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Frames of two-node beams, exact at their nodes, against the closed forms of statics; arms move beams rigidly. */
class FramesAndCouplingsTest {
    private static final double E = 200e9;
    private static final double G = 80e9;
    private static final double[] NO_ARMS = new double[6];
    private static final Ladder LADDER = Ladder.of(Family.BEAMS, "Statics of frames, closed form", Mark.EXACT);

    /** Length-keeping, shear-stiff section with one second moment. */
    private static BeamSection section(double inertia) {
        return new BeamSection(E, G, 0, 1e3, inertia, inertia, 2 * inertia, 1e6, 1e6);
    }

    private static FrameModel chain(double[][] points) {
        FrameModel m = new FrameModel();
        for (double[] p : points) {
            m.node(p[0], p[1], p[2]);
        }
        return m;
    }

    @Test
    void aBuiltInBeamUnderItsWeight() {
        // w = qL⁴/384EI + qL²/8kGA; M = qL²/12
        BeamSection s = BeamSection.rectangle(E, G, 8000, .06, .1);
        double l = 2;
        FrameModel m = new FrameModel();
        for (int i = 0; i <= 8; i++) {
            m.node(l * i / 8, 0, 0);
        }
        double q = 8000 * s.area() * 9.81;
        for (int i = 0; i < 8; i++) {
            double[] x = {l * i / 8, 0, 0, l * (i + 1) / 8, 0, 0};
            Beam b = new Beam(x, NO_ARMS, new double[] {0, 0, 1}, s);
            m.beam(i, i + 1, b);
            double[] f = new double[12];
            b.weight(new double[] {0, 0, -9.81}, f);
            for (int k = 0; k < 12; k++) {
                m.load(k < 6 ? i : i + 1, k % 6, f[k]);
            }
        }
        m.hold(0, 0, 1, 2, 3, 4, 5);
        m.hold(8, 0, 1, 2, 3, 4, 5);
        m.solve();
        double w = q * Math.pow(l, 4) / (384 * E * s.inertiaY()) + q * l * l / (8 * G * s.shearAreaZ());
        LADDER.within(1e-9, "Built-in beam under its weight, middle (m)", "8 beams", w, -m.at(4, 2));
    }

    @Test
    void aPortalOnPinnedFeet() {
        // Δ = H h²/(12E) (2h/Ic + L/Ib)
        double h = 3;
        double l = 4;
        BeamSection post = section(2e-5);
        BeamSection girder = section(5e-5);
        FrameModel m = chain(new double[][] {{0, 0, 0}, {0, 0, h}, {l, 0, h}, {l, 0, 0}});
        double[] y = {0, 1, 0};
        m.beam(0, 1, new Beam(new double[] {0, 0, 0, 0, 0, h}, NO_ARMS, y, post));
        m.beam(1, 2, new Beam(new double[] {0, 0, h, l, 0, h}, NO_ARMS, y, girder));
        m.beam(2, 3, new Beam(new double[] {l, 0, h, l, 0, 0}, NO_ARMS, y, post));
        m.plane();
        m.hold(0, 0, 2);
        m.hold(3, 0, 2);
        m.load(1, 0, 500);
        m.load(2, 0, 500);
        m.solve();
        double exact = 1000 * h * h / (12 * E) * (2 * h / 2e-5 + l / 5e-5);
        LADDER.within(1e-6, "Portal on pinned feet, sway (m)", "3 beams", exact, m.at(1, 0));
    }

    @Test
    void aPortalOnBuiltInFeet() {
        // k = (Ib/L)/(Ic/h); M_base = (Hh/2)(3k + 1)/(6k + 1)
        double h = 3;
        double l = 4;
        BeamSection post = section(2e-5);
        BeamSection girder = section(5e-5);
        FrameModel m = chain(new double[][] {{0, 0, 0}, {0, 0, h}, {l, 0, h}, {l, 0, 0}});
        double[] y = {0, 1, 0};
        Beam left = new Beam(new double[] {0, 0, 0, 0, 0, h}, NO_ARMS, y, post);
        m.beam(0, 1, left);
        m.beam(1, 2, new Beam(new double[] {0, 0, h, l, 0, h}, NO_ARMS, y, girder));
        m.beam(2, 3, new Beam(new double[] {l, 0, h, l, 0, 0}, NO_ARMS, y, post));
        m.plane();
        m.hold(0, 0, 2, 4);
        m.hold(3, 0, 2, 4);
        m.load(1, 0, 500);
        m.load(2, 0, 500);
        m.solve();
        double k = 5e-5 / l / (2e-5 / h);
        double[] f = left.endForces(m.of(0, 1));
        LADDER.within(
                1e-6,
                "Portal on built-in feet, moment at the foot (N·m)",
                "3 beams",
                500 * h * (3 * k + 1) / (6 * k + 1),
                Math.hypot(f[4], f[5]));
        LADDER.within(
                1e-6,
                "Portal on built-in feet, moment at the corner (N·m)",
                "3 beams",
                500 * h * 3 * k / (6 * k + 1),
                Math.hypot(f[10], f[11]));
    }

    @Test
    void aBracketBendsAndTwists() {
        // w = P a³/3EI + P b³/3EI + P a² b/GJ
        double a = .7;
        double b = 1.1;
        BeamSection s = section(3e-6);
        FrameModel m = chain(new double[][] {{0, 0, 0}, {b, 0, 0}, {b, a, 0}});
        double[] up = {0, 0, 1};
        m.beam(0, 1, new Beam(new double[] {0, 0, 0, b, 0, 0}, NO_ARMS, up, s));
        m.beam(1, 2, new Beam(new double[] {b, 0, 0, b, a, 0}, NO_ARMS, up, s));
        m.hold(0, 0, 1, 2, 3, 4, 5);
        m.load(2, 2, 100);
        m.solve();
        double exact = 100 * (a * a * a + b * b * b) / (3 * E * 3e-6) + 100 * a * a * b / (G * 6e-6);
        LADDER.within(1e-6, "Bracket out of its plane (m)", "2 beams", exact, m.at(2, 2));
    }

    @ParameterizedTest
    @ValueSource(ints = {8, 16, 32})
    void aQuarterArc(int n) {
        // Out of plane at the tip: PR³ [π/4EI + (3π/4 − 2)/GJ]; a polygon of n beams.
        double r = 1.5;
        BeamSection s = section(3e-6);
        FrameModel m = new FrameModel();
        for (int i = 0; i <= n; i++) {
            m.node(r * Math.cos(Math.PI / 2 * i / n), r * Math.sin(Math.PI / 2 * i / n), 0);
        }
        for (int i = 0; i < n; i++) {
            double[] x = new double[6];
            System.arraycopy(m.position(i), 0, x, 0, 3);
            System.arraycopy(m.position(i + 1), 0, x, 3, 3);
            m.beam(i, i + 1, new Beam(x, NO_ARMS, new double[] {0, 0, 1}, s));
        }
        m.hold(0, 0, 1, 2, 3, 4, 5);
        m.load(n, 2, 100);
        m.solve();
        double exact = 100 * r * r * r * (Math.PI / (4 * E * 3e-6) + (3 * Math.PI / 4 - 2) / (G * 6e-6));
        LADDER.within(.45 / n / n, "Quarter arc out of its plane (m)", n + " beams", exact, m.at(n, 2));
    }
}
