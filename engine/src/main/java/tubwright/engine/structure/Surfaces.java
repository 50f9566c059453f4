// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import tubwright.engine.mesh.Mesh;

/** Small geometric questions about mesh elements. */
final class Surfaces {
    private Surfaces() {}

    /** Unit mean of the true surface normals at the corners of element {@code e}. */
    static double[] normal(Mesh mesh, int e) {
        double[] n = new double[3];
        for (int c = 0; c < mesh.cornerCount(e); c++) {
            for (int d = 0; d < 3; d++) {
                n[d] += mesh.cornerNormals()[12 * e + 3 * c + d];
            }
        }
        return Vectors.unit(n);
    }

    /** Mean of the corners of element {@code e}, m. */
    static double[] centre(Mesh mesh, int e) {
        double[] x = new double[3];
        int corners = mesh.cornerCount(e);
        for (int c = 0; c < corners; c++) {
            for (int d = 0; d < 3; d++) {
                x[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / corners;
            }
        }
        return x;
    }
}
