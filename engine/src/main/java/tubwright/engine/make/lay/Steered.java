// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.Arrays;
import java.util.Comparator;
import tubwright.engine.make.drape.LayLimits;
import tubwright.engine.make.drape.TapeSteering;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.mesh.Mesh;

/**
 * How hard tape would be steered to keep its nominal direction everywhere, and how wide it may be for that.
 */
final class Steered {
    /** Share of the area that may be steered harder than the radius told. */
    private static final double CRUMBS = 0.01;

    private Steered() {}

    static DrapedPly.Steering of(Mesh mesh, LaidPly ply, MeshSurface outer, LayLimits limits) {
        TriangleSurface surface = outer.surface();
        double[] curvature = curvatures(mesh, ply, outer);
        Integer[] order = new Integer[curvature.length];
        Arrays.setAll(order, t -> t);
        Arrays.sort(order, Comparator.comparingDouble(t -> -curvature[t]));
        double area = 0;
        double beyond = 0;
        double least = limits.leastRadius(limits.tapeWidth());
        for (int t = 0; t < curvature.length; t++) {
            area += surface.area(t);
            if (curvature[t] > 1 / least) {
                beyond += surface.area(t);
            }
        }
        double radius = Double.POSITIVE_INFINITY;
        double seen = 0;
        for (int t : order) {
            seen += surface.area(t);
            if (seen > CRUMBS * area) {
                radius = 1 / Math.max(1e-9, curvature[t]);
                break;
            }
        }
        return new DrapedPly.Steering(
                radius,
                limits.tapeWidth() / (2 * radius),
                limits.widestTape(radius),
                beyond > CRUMBS * area ? beyond : 0);
    }

    private static double[] curvatures(Mesh mesh, LaidPly ply, MeshSurface outer) {
        TriangleSurface surface = outer.surface();
        double[] directions = new double[3 * surface.triangles()];
        for (int t = 0; t < surface.triangles(); t++) {
            int e = outer.element()[t];
            double[] d = Directions.of(mesh, e, Directions.nominal(mesh, e, ply));
            System.arraycopy(d, 0, directions, 3 * t, 3);
        }
        return TapeSteering.curvatures(surface, directions);
    }
}
