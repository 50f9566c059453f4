// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.EnergyShare;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.numerics.solver.Solvers;

/**
 * Prismatic tubs, whose stiffness and mass are known by hand, from design text to answer. Twist is read between
 * stations well inside, where the way the couple comes in no longer matters.
 */
class PrismaticTubTest {
    private static final double SHEAR = 70e9 / 2.6;
    private static final double THICKNESS = 0.002;
    private static final double BETWEEN = 0.7;

    /** A closed box 400 wide, 300 high and 2 m long, of 2 mm sheet drawn by its middle; ends of thick plate. */
    private static final String BOX = BoxText.shape(400, 300, 2000) + """
            materials:
              sheet-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 70 GPa, nu12: 0.3}
            laminates:
              skin: {sheet: sheet-metal, thickness: 2 mm, reference: middle}
              plate: {sheet: sheet-metal, thickness: 10 mm}
            zones:
              skin: {on: [floor, side, deck], laminate: skin}
              ends: {on: [front, rear], laminate: plate}
            joints:
              edges:
                walls: all
                bonded: {overlap: 20 mm, adhesive: paste-epoxy, bond line: 0.2 mm}
            """ + BoxText.heldAtTheRear() + """
            cases:
              torsion:
                hold: {mount: "x, y, z", top mount: "x, y, z"}
                load at: pull
                couple: 1000 N·m
                front station: 650 mm
                rear station: 1350 mm
            mesh: {size: 50 mm}
            """;

    @TempDir
    Path folder;

    private VariantAnswer answer(String text) throws IOException {
        Design design = BoxText.read(folder, text);
        return new Study(Solvers.best(), List.of(1.0), Progress.silent())
                .answer(List.of(design.asDesigned().tub()))
                .getFirst();
    }

    private static double torsionalStiffness(VariantAnswer answer) {
        CaseAnswer torsion = answer.cases().getFirst();
        return torsion.stiffness().samples().getFirst().value();
    }

    private double rigidity(String text) throws IOException {
        return torsionalStiffness(answer(text)) * BETWEEN;
    }

    private static String with(String text, String right, String wrong) {
        assertTrue(text.contains(right), right);
        return text.replace(right, wrong);
    }

    /** Bredt (1896): GJ = 4 A² G t / s. */
    @Test
    void aClosedBoxTwistsAsBredtSays() throws IOException {
        double area = 0.4 * 0.3;
        double bredt = 4 * area * area * SHEAR * THICKNESS / 1.4;
        assertEquals(1, rigidity(BOX) / bredt, 0.005);
    }

    /** Bredt (1896): GJ = 2 π R³ t G. */
    @Test
    void aRoundTubeTwistsAsBredtSays() throws IOException {
        String outline = "(0, 0) (200, 0) (200, 300) (0, 300) mm\"";
        String round = with(BOX, outline, "(0, 0) (150, 0) (150, 300) (0, 300) mm\", radii: \"0, 149.9, 149.9, 0 mm\"");
        round = round.replace("y: 150 mm, z: 150 mm", "y: 110 mm, z: 150 mm");
        round = with(round, "size: 50 mm", "size: 20 mm");
        double bredt = 2 * Math.PI * Math.pow(0.15, 3) * THICKNESS * SHEAR;
        assertEquals(1, rigidity(round) / bredt, 0.005);
    }

    /**
     * Bredt (1896) and Batho (1916): in each cell the sum of q s / (G t) along its edge is twice its area times the
     * twist; the wall between the cells takes the difference of the two flows.
     */
    @Test
    void aWallAlongTheTubMakesTwoCells() throws IOException {
        double first = 0.4 * 0.75;
        double a1 = first * 0.3;
        double a2 = (0.4 - first) * 0.3;
        double wall = 0.3 / 0.001;
        double s1 = (2 * first + 0.3) / THICKNESS + wall;
        double s2 = (2 * (0.4 - first) + 0.3) / THICKNESS + wall;
        double det = s1 * s2 - wall * wall;
        double q1 = 2 * (a1 * s2 + a2 * wall) / det;
        double q2 = 2 * (a2 * s1 + a1 * wall) / det;
        double batho = SHEAR * 2 * (a1 * q1 + a2 * q2);
        String two = with(
                BOX,
                "  front: {station: 0 mm}",
                "  front: {station: 0 mm}\n    web: {beside: 100 mm, x: 20 .. 1980 mm, sides: right}");
        two = with(two, "  plate:", "  web: {sheet: sheet-metal, thickness: 1 mm}\n  plate:");
        two = with(two, "y: 150 mm, z: 150 mm}\n  mount", "y: 60 mm, z: 150 mm}\n  mount");
        assertEquals(1, rigidity(two) / batho, 0.005);
    }

