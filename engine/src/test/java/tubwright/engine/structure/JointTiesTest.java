// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.numerics.solver.Solvers;

/**
 * A tube in two lengths, bonded round its middle. Round a closed tube the shear flow is T / 2πR² (Bredt 1896), so a bond
 * of shear stiffness k per length slips by q/k and the twist line steps by T / (2πR³k).
 */
class JointTiesTest {
    private static final double CIRCUMFERENCE = 2 * Math.PI * TestStructures.RADIUS;

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

    @Test
    void aStiffBondMakesTwoLengthsOneTube() {
        Structure whole =
                TestStructures.of(TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 30, 48), List.of());
        Structure bonded = TestStructures.of(TestStructures.twoLengths(30, 48, false), List.of(bond(1e13)));
        double one = stretch(whole, solve(whole).displacements());
        double two = stretch(bonded, solve(bonded).displacements());
        assertEquals(1, two / one, 1e-3);
    }

    @Test
    void meshesThatDoNotMatchTieAlmostAsWell() {
        Structure whole =
                TestStructures.of(TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 30, 48), List.of());
        Structure bonded = TestStructures.of(TestStructures.twoLengths(30, 48, true), List.of(bond(1e13)));
        double one = stretch(whole, solve(whole).displacements());
        double two = stretch(bonded, solve(bonded).displacements());
        assertEquals(1, two / one, 5e-3);
    }

    @Test
    void aSoftBondSlipsAsItsShearFlowSays() {
        double k = 2e9;
        Structure stiff = TestStructures.of(TestStructures.twoLengths(30, 48, false), List.of(bond(1e13)));
        Structure soft = TestStructures.of(TestStructures.twoLengths(30, 48, false), List.of(bond(k)));
        double step = stretch(soft, solve(soft).displacements())
                - stretch(stiff, solve(stiff).displacements());
        double expected = TestStructures.COUPLE / (CIRCUMFERENCE * Math.pow(TestStructures.RADIUS, 2) * k);
        assertEquals(1, step / expected, 0.01);
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
        assertEquals(polygon, bonded.jointRuns().getFirst().length(), 1e-9);
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
