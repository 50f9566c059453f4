// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tubwright.engine.strength.Plies.MPA;

import org.junit.jupiter.api.Test;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Stress exposures of four plies after Puck, Kopp and Knops 2002; slopes from memory, all values computed apart. */
class PuckInterFibreTest {
    private static final Ladder LADDER = Ladder.of(
            Family.CRITERIA,
            "Puck, Kopp and Knops 2002, Compos. Sci. Technol. 62:371; independent program",
            Mark.COMPUTED);

    /** (σ2, τ21), MPa. */
    private static final double[][] STRESSES = {{20, 40}, {-30, 90}, {-60, 80}, {-100, 60}, {-100, 100}};

    @Test
    void as4In3501() {
        assertTable(
                "AS4/3501-6",
                Plies.AS4_3501_6,
                PuckSlopes.CARBON,
                77.31,
                0.2936,
                99.53,
                51.6,
                "ABBCC",
                0.6919,
                1.0310,
                0.8101,
                0.6724,
                0.9788);
    }

    @Test
    void t300In914() {
        assertTable(
                "T300/914C",
                Plies.T300_914C,
                PuckSlopes.CARBON,
                77.49,
                0.2906,
                100.59,
                51.5,
                "ABBCC",
                0.9101,
                1.0181,
                0.8000,
                0.6689,
                0.9691);
    }

    @Test
    void glassInLy556() {
        assertTable(
                "LY556 glass",
                Plies.GLASS_LY556,
                PuckSlopes.GLASS,
                48.75,
                0.1693,
                83.30,
                49.2,
                "ABCCC",
                0.8228,
                1.1502,
                0.9552,
                1.0220,
                1.2793);
    }

    @Test
    void glassInMy750() {
        assertTable(
                "MY750 glass",
                Plies.GLASS_MY750,
                PuckSlopes.GLASS,
                60.12,
                0.2059,
                86.74,
                49.9,
                "ABCCC",
                0.7713,
                1.1344,
                0.9128,
                0.8581,
                1.1574);
    }

    @Test
    void theBorderOfModesBAndCHasNoStep() {
        PlyStrengths s = Plies.strengths(Plies.AS4_3501_6);
        double ra = Puck.actionPlaneResistance(s, PuckSlopes.CARBON);
        double tau = Puck.borderShear(s, PuckSlopes.CARBON);
        assertEquals(1, Puck.exposure(s, PuckSlopes.CARBON, -ra * (1 - 1e-9), tau), 1e-8);
        assertEquals(1, Puck.exposure(s, PuckSlopes.CARBON, -ra * (1 + 1e-9), tau), 1e-8);
    }

    @Test
    void thePlaneTiltsFromZeroAtTheBorderOfModeC() {
        PlyStrengths s = Plies.strengths(Plies.AS4_3501_6);
        double ra = Puck.actionPlaneResistance(s, PuckSlopes.CARBON);
        double[] justBeyond = {0, -ra * (1 + 1e-9), Puck.borderShear(s, PuckSlopes.CARBON)};
        var failure = (PlyFailure.Reached) Puck.of(s, PuckSlopes.CARBON).assess(justBeyond, new double[3]);
        assertEquals(FailureMode.INTER_FIBRE_C, failure.mode());
        assertEquals(0, failure.fractureAngle().orElseThrow(), 1e-4);
    }

    private static void assertTable(
            String name,
            Ply ply,
            PuckSlopes slopes,
            double resistance,
            double transverseSlope,
            double borderShear,
            double angleInPureCompression,
            String modes,
            double... exposures) {
        PlyStrengths s = Plies.strengths(ply);
        LADDER.equal("Puck, " + name + ", RA (MPa)", resistance, Puck.actionPlaneResistance(s, slopes) / MPA, 0.005);
        LADDER.equal("Puck, " + name + ", transverse slope", transverseSlope, Puck.transverseSlope(s, slopes), 0.00005);
        LADDER.equal("Puck, " + name + ", τ21c (MPa)", borderShear, Puck.borderShear(s, slopes) / MPA, 0.005);
        PlyCriterion criterion = Puck.of(s, slopes);
        for (int i = 0; i < exposures.length; i++) {
            double s2 = STRESSES[i][0] * MPA;
            double s12 = STRESSES[i][1] * MPA;
            LADDER.equal(
                    "Puck, " + name + ", exposure at (" + STRESSES[i][0] + ", " + STRESSES[i][1] + ") MPa",
                    exposures[i],
                    Puck.exposure(s, slopes, s2, s12),
                    0.00005);
            var failure = (PlyFailure.Reached) criterion.assess(new double[] {0, s2, s12}, new double[3]);
            assertEquals("INTER_FIBRE_" + modes.charAt(i), failure.mode().name());
        }
        var crushed = (PlyFailure.Reached) criterion.assess(new double[] {0, -MPA, 0}, new double[3]);
        assertEquals(s.yc(), crushed.reserveFactor() * MPA, 1e-3);
        LADDER.equal(
                "Puck, " + name + ", plane of pure compression (°)",
                angleInPureCompression,
                Math.toDegrees(crushed.fractureAngle().orElseThrow()),
                0.05);
    }
}
