// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Shear factors K = S/∫G dz. Values for E1/E2 = 25, G13 = 0.5 E2, G23 = 0.2 E2: .8212, .5952, .7205 are those printed
 * by Whitney (1973, J. Appl. Mech. 40) (from memory, reproduced by computation); .5828 and .8028 computed apart.
 */
class TransverseShearStiffnessTest {
    private static final Ladder LADDER =
            Ladder.of(Family.TRANSVERSE_SHEAR, "Whitney 1973, J. Appl. Mech. 40", Mark.MEMORY_CONFIRMED);
    private static final Ladder COMPUTED =
            Ladder.of(Family.TRANSVERSE_SHEAR, "Integral of Whitney 1973", Mark.COMPUTED);

    private static final Ply PLY = TextbookPlies.tape(25e9, 1e9, 0.25, 0.5e9, 0.5e9, 0.2e9);

    @Test
    void aHomogeneousPlateHasFiveSixths() {
        Laminate plate = TextbookPlies.stack(PLY, 1e-3, 0);
        COMPUTED.equal("[0], factor Kx", 5.0 / 6.0, factorX(plate), 1e-12);
        COMPUTED.equal("[0], factor Ky", 5.0 / 6.0, factorY(plate), 1e-12);
        COMPUTED.equal("[0/0/0], factor Kx", 5.0 / 6.0, factorX(TextbookPlies.stack(PLY, 1e-3, 0, 0, 0)), 1e-12);
    }

    @Test
    void whitneysUnsymmetricCrossPlyHasHisFactor() {
        LADDER.equal("[0/90], factor Kx", .8212, factorX(TextbookPlies.stack(PLY, 1e-3, 0, 90)), 5e-5);
        LADDER.equal("[0/90], factor Ky", .8212, factorY(TextbookPlies.stack(PLY, 1e-3, 0, 90)), 5e-5);
    }

    @Test
    void whitneysSymmetricCrossPlyHasHisFactors() {
        Laminate laminate = TextbookPlies.stack(PLY, 1e-3, 0, 90, 90, 0);
        LADDER.equal("[0/90/90/0], factor Kx", .5952, factorX(laminate), 5e-5);
        LADDER.equal("[0/90/90/0], factor Ky", .7205, factorY(laminate), 5e-5);
    }

    @Test
    void threeEqualPliesHaveTheFactorsComputedApart() {
        Laminate laminate = TextbookPlies.stack(PLY, 1e-3, 0, 90, 0);
        COMPUTED.equal("[0/90/0], factor Kx", .5828, factorX(laminate), 5e-5);
        COMPUTED.equal("[0/90/0], factor Ky", .8028, factorY(laminate), 5e-5);
    }

    @Test
    void theReferenceSurfaceDoesNotMatter() {
        Random random = new Random(19730);
        for (int trial = 0; trial < 50; trial++) {
            double[] angles = random.doubles(1 + random.nextInt(9), -90, 90).toArray();
            Laminate laminate = TextbookPlies.stack(PLY, 1e-3, angles);
            double[] middle = laminate.stiffness().shear();
            double[] outer = laminate.about(Reference.OUTER).stiffness().shear();
            for (int i = 0; i < 4; i++) {
                assertEquals(middle[i], outer[i], 1e-9 * middle[0], "seed 19730, trial " + trial);
            }
            assertEquals(middle[1], middle[2]);
        }
    }

    private static double factorX(Laminate laminate) {
        return laminate.stiffness().shear()[0] / sumOfShearModuli(laminate, true);
    }

    private static double factorY(Laminate laminate) {
        return laminate.stiffness().shear()[3] / sumOfShearModuli(laminate, false);
    }

    private static double sumOfShearModuli(Laminate laminate, boolean x) {
        double sum = 0;
        for (Layer layer : laminate.layers()) {
            var e = layer.material().elasticity();
            double c2 = Math.pow(Math.cos(layer.angle()), 2);
            sum += layer.thickness() * (x ? c2 * e.g13() + (1 - c2) * e.g23() : (1 - c2) * e.g13() + c2 * e.g23());
        }
        return sum;
    }
}
