// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.List;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Tub;

/**
 * A tub with every ply laid.
 *
 * @param tub as designed
 * @param mesh what the plies' elements are numbered in
 * @param plies piece by piece in the order of laying
 */
public record LaidTub(Tub tub, Mesh mesh, List<DrapedPly> plies) {
    public LaidTub {
        plies = List.copyOf(plies);
    }
}
