// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import tubwright.engine.make.surface.TriangleSurface;

/**
 * How hard tape is steered that follows a field of directions: the field's geodesic curvature, which for unit vectors t
 * in the surface is their curl about the normal, n · (∇ × t). It is taken as the circulation of the field round the
 * triangles about each point over their area (Stokes), so that single triangles do not scatter.
 */
public final class TapeSteering {
    private TapeSteering() {}

    /**
     * Magnitude of the geodesic curvature at the points of each triangle, averaged, 1/m.
     *
     * @param directions 3 numbers per triangle: the unit direction of the tape there
     */
    public static double[] curvatures(TriangleSurface surface, double[] directions) {
        double[] field = atPoints(surface, directions);
        int[] c = surface.corners();
        double[] x = surface.points();
        double[] round = new double[surface.pointCount()];
        double[] area = new double[surface.pointCount()];
        for (int t = 0; t < surface.triangles(); t++) {
            double circulation = 0;
            for (int k = 0; k < 3; k++) {
                int a = 3 * c[3 * t + k];
                int b = 3 * c[3 * t + (k + 1) % 3];
                for (int i = 0; i < 3; i++) {
                    circulation += (field[a + i] + field[b + i]) / 2 * (x[b + i] - x[a + i]);
                }
            }
            for (int k = 0; k < 3; k++) {
                round[c[3 * t + k]] += circulation;
                area[c[3 * t + k]] += surface.area(t);
            }
        }
        double[] curvature = new double[surface.triangles()];
        for (int t = 0; t < curvature.length; t++) {
            double sum = 0;
            for (int k = 0; k < 3; k++) {
                int p = c[3 * t + k];
                sum += round[p] / area[p] / 3;
            }
            curvature[t] = Math.abs(sum);
        }
        return curvature;
    }

    /** The field at the points: mean of the triangles round each, of unit length. */
    private static double[] atPoints(TriangleSurface surface, double[] directions) {
        int[] c = surface.corners();
        double[] field = new double[3 * surface.pointCount()];
        for (int t = 0; t < surface.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                for (int i = 0; i < 3; i++) {
                    field[3 * c[3 * t + k] + i] += surface.area(t) * directions[3 * t + i];
                }
            }
        }
        for (int p = 0; p < field.length; p += 3) {
            double l = Math.sqrt(field[p] * field[p] + field[p + 1] * field[p + 1] + field[p + 2] * field[p + 2]);
            for (int i = p; i < p + 3 && l > 0; i++) {
                field[i] /= l;
            }
        }
        return field;
    }
}
