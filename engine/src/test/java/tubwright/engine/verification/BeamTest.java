// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.structure.Beam;
import tubwright.engine.structure.BeamSection;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Beams against Timoshenko's closed forms. */
class BeamTest {
    private static final Ladder LADDER = Ladder.of(Family.BEAMS, "Timoshenko beam theory", Mark.EXACT);
    private static final Ladder BETA = Ladder.of(Family.BEAMS, "Timoshenko and Goodier 1970, table", Mark.MEMORY);

    private static final double E = 200e9;
    private static final double G = 77e9;
    private static final BeamSection BAR = BeamSection.rectangle(E, G, 8000, .06, .1);
    private static final double[] NO_ARMS = new double[6];
    private static final double[] UP = {0, 0, 1};

    @Test
    void aCantileverBendsShearsAndTwistsExactly() {
        double l = 1.3;
        Beam b = new Beam(new double[] {0, 0, 0, l, 0, 0}, NO_ARMS, UP, BAR);
        double[] k = new double[144];
        b.stiffness(k);
        double[] u = tip(k, new double[] {0, 0, 1000, 50, 0, 0});
        // w = PL³/3EI + PL/kGA, slope PL²/2EI, twist TL/GJ
        double ei = E * BAR.inertiaY();
        LADDER.within(
                1e-12,
                "Cantilever, tip deflection (m)",
                "1 beam",
                1000 * l * l * l / (3 * ei) + 1000 * l / (G * BAR.shearAreaZ()),
                u[2]);
        LADDER.within(1e-12, "Cantilever, tip slope (rad)", "1 beam", -1000 * l * l / (2 * ei), u[4]);
        LADDER.within(1e-12, "Cantilever, tip twist (rad)", "1 beam", 50 * l / (G * BAR.torsionConstant()), u[3]);
        double[] v = tip(k, new double[] {7, 300, 0, 0, 0, 0});
        assertEquals(300 * l * l * l / (3 * E * BAR.inertiaZ()) + 300 * l / (G * BAR.shearAreaY()), v[1], 1e-12 * v[1]);
        assertEquals(7 * l / (E * BAR.area()), v[0], 1e-12 * v[0]);
    }

    @Test
    void torsionConstantOfARectangleIsSaintVenants() {
        // β = 0.2287 at side ratio 2 and 0.1406 for a square: table in Timoshenko and Goodier (1970), from memory
        BETA.equal(
                "Torsion constant of a rectangle 2 : 1, β",
                .2287,
                BeamSection.rectangle(1, 1, 0, .2, .1).torsionConstant() / (.2 * .001),
                5e-5);
        BETA.equal(
                "Torsion constant of a square, β",
                .1406,
                BeamSection.rectangle(1, 1, 0, .1, .1).torsionConstant() / (.1 * .001),
                5e-5);
    }

    @Test
    void anArmMovesTheBeamRigidly() {
        double[] arms = {.02, -.05, .1, -.03, .04, .2};
        double[] nodes = {.1, .2, .3, 1.1, .6, -.2};
        double[] ends = nodes.clone();
        for (int i = 0; i < 6; i++) {
            ends[i] += arms[i];
        }
        double[] k = new double[144];
        double[] straight = new double[144];
        new Beam(nodes, arms, UP, BAR).stiffness(k);
        new Beam(ends, NO_ARMS, UP, BAR).stiffness(straight);
        double[] u = {.1, .2, -.3, .5, -.2, .7, .4, -.1, .2, .3, .9, -.6};
        double[] moved = u.clone();
        for (int n = 0; n < 2; n++) {
            double[] d = Vectors.cross(
                    new double[] {u[6 * n + 3], u[6 * n + 4], u[6 * n + 5]},
                    new double[] {arms[3 * n], arms[3 * n + 1], arms[3 * n + 2]});
            for (int c = 0; c < 3; c++) {
                moved[6 * n + c] += d[c];
            }
        }
        LADDER.within(
                1e-12, "Bar on rigid arms, energy of Tᵀ K T (J)", "1 beam", energy(straight, moved), energy(k, u));
        double[] e = Eigenvalues.of(k, 12);
        for (int i = 0; i < 6; i++) {
            assertEquals(0, e[i], 1e-10 * e[11]);
        }
        assertTrue(e[6] > 1e-8 * e[11]);
    }

