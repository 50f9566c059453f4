// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;
import tubwright.engine.shape.ShapeException;

/**
 * How fine the mesh is. One number, the size, is enough: it is made finer round openings, tight fillets and spots by
 * itself.
 *
 * @param size wanted edge length away from details, m
 * @param spots places to refine: hardpoints and their footprints
 */
public record MeshSettings(double size, List<Spot> spots) {
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
                    ShapeException.Subject.SETTINGS, "size", "the mesh size must be greater than zero, not " + size + " m");
        }
    }

    /** A mesh of one size with no spots. */
    public static MeshSettings of(double size) {
        return new MeshSettings(size, List.of());
    }
}
