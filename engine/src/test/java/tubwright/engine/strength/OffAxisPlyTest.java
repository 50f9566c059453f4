// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tubwright.engine.strength.Plies.MPA;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * A ply loaded at an angle to its fibres. Kaw 2006, examples 2.17 to 2.20: σx = 2S, σy = −3S, τxy = 4S on a ply at 60°
 * (printed values from memory, reproduced by computation); uniaxial strengths computed apart, each to its last digit.
 */
class OffAxisPlyTest {
    private static final Ladder LADDER =
            Ladder.of(Family.CRITERIA, "Kaw 2006, ex. 2.17 to 2.20", Mark.MEMORY_CONFIRMED);
    private static final Ladder APART = Ladder.of(Family.CRITERIA, "Independent program", Mark.COMPUTED);

    private static final PlyStrengths KAW = Plies.strengths(Plies.T300_5208);

    /** Kaw's load at S = 1 MPa. */
    private static double largestLoad(PlyCriterion criterion) {
        double[] s = inPlyAxes(2 * MPA, -3 * MPA, 4 * MPA, 60);
        assertEquals(1.7141 * MPA, s[0], 50);
        assertEquals(-2.7141 * MPA, s[1], 50);
        assertEquals(-4.1651 * MPA, s[2], 50);
        return criterion.reserveFactor(s[0], s[1], s[2]);
    }

    @Test
    void theSixtyDegreePlyOfKawFailsWhereHeSays() {
        LADDER.equal("60° ply, maximum stress (MPa)", 16.33, largestLoad(MaximumStress.of(KAW)), 0.005);
        LADDER.equal("60° ply, Tsai–Hill (MPa)", 10.94, largestLoad(TsaiHill.plain(KAW)), 0.005);
        LADDER.equal("60° ply, modified Tsai–Hill (MPa)", 16.06, largestLoad(TsaiHill.modified(KAW)), 0.005);
        LADDER.equal("60° ply, Tsai–Wu (MPa)", 22.39, largestLoad(TsaiWu.of(KAW, -0.5)), 0.005);
        LADDER.equal("60° ply, maximum strain (MPa)", 16.33, largestLoad(strain(Plies.T300_5208)), 0.005);
    }

    @Test
    void theInteractionTermAndTheTransverseShearStrengthMatterAsComputedApart() {
        APART.equal("60° ply, Tsai–Wu without interaction (MPa)", 22.50, largestLoad(TsaiWu.of(KAW, 0)), 0.005);
        APART.equal("60° ply, Hashin (MPa)", 16.07, largestLoad(Hashin.of(KAW)), 0.005);
    }

    @Test
    void carbonTapeInTensionComputedApart() {
        assertStrengths(Plies.T300_5208, 1, 10, 397.6, 370.2, 343.5, 380.9, 364.9, FailureMode.INTER_FIBRE_A);
        assertStrengths(Plies.T300_5208, 1, 30, 157.0, 112.0, 101.2, 112.1, 106.8, FailureMode.INTER_FIBRE_A);
        assertStrengths(Plies.T300_5208, 1, 45, 80.0, 69.0, 64.5, 69.0, 67.0, FailureMode.INTER_FIBRE_A);
        assertStrengths(Plies.T300_5208, 1, 60, 53.3, 50.5, 49.0, 50.5, 49.9, FailureMode.INTER_FIBRE_A);
        assertStrengths(Plies.AS4_3501_6, 1, 10, 462.0, 433.5, 419.1, 443.7, 424.8, FailureMode.INTER_FIBRE_A);
        assertStrengths(Plies.AS4_3501_6, 1, 45, 96.0, 82.0, 77.7, 82.0, 79.5, FailureMode.INTER_FIBRE_A);
    }

    @Test
    void carbonTapeInCompressionComputedApart() {
        assertStrengths(Plies.T300_5208, -1, 10, 397.6, 385.1, 438.6, 397.2, 419.2, FailureMode.INTER_FIBRE_B);
        assertStrengths(Plies.T300_5208, -1, 30, 157.0, 154.8, 215.3, 155.1, 186.6, FailureMode.INTER_FIBRE_B);
        assertStrengths(Plies.T300_5208, -1, 45, 136.0, 131.1, 198.9, 131.1, 182.7, FailureMode.INTER_FIBRE_C);
        assertStrengths(Plies.T300_5208, -1, 60, 157.0, 141.7, 211.7, 141.6, 209.7, FailureMode.INTER_FIBRE_C);
        assertStrengths(Plies.AS4_3501_6, -1, 45, 158.0, 147.0, 198.9, 147.0, 204.3, FailureMode.INTER_FIBRE_C);
    }

    private static void assertStrengths(
            Ply ply,
            int sign,
            double degrees,
            double maximumStress,
            double tsaiHill,
            double tsaiWu,
            double hashin,
            double puck,
            FailureMode mode) {
        PlyStrengths s = Plies.strengths(ply);
        double[] unit = inPlyAxes(sign * MPA, 0, 0, degrees);
        List<PlyCriterion> criteria = List.of(
                MaximumStress.of(s),
                TsaiHill.modified(s),
                TsaiWu.of(s, -0.5),
                Hashin.of(s),
                Puck.of(s, PuckSlopes.CARBON));
        double[] expected = {maximumStress, tsaiHill, tsaiWu, hashin, puck};
        for (int i = 0; i < expected.length; i++) {
            APART.equal(
                    (ply.equals(Plies.T300_5208) ? "T300/5208" : "AS4/3501-6")
                            + (sign > 0 ? " pulled at " : " pressed at ") + degrees + "°, "
                            + criteria.get(i).name(),
                    expected[i],
                    criteria.get(i).reserveFactor(unit[0], unit[1], unit[2]),
                    0.0501);
        }
        var failure = (PlyFailure.Reached) criteria.get(4).assess(unit, new double[3]);
        assertEquals(mode, failure.mode());
    }

    private static PlyCriterion strain(Ply ply) {
        return (PlyCriterion) Criterion.MAXIMUM_STRAIN.prepare(ply, KnockDown.NONE);
    }

    private static double[] inPlyAxes(double x, double y, double xy, double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return new double[] {
            c * c * x + s * s * y + 2 * c * s * xy,
            s * s * x + c * c * y - 2 * c * s * xy,
            c * s * (y - x) + (c * c - s * s) * xy
        };
    }
}
