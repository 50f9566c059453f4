// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.joint.FastenerFlexibility.Huth;
import tubwright.engine.joint.FastenerFlexibility.Plate;

/** Stiffness per length of bond lines and rows of fasteners. */
class JointStiffnessTest {
    @Test
    void aBondLineInShear() {
        // 25 mm of 0.2 mm adhesive with G = 0.8 GPa: 0.8e9 · 25/0.2 = 100 GN/m per m.
        JointStiffness k = JointStiffness.bonded(2.2e9, 0.8e9, 0.375, 0.025, 0.0002, 1);
        assertEquals(1e11, k.shear(), 1);
        assertEquals(
                2e11,
                JointStiffness.bonded(2.2e9, 0.8e9, 0.375, 0.025, 0.0002, 2).shear(),
                1);
    }

    @Test
    void aBondLineThatCannotContractSidewaysIsStifferThanABarOfIt() {
        // Uniaxial strain modulus K + 4G/3 of an isotropic body.
        double e = 2.2e9;
        double nu = 0.375;
        double g = e / (2 * (1 + nu));
        double bulk = e / (3 * (1 - 2 * nu));
        JointStiffness k = JointStiffness.bonded(e, g, nu, 0.025, 0.0002, 1);
        assertEquals((bulk + 4 * g / 3) * 0.025 / 0.0002, k.normal(), 1e-6 * k.normal());
    }

    @Test
    void turningABondLineStretchesItLinearlyAcrossItsWidth() {
        // Sum of normal springs over the width: ∫ k y² dy.
        JointStiffness k = JointStiffness.bonded(2.2e9, 0.8e9, 0.375, 0.030, 0.00025, 1);
        double perArea = k.normal() / 0.030;
        double sum = 0;
        int n = 10000;
        for (int i = 0; i < n; i++) {
            double y = 0.030 * ((i + 0.5) / n - 0.5);
            sum += perArea * y * y * 0.030 / n;
        }
        assertEquals(sum, k.rotation(), 1e-6 * sum);
    }

    @Test
    void theLegsOfATeeActAsOneBondOfTwiceTheWidth() {
        JointStiffness tee = JointStiffness.tee(2.2e9, 0.8e9, 0.375, 0.02, 0.0002);
        JointStiffness wide = JointStiffness.bonded(2.2e9, 0.8e9, 0.375, 0.04, 0.0002, 1);
        assertEquals(wide, tee);
    }

    @Test
    void aRowOfBoltsSharesTheShearByItsPitch() {
        // Table row after Huth (1986): two aluminium sheets 3 and 4 mm, 72 GPa, steel 6.35 mm, 1.928e-5 mm/N each.
        JointStiffness k = JointStiffness.fastened(
                Huth.BOLTED_METAL, new Plate(0.003, 72e9), new Plate(0.004, 72e9), 0.00635, 200e9, 0.025, 2, 0.02);
        assertEquals(2 / (1.928e-8 * 0.025), k.shear(), 3e-4 * k.shear());
    }
}
