// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;

/**
 * One laminate's worth of mesh: the elements that share zone, patches, piece and side of the car.
 *
 * @param part the strip or wall the elements lie on
 * @param surface whether the part is skin or wall
 * @param zone the zone whose laminate the elements carry
 * @param patches names of the patches laid over the zone here, in the order in which they are laid
 * @param piece the piece (what comes out of one mould) the elements belong to
 * @param mirrored true on the left half of the skin: ply angles run the other way round there
 */
public record Region(String part, Surface surface, String zone, List<String> patches, String piece, boolean mirrored) {
    /** What kind of surface a region lies on. */
    public enum Surface {
        SKIN,
        WALL
    }

    public Region {
        patches = List.copyOf(patches);
    }
}
