// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Square simply supported [0/90/90/0] plate under q0 sin sin, E1/E2 = 25, G12 = G13 = .5 E2, G23 = .2 E2, ν12 = .25, by
 * Navier's solution of first-order theory with the stiffnesses computed here. Deflections 100 E2 h³ w/(q0 a⁴) with
 * energy shear factors computed apart; exact three-dimensional ones after Pagano and Hatfield (1972), recomputed apart.
 */
class SimplySupportedPlateTest {
    private static final Ladder LADDER =
            Ladder.of(Family.TRANSVERSE_SHEAR, "Navier with shear stiffness from energy", Mark.COMPUTED);
    private static final Ladder EXACT = Ladder.of(
            Family.TRANSVERSE_SHEAR,
            "Pagano and Hatfield 1972, AIAA J. 10:931, against first-order theory",
            Mark.MEMORY_CONFIRMED);

    @ParameterizedTest
    @CsvSource({"4, 2.0889, 1.9367, .08", "10, .7447, .7370, .011", "20, .5138, .5130, .002", "100, .4346, .4346, .0002"
    })
    void deflectionIsThatOfFirstOrderTheoryAndNearTheExactOne(
            double slenderness, double firstOrder, double exact, double distance) {
        Ply ply = TextbookPlies.tape(25e9, 1e9, 0.25, 0.5e9, 0.5e9, 0.2e9);
        double h = 1e-2;
        ShellStiffness s = TextbookPlies.stack(ply, h / 4, 0, 90, 90, 0).stiffness();
        double a = slenderness * h;
        double[] d = s.bending();
        double k = Math.PI / a;
        double k2 = k * k;
        double sx = s.shear()[0];
        double sy = s.shear()[3];
        // Unknown amplitudes of rotation about y, about x, and deflection.
        double a11 = d[0] * k2 + d[8] * k2 + sx;
        double a12 = (d[1] + d[8]) * k2;
        double a22 = d[8] * k2 + d[4] * k2 + sy;
        double a13 = sx * k;
        double a23 = sy * k;
        double a33 = (sx + sy) * k2;
        double det = a11 * a22 - a12 * a12;
        double reduced = a33 - (a13 * (a22 * a13 - a12 * a23) + a23 * (a11 * a23 - a12 * a13)) / det;
        double deflection = 100 * 1e9 * h * h * h / Math.pow(a, 4) / reduced;
        LADDER.equal(
                "[0/90/90/0] square plate, a/h = " + slenderness + ", 100 E2 h³w/(q a⁴)",
                firstOrder,
                deflection,
                5.1e-5);
        EXACT.equal(
                "[0/90/90/0] square plate, a/h = " + slenderness + ", energy shear against 3-D",
                exact,
                deflection,
                distance * exact);
    }
}
