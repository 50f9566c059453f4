// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

class ShellStiffnessTest {
    private static final Ladder LADDER =
            Ladder.of(Family.LAMINATES, "IM7/8552 [45/0/−45/90]2s in compression", Mark.COMPUTED);
    private static final Ladder PRINTED = Ladder.of(Family.LAMINATES, "Public test file with measured ν21", Mark.READ);
    private static final Ladder SHEET = Ladder.of(Family.LAMINATES, "Plate theory", Mark.EXACT);

    private static final long SEED = 4242;

    /**
     * A11, A12, A66 of [45/0/−45/90]2s in lb/in, IM7/8552 in compression (E1 20.04, E2 1.41, G12 .68 Msi, ν12 .356, ply
     * .0072 in): computed apart; a public test file prints 988 374.5, 316 116.9, 336 128.8 from a measured ν21.
     */
    @Test
    void aQuasiIsotropicLaminateHasTheMembraneStiffnessComputedApart() {
        double msi = 6894757293.168361;
        double poundPerInch = 4.4482216152605 / 0.0254;
        Ply ply = TextbookPlies.tape(20.04 * msi, 1.41 * msi, .356, .68 * msi, 0.68 * msi, 0.5 * msi);
        double[] a = TextbookPlies.symmetric(ply, .0072 * .0254, 45, 0, -45, 90, 45, 0, -45, 90)
                .stiffness()
                .membrane();
        LADDER.equal("[45/0/−45/90]2s, A11 (lb/in)", 988732, a[0] / poundPerInch, 0.6);
        LADDER.equal("[45/0/−45/90]2s, A12 (lb/in)", 316251, a[1] / poundPerInch, 0.6);
        LADDER.equal("[45/0/−45/90]2s, A66 (lb/in)", 336241, a[8] / poundPerInch, 0.6);
        PRINTED.equal("[45/0/−45/90]2s, A11 (lb/in), of another ν21", 988374.5, a[0] / poundPerInch, 5e-4 * 988374.5);
    }

