// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;

/** placeholder */
final class StiffenerBars {
    StiffenerBars(Mesh mesh) {}

    void build(int owner, Stiffener stiffener, MeshLine line, List<Member> members, List<LumpedMass> masses) {
        throw new UnsupportedOperationException();
    }
}
