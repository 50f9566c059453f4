// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;

class StiffenerBarsTest {
    /** A bar stood off a skin by e stretches by e·κ when the skin bends: energy ½ (EI + EA e²) κ² L (Steiner). */
    @Test
    void aBarStoodOffTheSkinBendsAboutTheSkin() {
        Mesh strip = TestMeshes.grid(10, 1, false, (a, b) -> new double[] {a, 0.05 * b, 0, 0, 0, 1});
        int[] edge = new int[11];
        for (int i = 0; i <= 10; i++) {
            edge[i] = 2 * i;
        }
        MeshLine line = new MeshLine("edge", MeshLine.Kind.OPENING_EDGE, "strip", "", List.of(edge));
        Stiffener.Section section =
                new Stiffener.Section(200e9, 77e9, 7850, 1e-4, 2e-9, 3e-9, 4e-9, java.util.Optional.empty());
        List<Member> members = new ArrayList<>();
        List<LumpedMass> masses = new ArrayList<>();
        new StiffenerBars(strip).build(0, new Stiffener("edge", section, 0.02, "tube"), line, members, masses);
        double kappa = 1e-3;
        double[] u = new double[6 * strip.nodeCount()];
        for (int n = 0; n < strip.nodeCount(); n++) {
            double x = strip.nodes()[3 * n];
            u[6 * n + 2] = -0.5 * kappa * x * x;
            u[6 * n + 4] = kappa * x;
        }
        double energy = members.stream().mapToDouble(m -> m.energy(u)).sum();
        double expected = 0.5 * (200e9 * 2e-9 + 200e9 * 1e-4 * 0.02 * 0.02) * kappa * kappa;
        assertEquals(1, energy / expected, 1e-9);
        assertEquals(
                7850 * 1e-4, masses.stream().mapToDouble(LumpedMass::mass).sum(), 1e-12, "a metre of bar weighs ρA");
    }
}