    @Test
    void anEccentricPullGivesAMomentOfForceTimesArm() {
        double e = .03;
        Beam b = new Beam(new double[] {0, 0, 0, 1, 0, 0}, new double[] {0, 0, -e, 0, 0, -e}, UP, BAR);
        double[] k = new double[144];
        b.stiffness(k);
        double[] u = tip(k, new double[] {5000, 0, 0, 0, 0, 0});
        double[] full = new double[12];
        System.arraycopy(u, 0, full, 6, 6);
        double[] f = b.endForces(full);
        assertEquals(5000, f[6], 1e-8);
        LADDER.within(1e-12, "Eccentric pull, moment (N·m)", "1 beam", 5000 * e, Math.abs(f[10]));
    }

    @Test
    void aSimplySupportedBarVibratesAsEulerSays() {
        // ω = π² √(EI/ρAL⁴); slender bar, eight elements
        int n = 8;
        double l = 4;
        BeamSection s =
                new BeamSection(E, G, 8000, 1e-4, 1e-9, 1e-9, 1e-9, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        double[] k = new double[144];
        double[] m = new double[144];
        new Beam(new double[] {0, 0, 0, l / n, 0, 0}, NO_ARMS, UP, s).stiffness(k);
        new Beam(new double[] {0, 0, 0, l / n, 0, 0}, NO_ARMS, UP, s).mass(m);
        // Rayleigh quotient of the sine, w and its slope at the nodes.
        double ku = 0;
        double mu = 0;
        for (int i = 0; i < n; i++) {
            double[] u = new double[12];
            for (int j = 0; j < 2; j++) {
                double x = Math.PI * (i + j) / n;
                u[6 * j + 2] = Math.sin(x);
                u[6 * j + 4] = -Math.PI / l * Math.cos(x);
            }
            ku += energy(k, u);
            mu += energy(m, u);
        }
        double exact = Math.pow(Math.PI / l, 4) * E * 1e-9 / (8000 * 1e-4);
        LADDER.within(2e-4, "Supported bar, ω² by Rayleigh's quotient (1/s²)", "8 beams", exact, ku / mu);
    }

    @Test
    void massAndWeightOfABarOnArmsAreThoseOfTheBar() {
        Beam b = new Beam(new double[] {0, 0, 0, 1, 1, 0}, new double[] {0, 0, .2, 0, 0, .2}, UP, BAR);
        double[] f = new double[12];
        b.weight(new double[] {0, 0, -9.81}, f);
        double total = 8000 * BAR.area() * Math.sqrt(2);
        assertEquals(-9.81 * total, f[2] + f[8], 1e-9);
        double[] g = new double[12];
        b.weight(new double[] {1, 0, 0}, g);
        // The force acts 0.2 m above the nodes; the couple of bending parts balances the vertical nodal forces.
        assertEquals(total, g[0] + g[6], 1e-9);
        assertEquals(.2 * total, g[4] + g[10] - g[8], 1e-9);
    }

    @Test
    void anOrientationAlongTheBeamIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Beam(new double[] {0, 0, 0, 0, 0, 1}, NO_ARMS, UP, BAR));
    }

    private static double energy(double[] k, double[] u) {
        double sum = 0;
        for (int i = 0; i < 12; i++) {
            for (int j = 0; j < 12; j++) {
                sum += u[i] * k[12 * i + j] * u[j];
            }
        }
        return sum;
    }

    /** Displacement of end 2 under a load there, end 1 built in. */
    private static double[] tip(double[] k, double[] load) {
        int[] start = new int[6];
        EnvelopeSolver s = new EnvelopeSolver(start);
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j <= i; j++) {
                s.add(i, j, k[12 * (6 + i) + 6 + j]);
            }
        }
        s.factorise();
        double[] u = load.clone();
        s.solve(u);
        return u;
    }
}
