// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Surroundings;

/** Flat rectangles of shells for the tests, pulled along x. */
final class Strips {
    private Strips() {}

    /** Nodes row by row along x; one region an element where asked, else one for all. */
    static Mesh mesh(double length, double width, int along, int across, double z, boolean each) {
        double[] nodes = new double[3 * (along + 1) * (across + 1)];
        for (int k = 0; k < nodes.length / 3; k++) {
            nodes[3 * k] = length * (k % (along + 1)) / along;
            nodes[3 * k + 1] = width * (k / (along + 1)) / across;
            nodes[3 * k + 2] = z;
        }
        int elements = along * across;
        int[] corners = new int[4 * elements];
        double[] normals = new double[12 * elements];
        double[] directions = new double[3 * elements];
        int[] regions = new int[elements];
        for (int e = 0; e < elements; e++) {
            int a = e / along * (along + 1) + e % along;
            int[] own = {a, a + 1, a + along + 2, a + along + 1};
            System.arraycopy(own, 0, corners, 4 * e, 4);
            for (int c = 0; c < 4; c++) {
                normals[12 * e + 3 * c + 2] = 1;
            }
            directions[3 * e] = 1;
            regions[e] = each ? e : 0;
        }
        List<Region> all = IntStream.range(0, each ? elements : 1)
                .mapToObj(e -> new Region("strip", Region.Surface.WALL, "strip", List.of(), "strip", false))
                .toList();
        return new Mesh(nodes, corners, normals, directions, regions, all, List.of());
    }

    /** Pulled along x at its far edge by 1 N in all, evenly stretched: the near edge held along x, all held out of plane. */
    static SpreadModel pulled(Mesh mesh, Laminate[] laminates, int along, int across, Energies energies) {
        return pulled(mesh, laminates, along, across, energies, 0);
    }

    /**
     * The same with something elastic beside it that the load may take.
     *
     * @param beside its stiffness along x at each node of the far edge, N/m
     */
    static SpreadModel pulled(
            Mesh mesh, Laminate[] laminates, int along, int across, Energies energies, double beside) {
        double[][] stiffness = new double[laminates.length][];
        for (int r = 0; r < laminates.length; r++) {
            stiffness[r] = laminates[r].stiffness().matrix();
        }
        int n = mesh.nodeCount();
        double[] load = new double[6 * n];
        boolean[] fixed = new boolean[6 * n];
        for (int j = 0; j <= across; j++) {
            int near = j * (along + 1);
            fixed[6 * near] = true;
            fixed[6 * near + 5] = true;
            fixed[6 * (near + along) + 5] = true;
            load[6 * (near + along)] = (j == 0 || j == across ? 0.5 : 1) / across;
        }
        for (int k = 0; k < n; k++) {
            fixed[6 * k + 2] = true;
            fixed[6 * k + 3] = true;
            fixed[6 * k + 4] = true;
        }
        fixed[1] = true;
        int[] border = beside > 0
                ? IntStream.rangeClosed(0, across)
                        .map(j -> j * (along + 1) + along)
                        .toArray()
                : new int[0];
        int size = 6 * border.length;
        double[] rest = new double[size * size];
        for (int b = 0; b < border.length; b++) {
            rest[6 * b * (size + 1)] = beside;
        }
        return new SpreadModel(
                Structure.ofShells(mesh, stiffness),
                laminates,
                StrengthBasis.USUAL,
                energies,
                IntStream.range(0, mesh.elementCount()).toArray(),
                List.of(),
                new Surroundings(IntStream.range(0, n).toArray(), border, rest, load, 0, fixed));
    }
}
