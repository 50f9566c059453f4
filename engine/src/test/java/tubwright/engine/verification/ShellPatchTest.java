// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Patch tests on the distorted mesh of MacNeal and Harder (1985, Finite Elem. Anal. Des. 1:3), geometry and fields from
 * memory of the paper, expected strains by differentiating the fields.
 */
class ShellPatchTest {
    private static final Ladder LADDER =
            Ladder.of(Family.ELEMENT, "Patch test of MacNeal and Harder 1985", Mark.MEMORY_CONFIRMED);

    private static final double[][] NODES = {
        {0, 0}, {.24, 0}, {.24, .12}, {0, .12}, {.04, .02}, {.18, .03}, {.16, .08}, {.08, .08}
    };
    private static final int[][] QUADS = {{0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}, {4, 5, 6, 7}};

    /** Meshes by name: quads, and the same quads cut along either diagonal. */
    private static ShellModel patch(String mesh, double[] laminate) {
        ShellModel m = new ShellModel(laminate);
        for (double[] x : NODES) {
            m.node(x[0], x[1], 0);
        }
        for (int[] q : QUADS) {
            switch (mesh) {
                case "quads" -> m.element(q);
                case "triangles" -> m.triangles(false, q[0], q[1], q[2], q[3]);
                default -> m.triangles(true, q[0], q[1], q[2], q[3]);
            }
        }
        return m;
    }

    /** Prescribes a field on the four outer nodes, solves, and asks for the same strain at every strain point. */
    private static void holds(
            String name,
            String mesh,
            ShellModel m,
            BiFunction<Double, Double, double[]> field,
            double[] strain,
            double tol) {
        double worst = 0;
        for (int i = 0; i < 4; i++) {
            double[] u = field.apply(NODES[i][0], NODES[i][1]);
            for (int f = 0; f < 6; f++) {
                m.prescribe(i, f, u[f]);
            }
        }
        m.solve();
        for (int i = 4; i < 8; i++) {
            double[] u = field.apply(NODES[i][0], NODES[i][1]);
            for (int f = 0; f < 6; f++) {
                worst = Math.max(worst, Math.abs(u[f] - m.at(i, f)) / 1e-3);
            }
        }
        ShellWorkspace w = new ShellWorkspace();
        double[] e = new double[9];
        for (int k = 0; k < m.elements.size(); k++) {
            m.strainPoints(k, w);
            for (int p = 0; p < w.points(); p++) {
                w.strainAt(p, m.elementDisplacement(k), e);
                for (int i = 0; i < 9; i++) {
                    worst = Math.max(worst, Math.abs(strain[i] - e[i]) / 1e-3);
                }
            }
        }
        LADDER.vanishes("Patch: " + name + ", largest error of motion and strain", mesh, worst, tol);
    }

    private static double[] membraneField(double x, double y) {
        return new double[] {1e-3 * (x + y / 2), 1e-3 * (y + x / 2), 0, 0, 0, 0};
    }

    private static double[] bendingField(double x, double y) {
        return new double[] {0, 0, 1e-3 * (x * x + x * y + y * y) / 2, 1e-3 * (y + x / 2), -1e-3 * (x + y / 2), 0};
    }

    private static final double[] STRETCHED = {1e-3, 1e-3, 1e-3, 0, 0, 0, 0, 0, 0};
    private static final double[] BENT = {0, 0, 0, -1e-3, -1e-3, -1e-3, 0, 0, 0};

    @ParameterizedTest
    @ValueSource(strings = {"quads", "triangles", "triangles cut the other way"})
    void constantStretchIsExact(String mesh) {
        holds(
                "stretch",
                mesh,
                patch(mesh, Laminates.isotropic(1e6, .25, .001)),
                ShellPatchTest::membraneField,
                STRETCHED,
                1e-10);
    }

    @ParameterizedTest
    @ValueSource(strings = {"quads", "triangles", "triangles cut the other way"})
    void constantBendingIsExact(String mesh) {
        holds(
                "bending",
                mesh,
                patch(mesh, Laminates.isotropic(1e6, .25, .001)),
                ShellPatchTest::bendingField,
                BENT,
                1e-8);
    }

    @ParameterizedTest
    @ValueSource(strings = {"quads", "triangles", "triangles cut the other way"})
    void anUnsymmetricLaminateStretchesAndBendsExactly(String mesh) {
        // Ply angles, moduli near those of a carbon/epoxy ply; the reference surface lies off the middle.
        double[] c = Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 4e9, .005, .004, 0, 30, -45);
        holds(
                "stretch, [0/30/−45] off its middle",
                mesh,
                patch(mesh, c),
                ShellPatchTest::membraneField,
                STRETCHED,
                1e-10);
        holds("bending, [0/30/−45] off its middle", mesh, patch(mesh, c), ShellPatchTest::bendingField, BENT, 1e-10);
    }

    @ParameterizedTest
    @ValueSource(strings = {"quads", "triangles", "triangles cut the other way"})
    void aLaminateOtherThanTheNominalOneStillPasses(String mesh) {
        ShellModel m = patch(mesh, Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 4e9, .005, .004, 0, 30, -45));
        m.nominal = Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 4e9, .005, .004, 45, -45, 45, 0);
        m.reference = x -> new double[] {1, 0, 0};
        holds("stretch, other than the nominal laminate", mesh, m, ShellPatchTest::membraneField, STRETCHED, 1e-10);
        ShellModel b = patch(mesh, m.laminate);
        b.nominal = m.nominal;
        holds("bending, other than the nominal laminate", mesh, b, ShellPatchTest::bendingField, BENT, 1e-10);
    }

    @ParameterizedTest
    @ValueSource(strings = {"quads", "triangles", "triangles cut the other way"})
    void spinningInPlaneCostsNothing(String mesh) {
        holds(
                "spin in the plane, no energy",
                mesh,
                patch(mesh, Laminates.isotropic(1e6, .25, .001)),
                (x, y) -> new double[] {-1e-3 * y, 1e-3 * x, 0, 0, 0, 1e-3},
                new double[9],
                1e-10);
    }

    @Test
    void constantTransverseShearIsExactOnRectangles() {
        ShellModel m = new ShellModel(Laminates.isotropic(1e6, .25, .01));
        ObstacleCourse.grid(m, ObstacleCourse.Kind.QUADS, 3, 2, (a, b) -> new double[] {.24 * a, .12 * b, 0});
        for (int i = 0; i < m.nodes.size(); i++) {
            // Constant shear without bending needs moments spread over the plate: hold the rotations everywhere.
            m.hold(i, 0, 1, 3, 4, 5);
            if (i != 5 && i != 6) {
                m.prescribe(i, 2, 1e-3 * m.nodes.get(i)[0]);
            }
        }
        m.solve();
        ShellWorkspace w = new ShellWorkspace();
        double[] e = new double[9];
        double worst = 0;
        for (int k = 0; k < m.elements.size(); k++) {
            m.strainPoints(k, w);
            w.strainAt(k % 4, m.elementDisplacement(k), e);
            worst = Math.max(worst, Math.max(Math.abs(e[6] - 1e-3), Math.abs(e[7])) / 1e-3);
        }
        LADDER.vanishes("Patch: transverse shear, largest error", "3 × 2 rectangles", worst, 1e-9);
    }
}
