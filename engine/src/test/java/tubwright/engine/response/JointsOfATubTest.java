// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.BoxText;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.JointPoint;
import tubwright.engine.structure.JointRun;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/**
 * A box of two pieces in torsion, from its text to the reserves of its seam. The shear flow is T/2A (Bredt 1896); what it
 * does to a bond line or a rivet is worked out by hand here.
 */
class JointsOfATubTest {
    private static final Ladder LADDER =
            Ladder.of(Family.JOINTS, "Bredt 1896 and Volkersen 1938, worked by hand", Mark.COMPUTED);

    private static final double TORQUE = 3000;
    private static final double FLOW = TORQUE / (2 * 0.4 * 0.3);
    private static final double T = 2e-3;
    private static final double G = 70e9 / 2.6;

    private static final String BOX = BoxText.shape(400, 300, 2000) + """
            materials:
              sheet-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 70 GPa, nu12: 0.3, XT: 300 MPa, S12: 190 MPa,
                  bearing ultimate: 600 MPa, tensile yield: 250 MPa}
              glue:
                kind: film
                properties: {density: 1.2 g/cm³, thickness: 0.2 mm, E1: 2.2 GPa, G12: 0.8 GPa, S12: 40 MPa, ZT: 20 MPa,
                  shear strain limit: 0.5}
            laminates:
              skin: {sheet: sheet-metal, thickness: 2 mm, reference: middle}
              plate: {sheet: sheet-metal, thickness: 10 mm}
            zones:
              skin: {on: [floor, side, deck], laminate: skin}
              ends: {on: [front, rear], laminate: plate}
            pieces:
              lower: [floor, side]
              upper: [deck]
            joints:
              edges:
                walls: all
                bonded: {overlap: 20 mm, adhesive: glue, bond line: 0.2 mm}
              seam:
                seams: all
                JOINT
            """ + BoxText.heldAtTheRear() + """
            cases:
              twist:
                hold: {mount: "x, y, z", top mount: "x, y, z"}
                forces: {pull R: "0, 0, 10000 N", pull L: "0, 0, -10000 N"}
            mesh: {size: 50 mm}
            """;

    @TempDir
    Path folder;

    private record Solved(Structure structure, Solution solution, ReserveTable table) {
        JointRun seam() {
            return structure.jointRuns().stream()
                    .filter(r -> r.joint().line().equals("lower / upper"))
                    .findFirst()
                    .orElseThrow();
        }

        /** The point of the seam closest to a station. */
        JointPoint at(double station) {
            return seam().points().stream()
                    .min(Comparator.comparingDouble(p -> Math.abs(p.place()[0] - station)))
                    .orElseThrow();
        }

        double flow(JointPoint point) {
            return Math.abs(point.forces(solution.displacements())[0]);
        }

        Reserve row(String check) {
            return table.rows().stream()
                    .filter(r -> r.zone().equals("lower / upper") && r.check().startsWith(check))
                    .min(Comparator.comparingDouble(Reserve::value))
                    .orElseThrow(() -> new AssertionError(check + " is not in "
                            + table.rows().stream()
                                    .map(Reserve::check)
                                    .distinct()
                                    .toList()));
        }

        /** The point at which a row was found. */
        JointPoint of(Reserve row) {
            return seam().points().stream()
                    .filter(p -> Arrays.equals(p.place(), row.place()))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private Solved solve(String joint) throws IOException {
        Tub tub = BoxText.read(folder, BOX.replace("JOINT", joint)).asDesigned().tub();
        Mesh mesh = Study.mesh(tub, tub.meshSize());
        Structure structure = Structure.of(tub, mesh);
        List<Solution> solved = StaticSolver.solve(structure, tub.cases(), Solvers.best(), new StepTimes());
        Laminate[] laminates = mesh.regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        return new Solved(structure, solved.getFirst(), Reserves.of(structure, laminates, solved, StrengthBasis.USUAL));
    }

    @Test
    void theSeamCarriesBredtsShearFlow() throws IOException {
        Solved solved = solve("bonded: {overlap: 20 mm, adhesive: glue, bond line: 0.2 mm}");
        for (double station : new double[] {0.8, 1.0, 1.2}) {
            LADDER.within(
                    0.01,
                    "Shear flow of a seam in a box under torque, station " + station + " m (N/m)",
                    "50 mm",
                    FLOW,
                    solved.flow(solved.at(station)));
        }
    }

    /** Volkersen with G t for E t: τ = (q/l)(ω/2) coth(ω/2), ω² = 2 Ga l²/(G t ta); q that of the place, or Bredt's. */
    @Test
    void theBondShearsAtItsEndsAsVolkersenSays() throws IOException {
        double l = 20e-3;
        Solved solved = solve("bonded: {overlap: 20 mm, adhesive: glue, bond line: 0.2 mm}");
        double half = 0.5 * Math.sqrt(2 * 0.8e9 * l * l / (G * T * 0.2e-3));
        double rise = half / Math.tanh(half);
        Reserve ductile = solved.row("shear of the bond line beyond yield");
        double elastic = 40e6 / 0.8e9;
        double energy = 2 * 0.2e-3 * 40e6 * (elastic / 2 + 0.5 - elastic);
        double capacity = Math.min(40e6 * l, Math.sqrt(energy * G * T * 2));
        double flow = solved.flow(solved.of(ductile));
        assertTrue(ductile.value() <= 1.0001 * capacity / flow, "pull across may only lower it");
        assertEquals(1, ductile.value() / (capacity / flow), 0.05);
        Reserve shear = solved.row("shear at the end of the bond line");
        double bound = 40e6 / (solved.flow(solved.of(shear)) / l * rise);
        assertTrue(shear.value() <= 1.0001 * bound, shear.value() + " against " + bound);
        assertTrue(shear.value() < ductile.value(), "a ductile adhesive bears more than its elastic ends");
    }

    /** One rivet takes q p: bearing q p/(d t), shank q p/(π d²/4); rows share evenly when there are two. */
    @Test
    void aRivetTakesTheFlowOfItsPitch() throws IOException {
        Solved one = solve("riveted: {diameter: 4 mm, pitch: 25 mm, fastener: sheet-metal, sheets: \"2, 2 mm\","
                + " sheet material: sheet-metal}");
        Reserve bearing = one.row("bearing");
        double[] f = one.of(bearing).forces(one.solution.displacements());
        double load = Math.hypot(f[0], f[1]) * 25e-3;
        LADDER.within(
                1e-6,
                "Bearing of a rivet in a seam, factor from the force of its place",
                "50 mm",
                600e6 * 4e-3 * T / load,
                bearing.value());
        JointPoint middle = one.at(1.0);
        LADDER.within(
                0.01,
                "Load of a rivet in a box under torque, T p/2A (N)",
                "50 mm",
                FLOW * 25e-3,
                one.flow(middle) * 25e-3);
        Solved two = solve("riveted: {diameter: 4 mm, pitch: 25 mm, rows: 2, row spacing: 12 mm, fastener: sheet-metal,"
                + " sheets: \"2, 2 mm\", sheet material: sheet-metal}");
        assertTrue(two.row("bearing").value() > 1.6 * bearing.value(), "two rows halve the load");
    }

    @Test
    void whatIsNotKnownIsNotPassed() throws IOException {
        Solved solved = solve("bonded: {overlap: 20 mm, adhesive: paste-epoxy, bond line: 0.2 mm}");
        assertTrue(
                solved.table().notChecked().stream().anyMatch(n -> n.toString().contains("ZT of paste-epoxy")),
                () -> solved.table().notChecked().toString());
    }
}
