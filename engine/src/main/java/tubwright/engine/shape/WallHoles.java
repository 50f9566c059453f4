// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.Locale;
import tubwright.engine.shape.ShapeException.Subject;

/** Holes of walls. */
final class WallHoles {
    private WallHoles() {}

    /**
     * Sees whether every hole lies within its panel and clear of the others.
     *
     * @throws ShapeException if one does not
     */
    static void check(PlacedWall placed) {
        Wall wall = placed.wall();
        for (Wall.Hole hole : wall.holes()) {
            double[] b = hole.contour().bounds();
            double[] points = hole.contour().points(Math.max(b[1] - b[0], b[3] - b[2]) / 64);
            for (int i = 0; i < points.length; i += 2) {
                double[] at = placed.fromView(points[i], points[i + 1]);
                if (!placed.contains(at[0], at[1], 1e-6)) {
                    double[] p = placed.position(at[0], at[1]);
                    throw ShapeException.about(
                            Subject.HOLE,
                            wall.name() + "/" + hole.name(),
                            String.format(
                                    Locale.ROOT,
                                    "hole \"%s\" leaves wall \"%s\": x = %.1f, y = %.1f, z = %.1f mm is outside the panel",
                                    hole.name(),
                                    wall.name(),
                                    p[0] * 1e3,
                                    p[1] * 1e3,
                                    p[2] * 1e3));
                }
            }
            for (Wall.Hole other : wall.holes()) {
                if (other != hole) {
                    for (int i = 0; i < points.length; i += 2) {
                        if (other.contour().distance(points[i], points[i + 1]) <= 0) {
                            throw ShapeException.about(
                                    Subject.HOLE,
                                    wall.name() + "/" + hole.name(),
                                    "holes \"" + hole.name() + "\" and \"" + other.name() + "\" of wall \""
                                            + wall.name() + "\" overlap");
                        }
                    }
                }
            }
        }
    }
}
