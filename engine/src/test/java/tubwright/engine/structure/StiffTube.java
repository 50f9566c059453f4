// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.laminate.ShellStiffness;
import tubwright.engine.mesh.Mesh;

/** A round aluminium tube whose ends are tied to the hardpoints "root" (x = 0) and "tip" on its axis by stiff springs. */
final class StiffTube {
    private StiffTube() {}

    static Structure of(double radius, double length, double thickness, int along, int round) {
        Mesh mesh = TestMeshes.tube(radius, length, along, round);
        List<Member> members = new ArrayList<>();
        List<Hardpoint> hardpoints = new ArrayList<>();
        for (int end = 0; end < 2; end++) {
            double[] centre = {end * length, 0, 0};
            hardpoints.add(new Hardpoint(end == 0 ? "root" : "tip", "skin", centre, 0.01, 1e9, 1e5, 0));
            for (int j = 0; j < round; j++) {
                int n = end * along * round + j;
                double[] x = java.util.Arrays.copyOfRange(mesh.nodes(), 3 * n, 3 * n + 3);
                members.add(spoke(1 + end, mesh.nodeCount() + end, centre, n, x));
            }
        }
        ShellStiffness sheet = ShellStiffness.isotropic(TestStructures.YOUNGS, TestStructures.POISSON, thickness, 2700);
        Structure.Masses masses = new Structure.Masses(
                new double[] {sheet.arealMass()}, new double[1], new double[] {sheet.secondMassMoment()}, List.of());
        List<Part> parts = List.of(
                new Part(Part.Kind.ZONE, "skin"),
                new Part(Part.Kind.HARDPOINT, "root"),
                new Part(Part.Kind.HARDPOINT, "tip"));
        return new Structure(
                mesh, new double[][] {sheet.matrix()}, parts, new int[1], hardpoints, members, masses, List.of());
    }

    /** Ties the movement of a rim node to the rigid motion of the hub. */
    private static ElasticTie spoke(int owner, int hub, double[] centre, int rim, double[] x) {
        Interpolation fromHub = Interpolation.ofNode(hub, centre, x);
        Interpolation fromRim = Interpolation.ofNode(rim, x, x);
        double[][] rows = new double[3][12];
        double[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        for (int r = 0; r < 3; r++) {
            fromRim.addTranslation(rows[r], 0, 1, axes[r]);
            fromHub.addTranslation(rows[r], 1, -1, axes[r]);
        }
        return new ElasticTie(owner, new int[] {rim, hub}, rows, new double[] {1e10, 1e10, 1e10});
    }
}
