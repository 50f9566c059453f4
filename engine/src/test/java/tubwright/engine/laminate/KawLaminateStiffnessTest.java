// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * The [0/30/−45] laminate of three 5 mm plies of T300/5208: Kaw, Mechanics of Composite Materials, 2nd ed. 2006,
 * example 4.2. Printed values from memory, every digit reproduced by an independent computation.
 */
class KawLaminateStiffnessTest {
    private static final String[] AT = {"11", "12", "16", "22", "26", "66"};
    private static final Ladder LADDER = Ladder.of(Family.LAMINATES, "Kaw 2006, ex. 4.2", Mark.MEMORY_CONFIRMED);

    /** Kaw counts z downward from his first ply at the top: his first ply is our innermost. */
    private final Laminate laminate = TextbookPlies.stack(TextbookPlies.T300_5208, 5e-3, -45, 30, 0);

    private final ShellStiffness stiffness = laminate.stiffness();

    @Test
    void membraneStiffnessIsAsPrinted() {
        assertPrinted("A", stiffness.membrane(), 1.739e9, 3.884e8, 5.663e7, 4.533e8, -1.141e8, 4.525e8);
    }

    @Test
    void couplingIsAsPrinted() {
        assertPrinted("B", stiffness.coupling(), -3.129e6, 9.855e5, -1.072e6, 1.158e6, -1.072e6, 9.855e5);
    }

    @Test
    void bendingStiffnessIsAsPrinted() {
        assertPrinted("D", stiffness.bending(), 3.343e4, 6.461e3, -5.240e3, 9.320e3, -5.596e3, 7.663e3);
    }

    private static void assertPrinted(String name, double[] block, double... printed) {
        int[] upper = {0, 1, 2, 4, 5, 8};
        for (int i = 0; i < 6; i++) {
            // Half a unit in the fourth printed digit.
            double unit = Math.pow(10, Math.floor(Math.log10(Math.abs(printed[i]))) - 3);
            LADDER.equal("[0/30/−45], " + name + AT[i], printed[i], block[upper[i]], 0.501 * unit);
        }
        assertEquals(block[1], block[3]);
        assertEquals(block[2], block[6]);
        assertEquals(block[5], block[7]);
    }
}
