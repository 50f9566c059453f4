// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import java.util.List;

/**
 * How a piece leaves a female mould, whose face is the piece's outer face, along one direction.
 *
 * @param pull unit vector along which the piece is taken out
 * @param wanted draft asked for, rad
 * @param ofElement draft of each of the piece's elements where it is least, rad, in their order: the angle between face and
 *     pull, 90° on a bottom, 0 on a wall that stands along the pull, negative where the mould reaches over the piece
 * @param least of all
 * @param area of the face, m²
 * @param little area with a draft from nothing to the wanted one, m²
 * @param under area that is undercut, m²
 * @param undercuts where, largest first
 */
public record Draft(
        double[] pull,
        double wanted,
        double[] ofElement,
        double least,
        double area,
        double little,
        double under,
        List<Undercut> undercuts) {
    /** Draft asked for where none is named: 2°; common practice, no source. */
    public static final double USUAL = Math.toRadians(2);

    /** A face this little past upright, rad, still leaves: the mesh tells no finer. */
    static final double UPRIGHT = Math.toRadians(0.1);

    public Draft {
        undercuts = List.copyOf(undercuts);
    }

    /** Whether the piece comes out as one along this direction. */
    public boolean comesOut() {
        return undercuts.isEmpty();
    }

    /**
     * A connected place where the mould reaches over the piece.
     *
     * @param part strip with its side: {@code "flank R"}
     * @param fromX station, m
     * @param toX station, m
     * @param worst draft there, rad, negative
     * @param area m²
     * @param hook how far the mould reaches over the piece, m: by so much mould or piece would have to give way
     * @param height over which it does, along the pull, m
     * @param beside what lies at its edge away from the bottom: the neighbour at a split line, or the open edge; "" where it
     *     ends inside the piece
     */
    public record Undercut(
            String part,
            double fromX,
            double toX,
            double worst,
            double area,
            double hook,
            double height,
            String beside) {}
}
