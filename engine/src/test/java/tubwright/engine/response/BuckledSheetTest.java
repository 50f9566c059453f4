// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.BoxText;
import tubwright.engine.joint.ShearWeb;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/**
 * A box of thin sheet in four pieces with a bulkhead at its middle, in torsion: its shear flow is Bredt's, its panels those
 * between bulkheads and seams, and what they do when they buckle is worked out here after NACA TN 2661.
 */
class BuckledSheetTest {
    private static final Ladder LADDER =
            Ladder.of(Family.JOINTS, "Kuhn, Peterson and Levin 1952, NACA TN 2661, worked by hand", Mark.COMPUTED);

    private static final double T = 0.8e-3;
    private static final double E = 70e9;

    private static final String BOX = BoxText.shapeWithMiddle(400, 300, 2000) + """
            materials:
              sheet-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 70 GPa, nu12: 0.3, XT: 300 MPa, S12: 190 MPa,
                  bearing ultimate: 600 MPa, tensile yield: 250 MPa}
            laminates:
              skin: {sheet: sheet-metal, thickness: 0.8 mm, reference: middle}
              plate: {sheet: sheet-metal, thickness: 10 mm}
            zones:
              skin: {on: [floor, side, deck], laminate: skin}
              ends: {on: [front, middle, rear], laminate: plate}
            pieces:
              floor: [floor]
              sides: [side]
              deck: [deck]
            joints:
              all:
                seams: all
                walls: all
                bonded: {overlap: 20 mm, adhesive: film-epoxy-150, bond line: 0.1 mm}
            """ + BoxText.heldAtTheRear() + """
            cases:
              torsion:
                hold: {mount: "x, y, z", top mount: "x, y, z"}
                load at: pull
                couple: COUPLE N·m
                front station: 350 mm
                rear station: 1650 mm
              twist:
                hold: {mount: "x, y, z", top mount: "x, y, z"}
                forces: {pull R: "0, 0, 2000 N", pull L: "0, 0, -2000 N"}
            mesh: {size: 50 mm}
            """;

    @TempDir
    Path folder;

    private VariantAnswer answer(int couple) throws IOException {
        String text = BOX.replace("COUPLE", Integer.toString(couple));
        return new Study(Solvers.best(), List.of(1.0), Progress.silent())
                .answer(List.of(BoxText.read(folder, text).asDesigned().tub()))
                .getFirst();
    }

    /** Of a simply supported panel 1000 mm by b, by the formula and constant of the report. */
    private static double critical(double b) {
        double kss = 0.904 * (5.34 + 4 * b * b);
        return kss * E * (T / b) * (T / b);
    }

    /** Floor and deck are the widest, 400 mm: the first to buckle, at q = τcr t, T = 2 A q. */
    @Test
    void theWidestPanelBucklesFirstAtTheFlowOfBredt() throws IOException {
        CaseAnswer torsion = answer(100).cases().getFirst();
        SheetState sheet = torsion.sheet().orElseThrow();
        double couple = 2 * 0.4 * 0.3 * critical(0.4) * T;
        LADDER.within(
                0.03,
                "Couple at which a box of sheet first buckles in shear (N·m)",
                "50 mm",
                couple,
                sheet.firstFactor() * 100);
        assertTrue(sheet.firstPanel().startsWith("deck") || sheet.firstPanel().startsWith("floor"), sheet.firstPanel());
        assertEquals(0, sheet.buckled());
        assertEquals(1, sheet.stiffnessLeft());
    }

    /**
     * Bredt with a modulus for each side: 1/GJ = Σ (b/G' t)/(4 A²), the flow being set by balance alone. G' by folds, uprights
     * that do not shorten and flanges of 15 t² from sheet.
     */
    @Test
    void buckledSheetLeavesTheStiffnessOfItsSecantModulus() throws IOException {
        int couple = 2000;
        SheetState sheet = answer(couple).cases().getFirst().sheet().orElseThrow();
        double tau = couple / (2 * 0.4 * 0.3 * T);
        double flat = 2 * (0.4 + 0.3);
        double buckled = 0;
        for (double b : new double[] {0.4, 0.3}) {
            buckled += 2 * b / left(tau, b);
        }
        LADDER.within(
                0.03,
                "Stiffness left to a box of buckled sheet under 2 kN·m, share of the flat one",
                "50 mm",
                flat / buckled,
                sheet.stiffnessLeft());
        assertTrue(sheet.stiffnessLeft() < 0.95, "it does buckle");
        assertTrue(sheet.buckled() >= 8, sheet.buckled() + " panels");
    }

    private static double left(double tau, double b) {
        double k = Math.tanh(0.5 * Math.log10(tau / critical(b)));
        ShearWeb web = new ShearWeb(
                T, 1, 1, b, b, E, 0.3, new ShearWeb.Upright(Double.POSITIVE_INFINITY, 0, 1, b), 15 * T * T);
        double alpha = web.under(tau, critical(b)).angle();
        double pure = 4 / Math.pow(Math.sin(2 * alpha), 2) + b * T / (30 * T * T) / Math.pow(Math.tan(alpha), 2);
        return 2.6 / ((1 - k) * 2.6 + k * pure);
    }

    @Test
    void aLoadCaseTellsWhenEachPanelBucklesAndFails() throws IOException {
        ReserveTable table = answer(100).reserves();
        double tau = 600 / (2 * 0.4 * 0.3 * T);
        Reserve buckle = table.rows().stream()
                .filter(r ->
                        r.check().startsWith("first shear buckle") && r.zone().startsWith("deck"))
                .findFirst()
                .orElseThrow();
        assertEquals(1, buckle.value() * tau / critical(0.4), 0.03);
        Reserve shear = table.rows().stream()
                .filter(r -> r.check().equals("shear of the buckled sheet")
                        && r.zone().equals(buckle.zone()))
                .findFirst()
                .orElseThrow();
        assertTrue(shear.value() > buckle.value(), "sheet bears more than its first buckle");
        assertTrue(shear.value() < 190e6 / tau, "folds at another angle than 45 degrees cost some of it");
    }
}
