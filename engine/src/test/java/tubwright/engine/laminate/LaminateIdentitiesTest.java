// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Identities of laminate theory that hold for any stack: each would break if a sign or a factor were wrong. */
class LaminateIdentitiesTest {
    private static final long SEED = 611;

    @Test
    void stressAndStrainTurnedIntoAnyAxesDoTheSameWork() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 50; trial++) {
            double angle = random.nextDouble(-2, 2);
            double[] strain = random.doubles(3, -1, 1).toArray();
            double[] stress = random.doubles(3, -1, 1).toArray();
            double[] e = PlaneStress.strainInLayerAxes(strain, angle);
            double[] s = PlaneStress.stressInLayerAxes(stress, angle);
            double work = strain[0] * stress[0] + strain[1] * stress[1] + strain[2] * stress[2];
            assertEquals(work, e[0] * s[0] + e[1] * s[1] + e[2] * s[2], 1e-12, "seed " + SEED);
            // Mohr: sum and radius stay; turning back undoes it.
            assertEquals(strain[0] + strain[1], e[0] + e[1], 1e-12);
            assertArrayEquals(strain, PlaneStress.strainInLayerAxes(e, -angle), 1e-12);
        }
    }

    @Test
    void strainInPlyAxesMakesThePlysStress() {
        // σ12 = Q ε12 on every surface of every layer, whatever the laminate does.
        Laminate laminate = TextbookPlies.stack(TextbookPlies.T300_5208, 2e-3, 20, -35, 70);
        LaminateResponse r =
                LaminateResponse.underResultants(laminate, new double[] {3e5, -1e5, 2e5, 40, 70, -30}, Climate.NONE);
        var e = TextbookPlies.T300_5208.elasticity();
        for (int k = 0; k < 3; k++) {
            for (var surface : new PlyState.Point[] {
                r.layers().get(k).outer(), r.layers().get(k).inner()
            }) {
                double[] s = surface.plyStrain();
                double[] q = surface.plyStress();
                assertEquals(e.q11() * s[0] + e.q12() * s[1], q[0], 1e-9 * e.q11() * 1e-3);
                assertEquals(e.q12() * s[0] + e.q22() * s[1], q[1], 1e-9 * e.q11() * 1e-3);
                assertEquals(e.g12() * s[2], q[2], 1e-9 * e.q11() * 1e-3);
            }
        }
    }

    @Test
    void massMomentsAreThoseOfTheLayers() {
        double rho = 1600;
        ShellStiffness s = TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 0, 45, 90)
                .about(Reference.OUTER)
                .stiffness();
        assertEquals(3e-3, s.thickness(), 1e-15);
        assertEquals(-3e-3, s.zInner(), 1e-15);
        assertEquals(rho * 3e-3, s.arealMass(), 1e-12);
        assertEquals(-rho * 3e-3 * 1.5e-3, s.firstMassMoment(), 1e-12);
        assertEquals(rho * 27e-9 / 3, s.secondMassMoment(), 1e-15);
        ShellStiffness sheet = ShellStiffness.isotropic(70e9, .3, 2e-3, 2700);
        assertEquals(2700 * 8e-9 / 12, sheet.secondMassMoment(), 1e-15);
        assertEquals(1e-3, sheet.zOuter(), 1e-18);
        assertEquals(2e-3, sheet.thickness(), 1e-18);
        assertEquals(5.0 / 6 * 70e9 / 2.6 * 2e-3, sheet.shear()[0], 1e-3);
        assertEquals(1e-3 + 4e-4, sheet.withReferenceMovedBy(-4e-4).zOuter(), 1e-15);
    }

    @Test
    void aSurfaceMovedWithinAHeavyPlateMovesItsMassMoments() {
        ShellStiffness sheet = ShellStiffness.isotropic(70e9, .3, 2e-3, 2700);
        ShellStiffness moved = sheet.withReferenceMovedBy(5e-4);
        assertEquals(-2700 * 2e-3 * 5e-4, moved.firstMassMoment(), 1e-12);
        assertEquals(2700 * (8e-9 / 12 + 2e-3 * 25e-8), moved.secondMassMoment(), 1e-15);
        double a = 70e9 / .91 * 2e-3;
        assertEquals(-a * 5e-4, moved.coupling()[0], 1e-9 * a);
    }

    @Test
    void heldStrainsInTheHeatLeaveTheThermalForces() {
        // Nothing may move: the resultants are minus those of free expansion, layer by layer.
        Laminate laminate = TextbookPlies.stack(TextbookPlies.T300_5208, 2e-3, 20, -35, 70);
        Climate warm = new Climate(80, .002);
        LaminateResponse r = LaminateResponse.underStrains(laminate, new double[6], warm);
        FreeExpansion free = FreeExpansion.of(laminate, warm);
        double[] z = laminate.surfaces();
        double[] n = new double[3];
        double[] m = new double[3];
        for (int k = 0; k < 3; k++) {
            double[] s = r.layers().get(k).outer().stress();
            for (int i = 0; i < 3; i++) {
                n[i] += s[i] * (z[k] - z[k + 1]);
                m[i] += s[i] * (z[k] * z[k] - z[k + 1] * z[k + 1]) / 2;
            }
        }
        for (int i = 0; i < 3; i++) {
            assertEquals(-free.forces()[i], r.resultants()[i], 1e-9 * Math.abs(free.forces()[0]));
            assertEquals(n[i], r.resultants()[i], 1e-9 * Math.abs(free.forces()[0]));
            assertEquals(-free.moments()[i], r.resultants()[3 + i], 1e-9 * Math.abs(free.forces()[0]) * 6e-3);
            assertEquals(m[i], r.resultants()[3 + i], 1e-9 * Math.abs(free.forces()[0]) * 6e-3);
        }
    }

    @Test
    void anOffAxisPlyShearsAsItIsPulled() {
        // ηxy,x = a16/a11 of one ply: S̄16/S̄11 by the turning formulas (Jones 1999).
        var e = TextbookPlies.T300_5208.elasticity();
        double t = Math.toRadians(30);
        double c = Math.cos(t);
        double s = Math.sin(t);
        double s11 = 1 / 181e9;
        double s22 = 1 / 10.3e9;
        double s12 = -.28 / 181e9;
        double s66 = 1 / e.g12();
        double a11 = s11 * c * c * c * c + (2 * s12 + s66) * s * s * c * c + s22 * s * s * s * s;
        double a22 = s11 * s * s * s * s + (2 * s12 + s66) * s * s * c * c + s22 * c * c * c * c;
        double a16 = (2 * s11 - 2 * s12 - s66) * s * c * c * c - (2 * s22 - 2 * s12 - s66) * s * s * s * c;
        double a26 = (2 * s11 - 2 * s12 - s66) * s * s * s * c - (2 * s22 - 2 * s12 - s66) * s * c * c * c;
        double a12 = s12 * (s * s * s * s + c * c * c * c) + (s11 + s22 - s66) * s * s * c * c;
        EngineeringConstants k = EngineeringConstants.membrane(TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 30));
        assertEquals(a16 / a11, k.etaxyx(), 1e-9);
        assertEquals(a26 / a22, k.etaxyy(), 1e-9);
        assertEquals(-a12 / a22, k.nuyx(), 1e-12);
        EngineeringConstants f = EngineeringConstants.flexural(TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 30));
        assertEquals(k.etaxyx(), f.etaxyx(), 1e-9);
        assertEquals(k.nuyx(), f.nuyx(), 1e-9);
    }

    @Test
    void couplingParametersOfAnUnsymmetricStack() {
        // [0/90]: ξB = ∫ 4 z cos 2θ dz / h² over both halves = +1 for 0 outside, and nothing of the others.
        LaminationParameters p = LaminationParameters.of(TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 0, 90));
        assertArrayEquals(new double[] {1, 0, 0, 0}, p.coupling(), 1e-12);
        LaminationParameters q = LaminationParameters.of(TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 45, -45));
        assertArrayEquals(new double[] {0, 0, 1, 0}, q.coupling(), 1e-12);
    }

    @Test
    void balanceLooksAtThicknessAndAngle() {
        var ply = TextbookPlies.T300_5208;
        assertFalse(TextbookPlies.stack(ply, 1e-3, 45, -44).isBalanced());
        assertFalse(TextbookPlies.stack(ply, 1e-3, 45, 45, -45).isBalanced());
        assertTrue(TextbookPlies.stack(ply, 1e-3, 30, -30, 60, -60, 0, 90).isBalanced());
        Laminate uneven = Laminate.of(Layer.ofDegrees(ply, 45), new Layer(ply, 2.5e-4, -Math.PI / 4));
        assertFalse(uneven.isBalanced());
    }

    @Test
    void theComplianceOfAnUnsymmetricStackUndoesItsStiffness() {
        ShellStiffness s =
                TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 0, 30, -45).stiffness();
        double[] k = s.matrix();
        double[] c = s.compliance();
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                double sum = 0;
                double size = 0;
                for (int a = 0; a < 8; a++) {
                    sum += k[8 * i + a] * c[8 * a + j];
                    size += Math.abs(k[8 * i + a] * c[8 * a + j]);
                }
                assertEquals(i == j ? 1 : 0, sum, 1e-9 * size);
            }
        }
    }
}
