// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/**
 * A tube in two lengths, bonded round its middle. Round a closed tube the shear flow is T / 2πR² (Bredt 1896), so a bond
 * of shear stiffness k per length slips by q/k and the twist line steps by T / (2πR³k).
 */
class JointTiesTest {
    private static final double CIRCUMFERENCE = 2 * Math.PI * TestStructures.RADIUS;
    /** What a tube of n facets encloses less than a round one, to the power that torsion asks for. */
    private static final double POLYGON = 48 / Math.PI * Math.sin(Math.PI / 48) * Math.pow(Math.cos(Math.PI / 48), 2);

    private static final Ladder BREDT =
            Ladder.of(Family.BEAMS, "Bredt 1896, T L/G 2πR³t, over the polygon of the facets", Mark.EXACT);
    private static final Ladder SLIP = Ladder.of(Family.BEAMS, "Bredt 1896, shear flow T/2πR² over k", Mark.EXACT);
    private static final Ladder GEOMETRY =
            Ladder.of(Family.BEAMS, "Perimeter of the polygon, 2nR sin(π/n)", Mark.EXACT);

    private static Joint bond(double stiffness) {
        return new Joint("front / rear", stiffness, stiffness, stiffness, stiffness * 1e-4, 0.02, 0, 0, "bond");
    }

    private static Solution solve(Structure structure) {
        return StaticSolver.solve(structure, List.of(TestStructures.torsion()), Solvers.pureJava(), new StepTimes())
                .getFirst();
    }

    private static double stretch(Structure structure, double[] u) {
        return TestStructures.twist(structure, u, 0.5) - TestStructures.twist(structure, u, 1.0);
    }

    /**
     * Half a metre of tube with the bond in its middle, as if there were none. Four inserts that stand in the skin 400 mm
     * and more away and the ends of the part measured leave 4 parts in a thousand.
     */
    @Test
    void aStiffBondMakesTwoLengthsOneTube() {
        double exact = TestStructures.COUPLE
                * 0.5
                / (TestStructures.SHEAR
                        * 2
                        * Math.PI
                        * Math.pow(TestStructures.RADIUS, 3)
                        * TestStructures.THICKNESS
                        * POLYGON);
        Structure whole =
                TestStructures.of(TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 30, 48), List.of());
        double one = stretch(whole, solve(whole).displacements());
        BREDT.within(4e-3, "Tube of one length, twist (rad)", "30 × 48 quads", exact, one);
        for (boolean turned : new boolean[] {false, true}) {
            Structure bonded = TestStructures.of(TestStructures.twoLengths(30, 48, turned), List.of(bond(1e13)));
            double two = stretch(bonded, solve(bonded).displacements());
            BREDT.within(
                    turned ? 8e-3 : 4e-3,
                    "Tube of two lengths tied together, twist (rad)",
                    turned ? "30 × 48 quads, turned by half a facet" : "30 × 48 quads, meshes that match",
                    exact,
                    two);
            assertEquals(1, two / one, turned ? 5e-3 : 1e-3);
        }
    }

    @Test
    void aSoftBondSlipsAsItsShearFlowSays() {
        double k = 2e9;
        Structure stiff = TestStructures.of(TestStructures.twoLengths(30, 48, false), List.of(bond(1e13)));
        Structure soft = TestStructures.of(TestStructures.twoLengths(30, 48, false), List.of(bond(k)));
        double step = stretch(soft, solve(soft).displacements())
                - stretch(stiff, solve(stiff).displacements());
        double expected = TestStructures.COUPLE / (CIRCUMFERENCE * Math.pow(TestStructures.RADIUS, 2) * k);
        SLIP.within(0.01, "Bond slipping round a tube, step of the twist line (rad)", "30 × 48 quads", expected, step);
    }

    /** Even shear flow is the least the bond can store for its torque (Cauchy-Schwarz); four inserts make it less even. */
    @Test
    void theBondStoresTheEnergyOfItsSlip() {
        double k = 2e9;
        Structure soft = TestStructures.of(TestStructures.twoLengths(30, 48, false), List.of(bond(k)));
        Solution solution = solve(soft);
        double[] elements = StrainEnergy.ofElements(soft, solution.displacements());
        double[] parts = StrainEnergy.ofParts(soft, solution.displacements(), elements);
        double flow = TestStructures.COUPLE / (CIRCUMFERENCE * TestStructures.RADIUS);
        double expected = 0.5 * flow * flow / k * CIRCUMFERENCE;
        double ratio = parts[parts.length - 1] / expected;
        assertTrue(ratio > 1 && ratio < 1.1, "ratio " + ratio);
        double sum = 0;
        for (double part : parts) {
            sum += part;
        }
        assertEquals(solution.work(), sum, 1e-9 * sum, "the parts' energies add up to the work of the loads");
    }

    @Test
    void theWholeLineIsTied() {
        Structure bonded = TestStructures.of(TestStructures.twoLengths(30, 48, true), List.of(bond(1e11)));
        double polygon = 48 * 2 * TestStructures.RADIUS * Math.sin(Math.PI / 48);
        GEOMETRY.within(
                1e-9,
                "Length of line tied, meshes turned by half a facet (m)",
                "30 × 48 quads",
                polygon,
                bonded.jointRuns().getFirst().length());
    }

    @Test
    void twoLengthsWithoutABondAreRefusedByName() {
        Structure apart = TestStructures.of(TestStructures.twoLengths(10, 16, false), List.of());
        StructureException refusal = assertThrows(StructureException.class, () -> solve(apart));
        assertTrue(refusal.getMessage().contains("leaves a motion free"), refusal.getMessage());
    }

    @Test
    void reactionsBalanceTheCouple() {
        Structure bonded = TestStructures.of(TestStructures.twoLengths(20, 24, true), List.of(bond(1e11)));
        Solution solution = solve(bonded);
        double[] x = bonded.positions();
        double moment = 0;
        double[] force = new double[3];
        for (int n = 0; n < bonded.nodeCount(); n++) {
            double[] r = solution.reactions();
            moment += x[3 * n + 1] * r[6 * n + 2] - x[3 * n + 2] * r[6 * n + 1] + r[6 * n + 3];
            for (int d = 0; d < 3; d++) {
                force[d] += r[6 * n + d];
            }
        }
        assertEquals(-TestStructures.COUPLE, moment, 1e-7 * TestStructures.COUPLE);
        for (int d = 0; d < 3; d++) {
            assertEquals(0, force[d], 1e-6 * TestStructures.COUPLE);
        }
    }
}
