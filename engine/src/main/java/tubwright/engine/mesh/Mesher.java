// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.shape.TubShape;

/** From shape to mesh. */
public final class Mesher {
    private Mesher() {}

    /**
     * Meshes the skin and the walls of a tub. The two halves of the skin (and of walls across the car) are mirror images
     * node by node, but for openings of one side. Every piece of skin and every wall has its own nodes.
     *
     * @param shape the tub
     * @param layout zones, patches (at most 62) and pieces
     * @param settings how fine
     * @throws ShapeException when the layout names what is not there
     */
    public static Mesh mesh(TubShape shape, SurfaceLayout layout, MeshSettings settings) {
        if (layout.patches().size() > 62) {
            throw ShapeException.about(
                    ShapeException.Subject.PATCH,
                    layout.patches().get(62).name(),
                    "there are " + layout.patches().size() + " patches; 62 is the most");
        }
        LayoutIndex index = new LayoutIndex(shape, layout);
        MeshBuilder out = new MeshBuilder();
        new SkinMesher(shape, index, settings, out).emit();
        for (PlacedWall wall : shape.placedWalls()) {
            new WallMesher(shape, index, settings, out, wall).emit();
        }
        return out.build();
    }
}
