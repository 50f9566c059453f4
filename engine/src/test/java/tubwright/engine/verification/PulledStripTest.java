// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.laminate.ShellStiffness;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ObstacleCourse.Kind;

/** An unsymmetric strip that is pulled bends, and bends the right way (Jones 1999, laminates with coupling). */
class PulledStripTest {
    /** Strain and curvature are uniform: of N alone, ε and κ are columns of the compliance of A, B, D; w = −κ x²/2. */
    @ParameterizedTest
    @EnumSource(names = {"QUADS", "TRIANGLES"})
    void theStiffPlyGoesToTheInsideOfTheBend(Kind kind) {
        Ply ply = Stacks.ply(181e9, 10.3e9, .28, 7.17e9, 7.17e9, 4e9);
        // The stiff ply outside, on the side the normal (+z) points to: the strip bends up, its tip rises.
        ShellStiffness shell = new Laminate(
                        List.of(new Layer(ply, 1e-3, 0), new Layer(ply, 1e-3, Math.PI / 2)), Reference.MIDDLE)
                .stiffness();
        double pull = 1e4;
        double curvature = shell.compliance()[8 * 3] * pull;
        ShellModel m = new ShellModel(shell.matrix());
        ObstacleCourse.grid(m, kind, 8, 2, (a, b) -> new double[] {a, .2 * (b - .5), 0});
        int root = 0;
        int tip = 0;
        for (int i = 0; i < m.nodes.size(); i++) {
            double[] x = m.nodes.get(i);
            boolean middle = Math.abs(x[1]) < 1e-9;
            if (x[0] < 1e-9) {
                m.hold(i, 0, 4, 5);
                root = middle ? i : root;
            } else if (x[0] > 1 - 1e-9) {
                m.load(i, 0, pull * (middle ? .1 : .05));
                tip = middle ? i : tip;
            }
        }
        m.hold(root, 1, 2, 3);
        m.solve();
        assertTrue(curvature < 0, "of the stiff ply outside");
        // Nodal forces in the ratio 1 : 2 : 1 are the pull but for the bow of the end's sides.
        assertEquals(1, m.at(tip, 2) / (-curvature / 2), 1e-3);
    }
}
