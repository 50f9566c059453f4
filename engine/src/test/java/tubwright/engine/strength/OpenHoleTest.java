// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Holes in T300/5208 laminates, computed apart; characteristic lengths of Whitney and Nuismer 1974 from memory. */
class OpenHoleTest {
    private static final Ladder LEKHNITSKII =
            Ladder.of(Family.CRITERIA, "Lekhnitskii 1968, orthotropic plate with a hole", Mark.COMPUTED);
    private static final Ladder LADDER =
            Ladder.of(Family.CRITERIA, "Whitney and Nuismer 1974, J. Compos. Mater. 8:253", Mark.COMPUTED);

    private static double concentration(double... degrees) {
        Laminate laminate = Plies.stack(Plies.T300_5208, 1.25e-4, degrees);
        return OpenHole.concentration(EngineeringConstants.membrane(laminate));
    }

    @Test
    void theHoleConcentratesStressAsLekhnitskiiSays() {
        LEKHNITSKII.equal(
                "Hole in [0/±45/90]s, stress concentration",
                3.000,
                concentration(0, 45, -45, 90, 90, -45, 45, 0),
                0.0005);
        LEKHNITSKII.equal(
                "Hole in [0/±45]s, stress concentration", 2.999, concentration(0, 45, -45, -45, 45, 0), 0.0005);
        LEKHNITSKII.equal("Hole in [±45]s, stress concentration", 2.022, concentration(45, -45, -45, 45), 0.0005);
        LEKHNITSKII.equal("Hole in [0/90]s, stress concentration", 4.915, concentration(0, 90, 90, 0), 0.0005);
        LEKHNITSKII.equal("Hole in [0], stress concentration", 1 + Math.sqrt(33.06806), concentration(0), 1e-5);
    }

    @Test
    void aQuasiIsotropicLaminateKeepsLessTheLargerTheHole() {
        double[] radius = {1.5, 2.5, 3.175, 5, 12.7};
        double[] point = {0.731, 0.611, 0.5615, 0.485, 0.395};
        double[] average = {0.750, 0.664, 0.623, 0.5495, 0.436};
        for (int i = 0; i < radius.length; i++) {
            double r = radius[i] * 1e-3;
            LADDER.equal(
                    "Hole of radius " + radius[i] + " mm, share kept by point stress",
                    point[i],
                    OpenHole.pointStress(r, OpenHole.USUAL_POINT_DISTANCE, 3),
                    0.0005);
            LADDER.equal(
                    "Hole of radius " + radius[i] + " mm, share kept by average stress",
                    average[i],
                    OpenHole.averageStress(r, OpenHole.USUAL_AVERAGE_LENGTH, 3),
                    0.0005);
        }
    }

    @Test
    void aTinyHoleHurtsNobodyAndAHugeOneLeavesTheConcentration() {
        for (double kt : new double[] {3, 4.915, 6.751}) {
            assertEquals(1, OpenHole.pointStress(1e-9, 1e-3, kt), 1e-9);
            assertEquals(1 / kt, OpenHole.pointStress(1e3, 1e-3, kt), 1e-4);
            assertEquals(1 / kt, OpenHole.averageStress(1e3, 1e-3, kt), 1e-4);
        }
    }
}
