// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.MaterialLibrary;

class ShearedClothTest {
    private static final Layer CLOTH = Layer.ofDegrees(MaterialLibrary.shipped().get("pw-t650-976"), 30);

    @Test
    void unshearedHalvesAreTheClothInItsPlane() {
        double[] whole = new Laminate(java.util.List.of(CLOTH), Reference.MIDDLE)
                .stiffness()
                .matrix();
        double[] halves = new Laminate(
                        ShearedCloth.halves(CLOTH, CLOTH.angle(), CLOTH.angle() + Math.PI / 2), Reference.MIDDLE)
                .stiffness()
                .matrix();
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertEquals(whole[8 * i + j], halves[8 * i + j], 1e-9 * whole[0]);
            }
        }
    }

    /** make-reference §1.2: thickness and mass per area grow with 1/cos γ: 1.155 at 30°, 1.414 at 45°. */
    @Test
    void aShearedClothIsThickerAndHeavier() {
        for (double[] row : new double[][] {{10, 1.015}, {30, 1.155}, {45, 1.414}}) {
            double half = Math.toRadians((90 - row[0]) / 2);
            Laminate sheared = new Laminate(ShearedCloth.halves(CLOTH, -half, half), Reference.MIDDLE);
            assertEquals(row[1], sheared.thickness() / CLOTH.thickness(), 6e-4);
            assertEquals(row[1], sheared.arealMass() / CLOTH.arealMass(), 6e-4);
        }
    }

    /** Threads that close up about the reference direction stiffen it along and soften it across. */
    @Test
    void shearTurnsStiffnessTowardsTheBisector() {
        double half = Math.toRadians(30);
        double[] a = new Laminate(ShearedCloth.halves(CLOTH, -half, half), Reference.MIDDLE)
                .stiffness()
                .matrix();
        assertTrue(a[0] > 2 * a[9], () -> a[0] + " along, " + a[9] + " across");
        assertEquals(0, a[2], 0.03 * a[0]);
    }
}
