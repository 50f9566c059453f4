// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import tubwright.engine.shape.TubShape;

/** From shape to mesh. */
public final class Mesher {
    private Mesher() {}

    /**
     * Meshes the skin and the walls of a tub.
     *
     * @param shape the tub
     * @param layout zones, patches and pieces
     * @param settings how fine
     * @throws tubwright.engine.shape.ShapeException when the layout names what is not there
     */
    public static Mesh mesh(TubShape shape, SurfaceLayout layout, MeshSettings settings) {
        throw new UnsupportedOperationException("not there yet");
    }
}
