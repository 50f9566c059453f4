// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.make.drape.LayLimits;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.ply.LaidPly;

/**
 * A ply as it lies.
 *
 * @param ply which
 * @param limits of its material
 * @param start where laying starts in space, 3 coordinates, m
 * @param turned by how much the warp at the start is turned from nominal, rad
 * @param fibres directions element by element, in the order of the ply's elements
 * @param figures of shear, steering and area
 * @param flat the pattern
 * @param advice what would help where a limit is passed
 */
public record DrapedPly(
        LaidPly ply,
        LayLimits limits,
        double[] start,
        double turned,
        Fibres fibres,
        Figures figures,
        FlatPattern flat,
        List<String> advice) {
    public DrapedPly {
        advice = List.copyOf(advice);
    }

    /** The same with something more to say. */
    DrapedPly with(String words) {
        List<String> more = new ArrayList<>(advice);
        more.add(words);
        return new DrapedPly(ply, limits, start, turned, fibres, figures, flat, more);
    }

    /**
     * True directions of the threads in every element of a ply.
     *
     * @param warp angle of the warp (of tape: of its fibres) from the element's reference direction, anticlockwise about
     *     the outward normal, rad; not a number where the net does not reach
     * @param weft the same of the weft; of tape 90° on
     */
    public record Fibres(double[] warp, double[] weft) {
        /** Shear in element i, rad: 90° less the angle from warp to weft. */
        public double shear(int i) {
            return Math.PI / 2 - Math.IEEEremainder(weft[i] - warp[i], 2 * Math.PI);
        }
    }

    /**
     * What is told of a ply, areas in m², angles in rad.
     *
     * @param area on its face
     * @param largestShear by magnitude
     * @param meanShear mean of the magnitude over the area
     * @param warned area sheared more than the warning
     * @param locked area sheared beyond the lock
     * @param bare area the net does not reach
     * @param largestTurn largest angle between a thread and its nominal direction
     * @param meanTurn mean over the area
     * @param thickness mean of the thickness factor 1/cos γ
     * @param steering of a tape
     */
    public record Figures(
            double area,
            double largestShear,
            double meanShear,
            double warned,
            double locked,
            double bare,
            double largestTurn,
            double meanTurn,
            double thickness,
            Optional<Steering> steering) {}

    /**
     * What a tape would bear if it were steered to keep its nominal direction everywhere; laid straight it bears nothing
     * and turns from nominal instead.
     *
     * @param radius least in-plane radius it is steered to (99 % of the area is steered to a larger one), m
     * @param strain edge strain of tape of its usual width at that radius
     * @param widest tape that bears that radius, m
     * @param beyond area where tape of its usual width is strained beyond its limit, m²
     */
    public record Steering(double radius, double strain, double widest, double beyond) {}

    /** Whether a limit of its material is passed, or the net does not reach everywhere. */
    public boolean passesLimit() {
        return figures.locked() > 0
                || figures.bare() > BARE * figures.area()
                || ply.tape() && figures.largestTurn() > TAPE_TURN
                || flat.distortion().beyond() > CRUMBS
                || flat.overlapsItself();
    }

    /** How far tape may lie from its nominal direction: 3 degrees, from memory. */
    public static final double TAPE_TURN = Math.toRadians(3);

    /** Share of a flat that may be stretched beyond the limit without a word. */
    static final double CRUMBS = 0.01;

    /** Share of a ply that may be bare without a word: crumbs at its edge. */
    static final double BARE = 0.002;
}
