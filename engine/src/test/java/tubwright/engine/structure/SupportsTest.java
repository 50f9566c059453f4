// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.numerics.solver.Solvers;

class SupportsTest {
    private static final Structure TUBE =
            TestStructures.of(TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 20, 24), List.of());

    private static Case.Bending bending() {
        List<Case.Support> hold = new ArrayList<>(TestStructures.torsion().hold());
        hold.add(new Case.Support("front 0", new boolean[] {false, false, true, false, false, false}));
        hold.add(new Case.Support("front 3", new boolean[] {false, false, true, false, false, false}));
        return new Case.Bending("bending", hold, List.of("front 1", "front 2"), new double[] {0, 300, -1000}, 0.4);
    }

    /** Supports beyond the common ones are held by forces: the answer must be that of a factorisation of its own. */
    @Test
    void casesThatShareAFactorisationAnswerAsIfEachHadItsOwn() {
        StepTimes times = new StepTimes();
        List<Solution> together =
                StaticSolver.solve(TUBE, List.of(TestStructures.torsion(), bending()), Solvers.pureJava(), times);
        assertEquals(1, times.factorisations);
        Solution alone = StaticSolver.solve(TUBE, List.of(bending()), Solvers.pureJava(), new StepTimes())
                .getFirst();
        double largest = 0;
        for (double u : alone.displacements()) {
            largest = Math.max(largest, Math.abs(u));
        }
        assertArrayEquals(alone.displacements(), together.get(1).displacements(), 1e-9 * largest);
        assertArrayEquals(alone.reactions(), together.get(1).reactions(), 1e-6 * 1000);
        assertEquals(alone.work(), together.get(1).work(), 1e-9 * alone.work());
    }

    /** Maxwell (1864), Betti (1872): the work of one case's loads through the other's motion is the same both ways. */
    @Test
    void theWorkOfOneLoadThroughTheOtherMotionIsMutual() {
        Case.Torsion torsion = TestStructures.torsion();
        Case.Bending push =
                new Case.Bending("push", torsion.hold(), List.of("front 1"), new double[] {200, 300, -1000}, 0.4);
        List<Solution> solutions =
                StaticSolver.solve(TUBE, List.of(torsion, push), Solvers.pureJava(), new StepTimes());
        double first = dot(CaseLoads.loads(TUBE, torsion), solutions.get(1).displacements());
        double second = dot(CaseLoads.loads(TUBE, push), solutions.get(0).displacements());
        assertEquals(first, second, 1e-9 * Math.abs(first));
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
