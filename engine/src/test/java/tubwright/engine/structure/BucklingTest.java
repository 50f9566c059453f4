// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.numerics.solver.Solvers;

/** Buckling of a whole structure against Euler. */
class BucklingTest {
    private static final boolean[] ALL = {true, true, true, true, true, true};

    @Test
    void aSlenderTubeHeldAtOneEndBucklesAsEulerAndEngesserSay() {
        double radius = 0.02;
        double length = 1;
        double thickness = 0.002;
        Structure tube = StiffTube.of(radius, length, thickness, 20, 16);
        Case push = new Case.Bending(
                "push", List.of(new Case.Support("root", ALL)), List.of("tip"), new double[] {-1000, 0, 0}, 0.5);
        List<Solution> solutions = StaticSolver.solve(tube, List.of(push), Solvers.best(), new StepTimes());
        BucklingAnswer answer =
                Buckling.solve(tube, solutions, 3, 1, Solvers.best()).getFirst();
        // Sixteen facets: second moment of the polygon of thin walls, ∮ z² t ds.
        double side = 2 * radius * Math.sin(Math.PI / 16);
        double apothem = radius * Math.cos(Math.PI / 16);
        double inertia = 16 * side * thickness * (apothem * apothem + side * side / 12) / 2;
        double euler = Math.PI * Math.PI * TestStructures.YOUNGS * inertia / (4 * length * length);
        double shear = TestStructures.SHEAR * 16 * side * thickness / 2;
        double critical = 1 / (1 / euler + 1 / shear);
        assertEquals(1, 1000 * answer.modes().get(0).factor() / critical, 0.01);
        // Round: two planes alike.
        assertEquals(1, answer.modes().get(1).factor() / answer.modes().get(0).factor(), 1e-6);
        assertTrue(answer.count().complete());
        assertEquals("skin", tube.parts().get(answer.modes().get(0).part()).name());
        assertEquals(length, answer.modes().get(0).place()[0], 0.06);
        assertTrue(answer.reversed().isEmpty()
                || answer.reversed().getFirst().factor()
                        < -20 * answer.modes().get(0).factor());
    }
}
