// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import tubwright.engine.mesh.Mesh;

/**
 * Everything computed for one variant of a tub.
 *
 * @param variant name; the design as written is "as designed"
 * @param construction in a few words, e.g. "carbon sandwich" or "riveted aluminium sheet"
 * @param mass roll-up
 * @param cases the cases solved, in the order of the design
 * @param pieceCount pieces made
 * @param fastenerCount rivets or bolts in joints
 * @param seamLength length of all joints, m
 * @param mesh finest mesh, on which the fields live
 */
public record VariantAnswer(
        String variant,
        String construction,
        MassAnswer mass,
        List<CaseAnswer> cases,
        int pieceCount,
        int fastenerCount,
        double seamLength,
        Mesh mesh) {
    public VariantAnswer {
        cases = List.copyOf(cases);
    }
}
