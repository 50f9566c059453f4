// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.Arrays;
import java.util.Comparator;
import tubwright.engine.make.drape.LayLimits;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.mesh.Mesh;

/**
 * How hard tape must be steered to keep its nominal direction: the geodesic curvature of the direction field, which for a
 * unit field t is its curl about the normal, n · (∇ × t), here the circulation round each triangle over its area.
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

    /** Magnitude of the field's geodesic curvature per triangle, 1/m. */
    private static double[] curvatures(Mesh mesh, LaidPly ply, MeshSurface outer) {
        TriangleSurface surface = outer.surface();
        int[] c = surface.corners();
        double[] field = new double[3 * surface.pointCount()];
        for (int t = 0; t < surface.triangles(); t++) {
            int e = outer.element()[t];
            double[] d = Directions.of(mesh, e, Directions.nominal(mesh, e, ply));
            for (int k = 0; k < 3; k++) {
                for (int i = 0; i < 3; i++) {
                    field[3 * c[3 * t + k] + i] += surface.area(t) * d[i];
                }
            }
        }
        for (int p = 0; p < surface.pointCount(); p++) {
            double[] unit = Directions.unit(Arrays.copyOfRange(field, 3 * p, 3 * p + 3));
            System.arraycopy(unit, 0, field, 3 * p, 3);
        }
        double[] x = surface.points();
        double[] curvature = new double[surface.triangles()];
        for (int t = 0; t < curvature.length; t++) {
            double circulation = 0;
            for (int k = 0; k < 3; k++) {
                int a = 3 * c[3 * t + k];
                int b = 3 * c[3 * t + (k + 1) % 3];
                for (int i = 0; i < 3; i++) {
                    circulation += (field[a + i] + field[b + i]) / 2 * (x[b + i] - x[a + i]);
                }
            }
            curvature[t] = Math.abs(circulation) / surface.area(t);
        }
        return curvature;
    }
}
