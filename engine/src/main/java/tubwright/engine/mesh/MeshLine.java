// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;

/**
 * A named line that runs along element edges: where something is joined, stiffened or measured.
 *
 * @param name unique, readable: {@code "lower shell / upper shell"}, {@code "seat back edge"}
 * @param kind what the line is
 * @param from the piece the chain nodes belong to
 * @param onto for a seam the other piece; for a wall edge the skin piece, or "" where the nearest skin or wall counts;
 *     otherwise ""
 * @param chains node indices in order along the line, one array per connected run; a closed run repeats its first node
 */
public record MeshLine(String name, Kind kind, String from, String onto, List<int[]> chains) {
    /** The kinds of line a mesh knows. */
    public enum Kind {
        /** Boundary between two pieces of skin; both sides have their own nodes. */
        SEAM,
        /** Outer edge of a wall where it meets skin (or another wall). */
        WALL_EDGE,
        /** Edge of an opening or of a hole in a wall. */
        OPENING_EDGE,
        /** Corner line between two strips. */
        CORNER,
        /** Line on the skin at the station of a frame or a wall. */
        STATION
    }

    public MeshLine {
        chains = List.copyOf(chains);
    }
}
