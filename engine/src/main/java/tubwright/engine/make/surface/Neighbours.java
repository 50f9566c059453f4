// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

import java.util.Arrays;
import tubwright.engine.mesh.Mesh;

/** Which elements of a mesh share a side. */
public final class Neighbours {
    private Neighbours() {}

    /** 4 numbers per element: the element across each of its sides, −1 where there is none. */
    public static int[] of(Mesh mesh) {
        int[] across = new int[4 * mesh.elementCount()];
        Arrays.fill(across, -1);
        // Sides hang in a chain at the node they leave from until their other element comes.
        int[] head = new int[mesh.nodeCount()];
        int[] chain = new int[across.length];
        Arrays.fill(head, -1);
        for (int e = 0; e < mesh.elementCount(); e++) {
            int sides = mesh.cornerCount(e);
            for (int k = 0; k < sides; k++) {
                int a = mesh.elementNodes()[4 * e + k];
                int b = mesh.elementNodes()[4 * e + (k + 1) % sides];
                int other = head[b];
                while (other >= 0 && (across[other] >= 0 || end(mesh, other) != a)) {
                    other = chain[other];
                }
                if (other >= 0) {
                    across[4 * e + k] = other / 4;
                    across[other] = e;
                } else {
                    chain[4 * e + k] = head[a];
                    head[a] = 4 * e + k;
                }
            }
        }
        return across;
    }

    private static int end(Mesh mesh, int side) {
        int e = side / 4;
        return mesh.elementNodes()[4 * e + (side % 4 + 1) % mesh.cornerCount(e)];
    }
}
