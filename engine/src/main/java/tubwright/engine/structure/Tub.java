// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.Region;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.shape.TubShape;
import tubwright.engine.strength.StrengthBasis;

/**
 * One variant of a tub with every name resolved: what the structure is built from.
 *
 * @param name of the tub
 * @param variant name; the design as written is "as designed"
 * @param construction in a few words: "carbon sandwich", "riveted aluminium sheet"
 * @param shape outer mould surface, openings, walls
 * @param layout zones, patches, pieces
 * @param meshSize finest mesh size of an ordinary run, m
 * @param laminates of every zone, by zone name
 * @param patchPlies plies each patch adds on the inner face, in order from the outside inward, by patch name
 * @param joints along mesh lines
 * @param stiffeners along mesh lines
 * @param hardpoints left and right twins apart
 * @param cases to be answered
 * @param strength with which criteria and strengths load cases are judged
 * @param fittings what is bolted on, and the car on its wheels
 */
public record Tub(
        String name,
        String variant,
        String construction,
        TubShape shape,
        SurfaceLayout layout,
        double meshSize,
        Map<String, Laminate> laminates,
        Map<String, List<Layer>> patchPlies,
        List<Joint> joints,
        List<Stiffener> stiffeners,
        List<Hardpoint> hardpoints,
        List<Case> cases,
        StrengthBasis strength,
        Fittings fittings) {
    /** Judged as usual, with nothing bolted on. */
    public Tub(
            String name,
            String variant,
            String construction,
            TubShape shape,
            SurfaceLayout layout,
            double meshSize,
            Map<String, Laminate> laminates,
            Map<String, List<Layer>> patchPlies,
            List<Joint> joints,
            List<Stiffener> stiffeners,
            List<Hardpoint> hardpoints,
            List<Case> cases) {
        this(
                name,
                variant,
                construction,
                shape,
                layout,
                meshSize,
                laminates,
                patchPlies,
                joints,
                stiffeners,
                hardpoints,
                cases,
                StrengthBasis.USUAL,
                Fittings.NONE);
    }

    public Tub {
        laminates = Map.copyOf(laminates);
        patchPlies = Map.copyOf(patchPlies);
        joints = List.copyOf(joints);
        stiffeners = List.copyOf(stiffeners);
        hardpoints = List.copyOf(hardpoints);
        cases = List.copyOf(cases);
    }

    /**
     * The laminate of a region of one of its meshes: that of the zone with the patches' plies inside, mirrored where the
     * region is.
     *
     * @throws StructureException where the zone has none
     */
    public Laminate laminate(Region region) {
        return StructureBuilder.laminate(this, region);
    }

    /** The same tub with other cases. */
    public Tub withCases(List<Case> other) {
        return new Tub(
                name,
                variant,
                construction,
                shape,
                layout,
                meshSize,
                laminates,
                patchPlies,
                joints,
                stiffeners,
                hardpoints,
                other,
                strength,
                fittings);
    }

    /** The same tub of other laminates, patch plies, joints and hardpoints. */
    public Tub with(
            Map<String, Laminate> otherLaminates,
            Map<String, List<Layer>> otherPatchPlies,
            List<Joint> otherJoints,
            List<Hardpoint> otherHardpoints) {
        return new Tub(
                name,
                variant,
                construction,
                shape,
                layout,
                meshSize,
                otherLaminates,
                otherPatchPlies,
                otherJoints,
                stiffeners,
                otherHardpoints,
                cases,
                strength,
                fittings);
    }
}
