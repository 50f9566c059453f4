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
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/** Hardpoints of a box of sandwich, from its text to their reserves, against handbook formulas worked by hand. */
class HardpointsOfATubTest {
    private static final Ladder LADDER =
            Ladder.of(Family.SANDWICH, "ESA PSS-03-1202 1987, worked example computed apart", Mark.COMPUTED);

    /** Faces of the worked example: 60 GPa, 0.6 mm, core 20 mm with G 152 MPa and S 0.9 MPa, potting 10.02 mm. */
    private static final String BOX = BoxText.shape(800, 600, 2000) + """
            materials:
              face-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 60 GPa, nu12: 0.3, XT: 300 MPa, S12: 190 MPa,
                  bearing ultimate: 600 MPa, tensile yield: 250 MPa}
              honey:
                kind: honeycomb
                properties: {density: 50 kg/m³, E3: 517 MPa, G13: 152 MPa, G23: 152 MPa, S13: 0.9 MPa, S23: 0.9 MPa,
                  ZC: 1.5 MPa, ZT: 1.5 MPa, cell size: 4.76 mm}
              glue:
                kind: paste
                properties: {density: 1.2 g/cm³, thickness: 0.2 mm, E1: 2.2 GPa, G12: 0.8 GPa, S12: 40 MPa, ZT: 20 MPa,
                  shear strain limit: 0.5}
              face:
                kind: cloth
                properties: {thickness: 0.6 mm, density: 1550 kg/m³, E1: 60 GPa, E2: 60 GPa, nu12: 0.3, G12: 23.08 GPa,
                  XT: 500 MPa, XC: 400 MPa, S12: 90 MPa}
            laminates:
              skin:
                stack: "[0f/core/0f]"
                plies: {f: face}
                core: honey
                core thickness: 20 mm
              plate: {sheet: face-metal, thickness: 10 mm}
            zones:
              skin: {on: [floor, side, deck], laminate: skin}
              ends: {on: [front, rear], laminate: plate}
            hardpoints:
              pull: {on: side, x: 1000 mm, z: 300 mm, footprint: 60 mm, sides: right, INSERT}
              mount: {on: rear, y: 150 mm, z: 150 mm}
              top mount: {on: rear, y: 60 mm, z: 450 mm}
            cases:
              tug:
                hold: {mount: "x, y, z", top mount: "x, y, z"}
                forces: {pull: "LOAD"}
                moments: {pull: "MOMENT"}
            mesh: {size: 100 mm}
            """;

    @TempDir
    Path folder;

    private ReserveTable table(String insert, String load, String moment) throws IOException {
        return table(BOX, insert, load, moment);
    }

    private ReserveTable table(String box, String insert, String load, String moment) throws IOException {
        String text = box.replace("INSERT", insert).replace("LOAD", load).replace("MOMENT", moment);
        return new Study(Solvers.best(), List.of(1.0), Progress.silent())
                .answer(List.of(BoxText.read(folder, text).asDesigned().tub()))
                .getFirst()
                .reserves();
    }

    private static double row(ReserveTable table, String check) {
        return table.rows().stream()
                .filter(r -> r.zone().equals("pull") && r.check().equals(check))
                .mapToDouble(Reserve::value)
                .findFirst()
                .orElseThrow(() -> new AssertionError(check + " is not in "
                        + table.rows().stream()
                                .filter(r -> r.zone().equals("pull"))
                                .map(Reserve::check)
                                .toList() + table.notChecked()));
    }

    /** Insert radius 7 mm in 4.76 mm cells: the sheet of worked examples has bp 10.02 mm, Kmax 0.7524, 1552 N. */
    @Test
    void aPottedInsertPullsOutAtTheWorkedExamplesLoad() throws IOException {
        ReserveTable table = table("insert: {diameter: 14 mm}", "0, 100, 0 N", "0, 0, 0 N·m");
        double alone = 100 * row(table, "insert pull-out by core shear") / edgeShare();
        LADDER.within(0.001, "Pull-out of a potted insert in a tub (N)", "", 1552, alone);
    }

    /** The nearest edge is an end of the box, 1 m away, whose mirror image of the insert stands at 2 m. */
    private static double edgeShare() {
        return 0.7524 / (0.7524 + 10.02 / 2010.02);
    }

