// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;
import tubwright.engine.shape.Contour;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.View;

/**
 * Which laminate zone, which patches and which piece every spot of the tub belongs to. A spot no zone covers lies in a
 * zone named after its strip or wall; where zones overlap the later in the list counts. A strip no piece covers belongs
 * to the piece {@value #DEFAULT_PIECE}; a wall no piece covers is a piece of its own name. Where pieces overlap the later
 * counts.
 *
 * @param zones laminate zones
 * @param patches local extra plies, in the order in which they are laid
 * @param pieces what comes out of one mould
 */
public record SurfaceLayout(List<Zone> zones, List<Patch> patches, List<Piece> pieces) {
    /** Piece of skin that no piece in the layout covers. */
    public static final String DEFAULT_PIECE = "skin";

    public SurfaceLayout {
        zones = List.copyOf(zones);
        patches = List.copyOf(patches);
        pieces = List.copyOf(pieces);
    }

    /** A layout that leaves everything at its default. */
    public static SurfaceLayout plain() {
        return new SurfaceLayout(List.of(), List.of(), List.of());
    }

    /** An area with one laminate. */
    public record Zone(String name, List<Area> areas) {
        public Zone {
            areas = List.copyOf(areas);
        }
    }

    /** Local extra plies: each area with the bounds inside it. */
    public record Patch(String name, List<Area> areas, Extent extent) {
        public Patch {
            areas = List.copyOf(areas);
        }
    }

    /** What comes out of one mould. */
    public record Piece(String name, List<Area> areas) {
        public Piece {
            areas = List.copyOf(areas);
        }
    }

    /** A part of the tub's surface bounded by strips, stations and walls. */
    public sealed interface Area {}

    /**
     * Strips between two stations.
     *
     * @param strips names
     * @param fromX station, m; minus infinity for the front end
     * @param toX station, m; plus infinity for the rear end
     * @param side BOTH (or CENTRE, the same), RIGHT or LEFT
     */
    public record OnStrips(List<String> strips, double fromX, double toX, Side side) implements Area {
        public OnStrips {
            strips = List.copyOf(strips);
        }

        /** Strips over the whole length, both sides. */
        public static OnStrips whole(List<String> strips) {
            return new OnStrips(strips, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Side.BOTH);
        }
    }

    /** A whole wall (both twins of a wall on both sides). */
    public record OnWall(String wall) implements Area {}

    /** How far a patch reaches inside its areas. */
    public sealed interface Extent {}

    /** All of the areas. */
    public record Everywhere() implements Extent {}

    /**
     * Inside a contour drawn in a view: plan or side on strips, the wall's own view on walls. On strips with side RIGHT,
     * LEFT or BOTH drawn as the right-hand one (y positive in plan) and mirrored for the left; with CENTRE the contour
     * lies across the centreline.
     */
    public record Inside(View view, Side side, Contour contour) implements Extent {}

    /** Within a distance, measured in the opening's view, of an opening's edge or (wall/hole) of a wall's hole. */
    public record AroundOpening(String opening, double distance) implements Extent {}

    /** Within a straight distance of a point, m; 3 coordinates. */
    public record AroundPoint(double[] point, double distance) implements Extent {}
}
