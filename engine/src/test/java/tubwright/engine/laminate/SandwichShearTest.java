// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Transverse shear of sandwiches: reference values computed apart from Whitney's (1973) integral. */
class SandwichShearTest {
    private static final Ladder LADDER = Ladder.of(Family.TRANSVERSE_SHEAR, "Integral of Whitney 1973", Mark.COMPUTED);
    private static final Ladder THIN =
            Ladder.of(Family.TRANSVERSE_SHEAR, "Thin faces, G d²/c (Allen 1969)", Mark.COMPUTED);

    /** Faces of 60 GPa with 5 GPa in transverse shear; a core of 220 MPa with next to no modulus. */
    private static final Ply FACE = TextbookPlies.tape(60e9, 60e9, 0.3, 23e9, 5e9, 5e9);

    private static final Ply CORE = TextbookPlies.tape(1e3, 1e3, 0, 500, 220e6, 220e6);

    @Test
    void equalFacesGiveTheValueComputedApartWhichIsThatOfThinFaces() {
        double s = sandwich(0.6e-3, 20e-3, 0.6e-3).stiffness().shear()[0];
        LADDER.equal("Sandwich .6/20/.6 mm, S (N/m)", 4666.4e3, s, 0.05e3);
        THIN.equal("Sandwich .6/20/.6 mm, S against G d²/c (N/m)", 220e6 * 20.6e-3 * 20.6e-3 / 20e-3, s, 1e-3 * s);
        LADDER.equal("Sandwich .6/20/.6 mm, share of Σ G t", .4487, s / (220e6 * 20e-3 + 5e9 * 1.2e-3), 5e-5);
    }

    @Test
    void unequalFacesGiveTheValueComputedApart() {
        LADDER.equal(
                "Sandwich 1/20/.5 mm, S (N/m)",
                4737.0e3,
                sandwich(1.0e-3, 20e-3, 0.5e-3).stiffness().shear()[0],
                0.05e3);
        LADDER.equal(
                "Sandwich .5/20/1 mm, S (N/m)",
                4737.0e3,
                sandwich(0.5e-3, 20e-3, 1.0e-3).stiffness().shear()[0],
                0.05e3);
    }

    @Test
    void theRibbonOfTheHoneycombIsTheStiffWay() {
        MaterialLibrary library = MaterialLibrary.shipped();
        Core core = library.get("al-honeycomb-3.1", Core.class);
        Material skin = library.get("pw-t650-976");
        double[] along = panel(skin, core, 0);
        double[] across = panel(skin, core, 90);
        assertEquals(core.elasticity().g13() / core.elasticity().g23(), along[0] / along[3], 0.01);
        assertEquals(along[0], across[3], 2e-3 * along[0]);
        double[] askew = panel(skin, core, 30);
        assertTrue(askew[1] > 0, "a ribbon turned towards e2 couples the two shears with positive sign");
        assertEquals(askew[1], -panel(skin, core, -30)[1], 1e-9 * askew[0]);
    }

    /** Between faces alike in all directions the shear stiffness is the core's, and turns with its ribbon as a tensor. */
    @Test
    void theShearStiffnessTurnsWithTheRibbon() {
        Core core = MaterialLibrary.shipped().get("al-honeycomb-3.1", Core.class);
        Material sheet = TextbookPlies.tape(70e9, 70e9, 0.3, 70e9 / 2.6, 70e9 / 2.6, 70e9 / 2.6);
        double[] straight = panel(sheet, core, 0);
        double c = Math.cos(Math.toRadians(35));
        double s = Math.sin(Math.toRadians(35));
        double[] turned = panel(sheet, core, 35);
        double scale = straight[0];
        assertEquals(c * c * straight[0] + s * s * straight[3], turned[0], 2e-3 * scale);
        assertEquals(c * s * (straight[0] - straight[3]), turned[1], 2e-3 * scale);
        assertEquals(s * s * straight[0] + c * c * straight[3], turned[3], 2e-3 * scale);
        Layer face = Layer.ofDegrees(sheet, 0);
        ShellStiffness panel =
                Laminate.of(face, face, new Layer(core, 0.02, 0), face, face).stiffness();
        double[] seen = panel.turnedBy(Math.toRadians(-35)).shear();
        for (int i = 0; i < 4; i++) {
            assertEquals(turned[i], seen[i], 2e-3 * scale, "from axes turned the other way");
        }
    }

    private static double[] panel(Material skin, Core core, double degrees) {
        Layer face = Layer.ofDegrees(skin, 0);
        return Laminate.of(face, face, new Layer(core, 0.02, Math.toRadians(degrees)), face, face)
                .stiffness()
                .shear();
    }

    /**
     * The three-point-bend strip [0/90/0/90~(.4)/0/90/0] of NAFEMS report R0031 test 1 (lay-up from memory): factor
     * .8075 of the sum of G13 t, computed apart.
     */
    @Test
    void theBenchmarkStripHasTheFactorComputedApart() {
        Ply ply = TextbookPlies.tape(100e9, 5e9, 0.4, 3e9, 3e9, 2e9);
        double[] thickness = {.1, .1, .1, .4, .1, .1, .1};
        double[] degrees = {0, 90, 0, 90, 0, 90, 0};
        Layer[] layers = new Layer[7];
        double sum = 0;
        for (int i = 0; i < 7; i++) {
            layers[i] = new Layer(ply, thickness[i] * 1e-3, Math.toRadians(degrees[i]));
            sum += (degrees[i] == 0 ? 3e9 : 2e9) * thickness[i] * 1e-3;
        }
        LADDER.equal(
                "Strip [0/90/0/90~/0/90/0] of R0031/1, share of Σ G13 t",
                .8075,
                Laminate.of(layers).stiffness().shear()[0] / sum,
                5e-5);
    }

    @Test
    void shearStressAddsUpToTheShearForceAndVanishesAtTheSurfaces() {
        Laminate laminate = TextbookPlies.stack(TextbookPlies.T300_5208, 1e-3, 10, -50, 70, 35);
        TransverseShear shear = TransverseShear.of(laminate);
        double h = laminate.thickness();
        double qx = 0;
        double qy = 0;
        int n = 40000;
        for (int i = 0; i < n; i++) {
            double[] tau = shear.stressAtDepth((i + 0.5) * h / n, 3000, -700);
            qx += tau[0] * h / n;
            qy += tau[1] * h / n;
        }
        assertEquals(3000, qx, 0.01);
        assertEquals(-700, qy, 0.01);
        assertEquals(0, shear.stressAtDepth(h, 3000, -700)[0], 1e-6);
        assertEquals(0, shear.stressAtDepth(0, 3000, -700)[0], 1e-3);
        assertEquals(0, shear.stressAtDepth(0, 3000, -700)[1], 1e-3);
    }

    private static Laminate sandwich(double outer, double core, double inner) {
        return Laminate.of(new Layer(FACE, outer, 0), new Layer(CORE, core, 0), new Layer(FACE, inner, 0));
    }
}
