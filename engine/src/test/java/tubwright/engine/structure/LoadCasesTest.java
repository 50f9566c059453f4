// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.solver.Solvers;

/** A thin tube under its own weight, and free in space under forces that only its mass resists. */
class LoadCasesTest {
    private static final int ROUND = 32;
    private static final Mesh TUBE = TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 30, ROUND);
    private static final Structure STRUCTURE = TestStructures.of(TUBE, List.of());
    /** Cross-section of the faceted tube, m². */
    private static final double SECTION =
            2 * TestStructures.RADIUS * ROUND * Math.sin(Math.PI / ROUND) * TestStructures.THICKNESS;

    private static Solution solve(Case wanted) {
        return StaticSolver.solve(STRUCTURE, List.of(wanted), Solvers.best(), new StepTimes())
                .getFirst();
    }

    private static double[] sum(double[] reactions) {
        double[] sum = new double[3];
        for (int n = 0; n < reactions.length / 6; n++) {
            for (int d = 0; d < 3; d++) {
                sum[d] += reactions[6 * n + d];
            }
        }
        return sum;
    }

    private static List<Case.Force> pull(double x, double y, double z) {
        return List.of("front 0", "front 1", "front 2", "front 3").stream()
                .map(name -> new Case.Force(name, new double[] {x / 4, y / 4, z / 4}, new double[3]))
                .toList();
    }

    @Test
    void supportsCarryTheWeight() {
        Case weight = new Case.Loads(
                "weight", TestStructures.torsion().hold(), List.of(), new double[] {0, 0, -9.81}, "test");
        double mass = 2700 * SECTION * TestStructures.LENGTH;
        assertArrayEquals(new double[] {0, 0, 9.81 * mass}, sum(solve(weight).reactions()), 1e-6 * mass);
    }

    @Test
    void supportsCarryForcesAtHardpoints() {
        Case push =
                new Case.Loads("push", TestStructures.torsion().hold(), pull(100, -200, 300), new double[3], "test");
        assertArrayEquals(new double[] {-100, 200, -300}, sum(solve(push).reactions()), 1e-4);
    }

    @Test
    void aFreeBodyNeedsNoReaction() {
        Case kick = new Case.Loads(
                "kick",
                List.of(),
                List.of(new Case.Force("front 1", new double[] {300, -500, 1000}, new double[] {20, 0, 5})),
                new double[3],
                "test");
        double[] reactions = solve(kick).reactions();
        assertEquals(0, Arrays.stream(reactions).map(Math::abs).max().orElse(1), 1e-3);
    }

    /**
     * A free bar pulled at one end carries a force that falls in a straight line to nothing at the other end (elementary
     * statics, from a section of mass m x/L accelerated by F/m): stretch between two stations F/(EA L) ∫ (L − x) dx.
     */
    @Test
    void aFreeTubePulledAtTheFrontStretchesByItsOwnInertia() {
        double force = 1000;
        double[] u = solve(new Case.Loads("pull", List.of(), pull(-force, 0, 0), new double[3], "test"))
                .displacements();
        double stretch = mean(u, 1.2) - mean(u, 0.3);
        double length = TestStructures.LENGTH;
        double expected = force
                / (TestStructures.YOUNGS * SECTION * length)
                * 0.5
                * (Math.pow(length - 0.3, 2) - Math.pow(length - 1.2, 2));
        assertEquals(expected, stretch, 0.01 * expected);
    }

    private static double mean(double[] u, double station) {
        double sum = 0;
        int count = 0;
        for (int n = 0; n < TUBE.nodeCount(); n++) {
            if (Math.abs(TUBE.nodes()[3 * n] - station) < 5e-4) {
                sum += u[6 * n];
                count++;
            }
        }
        return sum / count;
    }
}