    @Test
    void pullAndPushAlongTheSkinAddAsSquares() throws IOException {
        String insert = "insert: {diameter: 14 mm}";
        ReserveTable both = table(insert, "0, 100, 300 N", "0, 0, 0 N·m");
        double pull = row(both, "insert pull-out by core shear");
        double along = row(both, "insert along the skin");
        assertEquals(
                1 / Math.hypot(1 / pull, 1 / along), row(both, "insert under pull and in-plane load together"), 1e-9);
        double bp = 10.02e-3;
        double capacity = 8 * bp * bp * 0.9e6 + 2 * bp * 0.6e-3 * 400e6;
        assertEquals(1, along * 300 / capacity, 0.001);
        assertTrue(both.notChecked().stream().anyMatch(n -> n.toString().contains("bearing ultimate of face")));
    }

    /** No rule says what is left of two inserts in the same core: neither is judged, and the table says so. */
    @Test
    void insertsThatOverlapAreNotJudged() throws IOException {
        String insert = "insert: {diameter: 14 mm}";
        ReserveTable near = besideAnother(insert, 1040);
        assertTrue(near.rows().stream().noneMatch(r -> r.zone().equals("pull")), "no row speaks for it");
        assertTrue(
                near.notChecked().stream()
                        .map(Object::toString)
                        .anyMatch(n -> n.contains("insert of \"pull\"") && n.contains("overlaps that of \"beside\"")),
                near.notChecked().toString());
        ReserveTable clear = besideAnother(insert, 1070);
        assertTrue(row(clear, "insert pull-out by core shear") > 0);
        assertTrue(clear.notChecked().stream().noneMatch(n -> n.toString().contains("overlaps")));
    }

    /** Another hardpoint with a footprint of 60 mm, too, at the station given in mm. */
    private ReserveTable besideAnother(String insert, int station) throws IOException {
        String other =
                "  beside: {on: side, x: " + station + " mm, z: 300 mm, footprint: 60 mm, sides: right, " + insert;
        String box = BOX.replace("  mount: {on", other + "}\n  mount: {on");
        return table(box, insert, "0, 100, 0 N", "0, 0, 0 N·m");
    }

    /** Flange of 40 mm bonded to the skin: T = π τ (R⁴ − r⁴)/(2R); a moment in the skin's plane is a pull 2M/bp. */
    @Test
    void aFlangeHoldsAgainstTurning() throws IOException {
        ReserveTable table =
                table("insert: {diameter: 14 mm, flange: 40 mm, adhesive: glue}", "0, 0, 0 N", "2, 5, 0 N·m");
        double capacity = Math.PI * 40e6 * (Math.pow(0.02, 4) - Math.pow(0.007, 4)) / (2 * 0.02);
        assertEquals(1, row(table, "insert turned") * 5 / capacity, 1e-6);
        double pull = 2 * 2 / 10.02e-3;
        double capacityOfPull = 1552 * edgeShare();
        assertEquals(1, row(table, "insert pull-out by core shear") * pull / capacityOfPull, 0.002);
    }

    @Test
    void aTestedStrengthGoesBeforeTheFormula() throws IOException {
        ReserveTable table = table("insert: {tested pull: 3 kN}", "0, 100, 0 N", "0, 0, 0 N·m");
        assertEquals(30, row(table, "insert pull-out"), 1e-9);
    }

    @Test
    void withoutDataNothingIsPassed() throws IOException {
        ReserveTable table = table("standoff: 20 mm", "100, 0, 0 N", "0, 10, 0 N·m");
        String all = table.notChecked().toString();
        assertTrue(all.contains("insert turned not checked: needs a bonded flange"), all);
        assertTrue(all.contains("bond of the potting not checked"), all);
        assertTrue(all.contains("bearing of the skin at the insert not checked: needs diameter"), all);
    }

    /** A pad of 60 mm pressed in by P: σc (π r² + 2π r/λ), λ⁴ = Ec/(4 tc D), D = E t³/12(1 − ν²). */
    @Test
    void aPadCrushesTheCoreUnderIt() throws IOException {
        ReserveTable table = table("insert: {kind: pad, adhesive: glue}", "0, -1000, 0 N", "0, 0, 0 N·m");
        double d = 60e9 * Math.pow(0.6e-3, 3) / (12 * (1 - 0.09));
        double lambda = Math.pow(517e6 / 20e-3 / (4 * d), 0.25);
        double r = 30e-3;
        double capacity = 1.5e6 * (Math.PI * r * r + 2 * Math.PI * r / lambda);
        assertEquals(1, row(table, "core crushed under the pad") * 1000 / capacity, 1e-6);
    }
}