    @Test
    void anyStackOfShippedMaterialsIsPositiveDefiniteAboutAnySurface() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 300; trial++) {
            for (Reference reference : Reference.values()) {
                Laminate laminate = randomLaminate(random).about(reference);
                ShellStiffness stiffness = laminate.stiffness();
                double[] inverse = stiffness.compliance();
                double[] m = stiffness.matrix();
                for (int i = 0; i < 8; i++) {
                    double one = 0;
                    double size = 0;
                    for (int k = 0; k < 8; k++) {
                        one += m[8 * i + k] * inverse[8 * k + i];
                        size += Math.abs(m[8 * i + k] * inverse[8 * k + i]);
                        assertEquals(m[8 * i + k], m[8 * k + i], "seed " + SEED + ", trial " + trial);
                    }
                    assertEquals(1, one, 1e-9 * size, "seed " + SEED + ", trial " + trial);
                }
            }
        }
    }

    @Test
    void movingTheReferenceSurfaceIsTheSameAsChoosingIt() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 50; trial++) {
            Laminate laminate = randomLaminate(random);
            double h = laminate.thickness();
            ShellStiffness outer = laminate.about(Reference.OUTER).stiffness();
            ShellStiffness inner = laminate.about(Reference.INNER).stiffness();
            ShellStiffness moved = inner.withReferenceMovedBy(h);
            assertMatrix(outer.matrix(), moved.matrix(), 1e-12, h);
            assertEquals(0, outer.zOuter(), 1e-15);
            assertEquals(-h, moved.zInner(), 1e-15);
            assertEquals(outer.firstMassMoment(), moved.firstMassMoment(), 1e-12 * outer.arealMass() * h);
            assertEquals(outer.secondMassMoment(), moved.secondMassMoment(), 1e-12 * outer.arealMass() * h * h);
            assertEquals(laminate.arealMass(), outer.arealMass(), 1e-12 * outer.arealMass());
        }
    }

    @Test
    void turningTheAxesIsTheSameAsTurningThePliesBack() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 50; trial++) {
            Laminate laminate = randomLaminate(random);
            double angle = random.nextDouble(-2, 2);
            Laminate turned = new Laminate(
                    laminate.layers().stream()
                            .map(l -> new Layer(l.material(), l.thickness(), l.angle() - angle))
                            .toList(),
                    laminate.reference());
            double[] byAxes = laminate.stiffness().turnedBy(angle).matrix();
            double[] byPlies = turned.stiffness().matrix();
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    double scale = Math.sqrt(byPlies[9 * i] * byPlies[9 * j]);
                    assertEquals(byPlies[8 * i + j], byAxes[8 * i + j], 1e-11 * scale, "seed " + SEED);
                }
            }
        }
    }

    @Test
    void theOtherSideOfTheCarHasTheSameStiffnessWithShearCouplingReversed() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 50; trial++) {
            Laminate laminate = randomLaminate(random);
            double[] right = laminate.stiffness().matrix();
            double[] left = laminate.mirrored().stiffness().matrix();
            for (int i = 0; i < 8; i++) {
                for (int j = 0; j < 8; j++) {
                    boolean odd = isOdd(i) != isOdd(j);
                    double scale = Math.sqrt(right[9 * i] * right[9 * j]);
                    assertEquals(odd ? -right[8 * i + j] : right[8 * i + j], left[8 * i + j], 1e-10 * scale);
                }
            }
        }
    }

    /** Strains that change sign when y is reversed. */
    private static boolean isOdd(int strain) {
        return strain == 2 || strain == 5 || strain == 7;
    }

    @Test
    void anIsotropicSheetHasTheTextbookPlateStiffness() {
        double e = 70e9;
        double nu = 0.3;
        double t = 2e-3;
        ShellStiffness s = ShellStiffness.isotropic(e, nu, t, 2700);
        SHEET.equal("Isotropic sheet, A11 (N/m)", e * t / (1 - nu * nu), s.membrane()[0], 1e-3);
        SHEET.equal("Isotropic sheet, D11 (N·m)", e * t * t * t / 12 / (1 - nu * nu), s.bending()[0], 1e-9);
        SHEET.equal("Isotropic sheet, S (N/m)", 5.0 / 6.0 * e / 2.6 * t, s.shear()[3], 1e-3);
        assertEquals(5.4, s.arealMass(), 1e-12);
    }

    @Test
    void symmetryAndBalanceAreSeen() {
        Ply ply = TextbookPlies.T300_5208;
        assertTrue(TextbookPlies.stack(ply, 1e-3, 0, 45, 45, 0).isSymmetric());
        assertFalse(TextbookPlies.stack(ply, 1e-3, 0, 45, 45, 0).isBalanced());
        assertTrue(TextbookPlies.stack(ply, 1e-3, 0, 45, -45).isBalanced());
        assertFalse(TextbookPlies.stack(ply, 1e-3, 0, 45, -45).isSymmetric());
        assertTrue(TextbookPlies.stack(ply, 1e-3, 90, 0, -90).isSymmetric());
    }

    private static Laminate randomLaminate(Random random) {
        List<Material> all = MaterialLibrary.shipped().all();
        List<Layer> layers = new ArrayList<>();
        int n = 1 + random.nextInt(8);
        for (int i = 0; i < n; i++) {
            Material material = all.get(random.nextInt(all.size()));
            double thickness = material instanceof Core ? 0.02 : 1e-4 * (1 + random.nextInt(10));
            layers.add(new Layer(material, thickness, random.nextDouble(-2, 2)));
        }
        return new Laminate(layers, Reference.OUTER);
    }

    private static void assertMatrix(double[] expected, double[] actual, double relative, double h) {
        double[] scale = new double[64];
        double a = expected[0] + expected[9] + expected[18];
        for (int i = 0; i < 64; i++) {
            boolean bend1 = i / 8 >= 3 && i / 8 < 6;
            boolean bend2 = i % 8 >= 3 && i % 8 < 6;
            scale[i] = relative * a * (bend1 ? h : 1) * (bend2 ? h : 1);
        }
        for (int i = 0; i < 64; i++) {
            assertArrayEquals(new double[] {expected[i]}, new double[] {actual[i]}, scale[i]);
        }
    }
}