    /** A balanced, symmetric skin shears by its A66; of ±45° plies, A66 = t (Q11 + Q22 - 2 Q12) / 4 (Jones 1999). */
    @Test
    void aBoxOfLaminateTwistsByItsInPlaneShearStiffness() throws IOException {
        double e1 = 140e9;
        double e2 = 10e9;
        double nu = 0.3;
        double d = 1 - nu * nu * e2 / e1;
        double a66 = 4 * 0.25e-3 * (e1 / d + e2 / d - 2 * nu * e2 / d) / 4;
        double area = 0.4 * 0.3;
        assertEquals(1, rigidity(laminated("[45/-45]s")) / (4 * area * area * a66 / 1.4), 0.005);
    }

    /** Seen from the other end the plies lean the other way, and a couple does not care for the end it comes from. */
    @Test
    void pliesLeaningTheOtherWayGiveTheSameStiffness() throws IOException {
        double forward = rigidity(laminated("[30/60]"));
        assertEquals(1, rigidity(laminated("[-30/-60]")) / forward, 2e-3);
    }

    private static String laminated(String stack) {
        String text = with(
                BOX,
                "skin: {sheet: sheet-metal, thickness: 2 mm, reference: middle}",
                "skin: {stack: \"" + stack + "\", plies: {ply: tape}, reference: middle}");
        return with(text, "laminates:\n", """
                  tape:
                    kind: ud
                    properties: {density: 1600 kg/m³, thickness: 0.25 mm, E1: 140 GPa, E2: 10 GPa, nu12: 0.3, nu23: 0.4, G12: 5 GPa}
                laminates:
                """);
    }

    @Test
    void aHoleOnTheLeftIsAsBadAsOneOnTheRight() throws IOException {
        String hole = "  walls:\n";
        double right = rigidity(with(
                BOX,
                hole,
                "  openings:\n    hatch: {view: side, strips: side, x: 800 .. 1200 mm, z: 80 .. 220 mm, corner: 40 mm, sides: right}\n"
                        + hole));
        double left = rigidity(with(
                BOX,
                hole,
                "  openings:\n    hatch: {view: side, strips: side, x: 800 .. 1200 mm, z: 80 .. 220 mm, corner: 40 mm, sides: left}\n"
                        + hole));
        assertEquals(1, left / right, 1e-6);
        assertTrue(right < 0.9 * rigidity(BOX));
    }

    @Test
    void theMassIsAreaTimesThicknessTimesDensity() throws IOException {
        VariantAnswer box = answer(BOX);
        double skin = 1.4 * 2 * THICKNESS * 2700;
        double ends = 2 * 0.12 * 0.01 * 2700;
        assertEquals(skin, massOf(box, "skin"), 1e-6 * skin);
        assertEquals(ends, massOf(box, "ends"), 1e-6 * ends);
    }

    private static double massOf(VariantAnswer answer, String item) {
        return answer.mass().items().stream()
                .filter(i -> i.name().equals(item))
                .mapToDouble(MassAnswer.Item::mass)
                .sum();
    }

    /** Under a couple a symmetric tub strains alike on both sides, down to the potting of its inserts. */
    @Test
    void bothSidesOfASymmetricTubTakeTheSameEnergy() throws IOException {
        List<EnergyShare> energy = answer(BOX).cases().getFirst().energy();
        for (String hardpoint : List.of("pull", "mount", "top mount")) {
            double left = energyOf(energy, hardpoint + " L");
            assertEquals(1, energyOf(energy, hardpoint + " R") / left, 1e-6, hardpoint);
        }
    }

    private static double energyOf(List<EnergyShare> energy, String part) {
        return energy.stream()
                .filter(e -> e.name().equals(part))
                .findFirst()
                .orElseThrow()
                .energy();
    }

    @Test
    void inchesAndPoundsGiveTheSameAnswer() throws IOException {
        String inches = BOX.replace("(0, 0) (200, 0) (200, 300) (0, 300) mm", "(0, 0) (8, 0) (8, 12) (0, 12) in");
        String si =
                BOX.replace("(0, 0) (200, 0) (200, 300) (0, 300) mm", "(0, 0) (203.2, 0) (203.2, 304.8) (0, 304.8) mm");
        inches = with(inches, "station: 2000 mm, outline", "station: 80 in, outline");
        inches = with(inches, "rear: {station: 2000 mm}", "rear: {station: 80 in}");
        si = si.replace("station: 2000 mm", "station: 2032 mm");
        inches = with(inches, "density: 2700 kg/m³, E1: 70 GPa", "density: 0.1 lb/in³, E1: 10 Msi");
        si = with(si, "density: 2700 kg/m³, E1: 70 GPa", "density: 2767.99047102 kg/m³, E1: 68947.5729317 MPa");
        inches = with(inches, "couple: 1000 N·m", "couple: 1000 lbf·ft");
        si = with(si, "couple: 1000 N·m", "couple: 1355.81794833 N·m");
        inches = with(inches, "overlap: 20 mm", "overlap: 0.75 in");
        si = with(si, "overlap: 20 mm", "overlap: 19.05 mm");
        VariantAnswer one = answer(inches);
        VariantAnswer other = answer(si);
        assertEquals(1, torsionalStiffness(one) / torsionalStiffness(other), 1e-9);
        assertEquals(1, one.mass().whole().mass() / other.mass().whole().mass(), 1e-9);
    }
}
