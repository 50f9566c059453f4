// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.solver.Solvers;

class ClosedTubeTest {
    private static final Ladder BREDT =
            Ladder.of(Family.BEAMS, "Bredt 1896, G 2πR³t times the polygon of the facets", Mark.EXACT);

    private static double rigidity(int round, DirectSolver solver) {
        Structure structure =
                TestStructures.of(TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 30, round), List.of());
        Solution solution = StaticSolver.solve(structure, List.of(TestStructures.torsion()), solver, new StepTimes())
                .getFirst();
        assertTrue(solution.residual() < 1e-12);
        double[] u = solution.displacements();
        double twist = TestStructures.twist(structure, u, 0.5) - TestStructures.twist(structure, u, 1.0);
        return TestStructures.COUPLE * 0.5 / twist;
    }

    /** Bredt (1896): GJ = G 2πR³t for a thin circular tube; n flat facets lose the share of lesson L4. */
    @Test
    void aTubeOfFacetsTwistsAsBredtSaysForItsPolygon() {
        double bredt =
                TestStructures.SHEAR * 2 * Math.PI * Math.pow(TestStructures.RADIUS, 3) * TestStructures.THICKNESS;
        for (int n : new int[] {24, 48}) {
            double cos = Math.cos(Math.PI / n);
            double polygon = n / Math.PI * Math.sin(Math.PI / n) * cos * cos;
            BREDT.within(
                    4e-3,
                    "Round tube between hardpoints, GJ (N·m²)",
                    "30 × " + n + " quads",
                    polygon * bredt,
                    rigidity(n, Solvers.pureJava()));
        }
    }

    @Test
    void bothSolversGiveTheSameTube() {
        Solvers.nativeIfPresent()
                .ifPresent(found -> assertEquals(1, rigidity(24, found) / rigidity(24, Solvers.pureJava()), 1e-9));
    }
}
