// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;

/** Names of the mesh lines that joints and stiffeners follow, as the mesher gives them. */
final class LineNames {
    private LineNames() {}

    /** The boundary between two neighbouring pieces of skin, the lower one first. */
    static String seam(String lower, String upper) {
        return lower + " / " + upper;
    }

    /** The outer edges of a wall: two for one that stands on both sides. */
    static List<String> wallEdges(TubShape shape, String name) {
        boolean twins = shape.walls().stream()
                .anyMatch(w -> w.name().equals(name) && w instanceof Wall.Along along && along.side() == Side.BOTH);
        return twins ? List.of(name + " L edge", name + " R edge") : List.of(name + " edge");
    }

    /** The edges of an opening, or of a hole in a wall ({@code wall/hole}): two where it is cut on both sides. */
    static List<String> openingEdges(TubShape shape, String name) {
        boolean twins = shape.openings().stream().anyMatch(o -> o.name().equals(name) && o.side() == Side.BOTH)
                || shape.walls().stream()
                        .anyMatch(w -> name.startsWith(w.name() + "/")
                                && w instanceof Wall.Along along
                                && along.side() == Side.BOTH);
        return twins ? List.of(name + " L", name + " R") : List.of(name);
    }

    /** The corner lines between two neighbouring strips, the lower one first, on either side. */
    static List<String> corners(String lower, String upper) {
        return List.of(lower + "/" + upper + " L", lower + "/" + upper + " R");
    }

    /** The line round the skin at a wall: a line of the skin at an upright one, else the wall's own edge. */
    static List<String> stations(TubShape shape, String wall) {
        boolean upright = shape.walls().stream()
                .anyMatch(w -> w.name().equals(wall)
                        && w instanceof Wall.Across across
                        && across.low().x() == across.high().x());
        return upright ? List.of("skin at " + wall) : wallEdges(shape, wall);
    }

    /** All openings and holes by the names a design gives them. */
    static List<String> openings(TubShape shape) {
        List<String> names = new java.util.ArrayList<>(
                shape.openings().stream().map(Opening::name).toList());
        shape.walls().forEach(w -> w.holes().forEach(h -> names.add(w.name() + "/" + h.name())));
        return names;
    }
}
