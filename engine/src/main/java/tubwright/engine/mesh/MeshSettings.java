// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;
import tubwright.engine.shape.ShapeException;

/**
 * How fine the mesh is. One number, the size, is enough: it is made finer round openings, tight fillets and spots by
 * itself.
 *
 * @param size wanted edge length away from details, m
 * @param cellTurn largest angle one element turns through in a fillet, rad, where the fillet is worth several elements
 * @param coarsening how many times coarser than the design's own mesh this one is, details included: edge lengths near
 *     details are chosen for size/coarsening and then multiplied, so that meshes of several coarsenings are alike and
 *     results may be extrapolated over them
 * @param spots places to refine: hardpoints and their footprints
 */
public record MeshSettings(double size, double cellTurn, double coarsening, List<Spot> spots) {
    /** The usual angle one element turns through in a fillet, rad. */
    public static final double USUAL_TURN = Math.toRadians(24);

    /**
     * A place to refine.
     *
     * @param x m
     * @param y m
     * @param z m
     * @param radius radius of the footprint, m
     */
    public record Spot(double x, double y, double z, double radius) {}

    /** @throws ShapeException when the size is not a positive finite number */
    public MeshSettings {
        spots = List.copyOf(spots);
        if (!(size > 0) || Double.isInfinite(size)) {
            throw ShapeException.about(
                    ShapeException.Subject.SETTINGS,
                    "size",
                    "the mesh size must be greater than zero, not " + size + " m");
        }
        if (!(coarsening > 0)) {
            throw ShapeException.about(
                    ShapeException.Subject.SETTINGS, "coarsening", "the coarsening must be greater than zero");
        }
        if (!(cellTurn > 0)) {
            throw ShapeException.about(
                    ShapeException.Subject.SETTINGS,
                    "turn",
                    "the largest turn of an element must be greater than zero");
        }
    }

    /** The usual settings for a size with places to refine. */
    public MeshSettings(double size, List<Spot> spots) {
        this(size, USUAL_TURN, 1, spots);
    }

    /** The same mesh made finer all over by a factor, fillets included: for extrapolation over two sizes. */
    public MeshSettings refined(double factor) {
        return new MeshSettings(size / factor, cellTurn / factor, coarsening / factor, spots);
    }

    /** A mesh of one size with no spots. */
    public static MeshSettings of(double size) {
        return new MeshSettings(size, List.of());
    }
}
