// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import java.util.Optional;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshQuality;

/**
 * Everything computed for one variant of a tub.
 *
 * @param variant name; the design as written is "as designed"
 * @param construction in a few words, e.g. "carbon sandwich" or "riveted aluminium sheet"
 * @param mass roll-up
 * @param cases the cases solved, in the order of the design
 * @param pieceCount pieces by name: what comes out of one mould, left and right twins together
 * @param partCount separate parts to make: bodies of skin and wall, twins apart, and bars
 * @param fastenerCount rivets or bolts in joints
 * @param seamLength length of all joints, m
 * @param mesh finest mesh, on which the fields live
 * @param quality of that mesh
 * @param reserves what fails first in the load cases
 * @param stability buckling and natural frequencies, where asked
 * @param installed the tub with what is bolted on; empty where nothing is
 */
public record VariantAnswer(
        String variant,
        String construction,
        MassAnswer mass,
        List<CaseAnswer> cases,
        int pieceCount,
        int partCount,
        int fastenerCount,
        double seamLength,
        Mesh mesh,
        MeshQuality quality,
        ReserveTable reserves,
        Stability stability,
        Optional<InstalledAnswer> installed) {
    public VariantAnswer {
        cases = List.copyOf(cases);
    }
}
