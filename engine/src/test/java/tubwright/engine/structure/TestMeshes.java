// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.mesh.Region;

/** Meshes made by hand for tests that need one without a tub around it. */
public final class TestMeshes {
    private TestMeshes() {}

    /** Where a grid node lies and which way its normal points. */
    @FunctionalInterface
    public interface Surface {
        /** Position and normal (6 numbers) at parameters 0..1. */
        double[] at(double a, double b);
    }

    /** A grid of quadrilaterals over one surface, in one region, with a-direction reference. */
    public static Mesh grid(int na, int nb, boolean closedB, Surface surface) {
        int rows = closedB ? nb : nb + 1;
        double[] nodes = new double[3 * (na + 1) * rows];
        double[] normals = new double[3 * (na + 1) * rows];
        for (int i = 0; i <= na; i++) {
            for (int j = 0; j < rows; j++) {
                double[] p = surface.at((double) i / na, (double) j / nb);
                System.arraycopy(p, 0, nodes, 3 * (i * rows + j), 3);
                System.arraycopy(p, 3, normals, 3 * (i * rows + j), 3);
            }
        }
        int[] elements = new int[4 * na * nb];
        double[] cornerNormals = new double[12 * na * nb];
        double[] reference = new double[3 * na * nb];
        for (int i = 0; i < na; i++) {
            for (int j = 0; j < nb; j++) {
                int e = i * nb + j;
                int next = (j + 1) % rows;
                int[] corners = {i * rows + j, (i + 1) * rows + j, (i + 1) * rows + next, i * rows + next};
                for (int c = 0; c < 4; c++) {
                    elements[4 * e + c] = corners[c];
                    System.arraycopy(normals, 3 * corners[c], cornerNormals, 12 * e + 3 * c, 3);
                }
                double[] along = new double[3];
                for (int d = 0; d < 3; d++) {
                    along[d] = nodes[3 * corners[1] + d] - nodes[3 * corners[0] + d];
                }
                System.arraycopy(Vectors.unit(along), 0, reference, 3 * e, 3);
            }
        }
        Region region = new Region("skin", Region.Surface.SKIN, "skin", List.of(), "tube", false);
        return new Mesh(
                nodes,
                elements,
                cornerNormals,
                reference,
                new int[na * nb],
                List.of(region),
                new ArrayList<MeshLine>());
    }

    /** A circular tube along x. The normal points outward. */
    public static Mesh tube(double radius, double length, int along, int round) {
        return grid(along, round, true, (a, b) -> {
            // Runs clockwise seen from the rear so that (along x, round) has its normal outward.
            double angle = 2 * Math.PI * b;
            double y = Math.cos(angle);
            double z = Math.sin(angle);
            return new double[] {length * a, radius * y, radius * z, 0, y, z};
        });
    }
}
