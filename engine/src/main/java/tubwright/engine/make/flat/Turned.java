// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import java.util.Arrays;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.numerics.SymmetricMatrix;

/**
 * How far a map into the plane is from turning every triangle as it is: half the sum over the triangles' edges of weight times
 * the square of what is left after the best rotation, and the quadratic that takes its place near a map.
 *
 * <p>With the rotations held, the second derivatives are those of a net of springs, and steps by them creep, since a strip can
 * then not bend without its triangles' turning. They do turn: for each triangle, with S its springs' pull of its turned edges
 * and l its length, that takes q qᵀ / l off, where q is S turned by a right angle. Where triangles are pressed together this
 * would curve down; l is taken no shorter than that of the unstrained triangle, and then it curves up or not at all.
 */
final class Turned {
    /** What is left of a triangle's resistance to turning: enough to hold the pattern as a whole. */
    private static final double HELD = 1e-6;

    private final TriangleSurface surface;
    private final double[] weight;
    /** Per triangle and edge, the edge as it is on the surface: x, y. */
    private final double[] edge;
    /** Per triangle: cosine and sine of its best rotation, length of the turned pull, that of the unstrained triangle. */
    private final double[] best;

    private double[] at = {};

    /** @param weight 3 a triangle: of the edge from its corner k to the next, greater than 0 */
    Turned(TriangleSurface surface, double[] weight) {
        this.surface = surface;
        this.weight = weight;
        int triangles = surface.triangles();
        edge = new double[6 * triangles];
        best = new double[4 * triangles];
        for (int t = 0; t < triangles; t++) {
            double[] local = surface.localCorners(t);
            double[] px = {0, local[0], local[1]};
            double[] py = {0, 0, local[2]};
            for (int k = 0; k < 3; k++) {
                int m = (k + 1) % 3;
                double dx = px[k] - px[m];
                double dy = py[k] - py[m];
                edge[6 * t + 2 * k] = dx;
                edge[6 * t + 2 * k + 1] = dy;
                best[4 * t + 3] += weight[3 * t + k] * (dx * dx + dy * dy);
            }
        }
    }

    /** Energy of a map, m²; the best rotations are kept for {@link #quadratic}. */
    double energy(double[] flat) {
        at = flat;
        int[] c = surface.corners();
        double energy = 0;
        for (int t = 0; t < surface.triangles(); t++) {
            double cos = 0;
            double sin = 0;
            double square = best[4 * t + 3];
            for (int k = 0; k < 3; k++) {
                int i = 2 * c[3 * t + k];
                int j = 2 * c[3 * t + (k + 1) % 3];
                double u = flat[i] - flat[j];
                double v = flat[i + 1] - flat[j + 1];
                double dx = edge[6 * t + 2 * k];
                double dy = edge[6 * t + 2 * k + 1];
                double w = weight[3 * t + k];
                cos += w * (u * dx + v * dy);
                sin += w * (v * dx - u * dy);
                square += w * (u * u + v * v);
            }
            double l = Math.sqrt(cos * cos + sin * sin);
            energy += Math.max(0, square - 2 * l) / 2;
            best[4 * t] = l > 0 ? cos / l : 1;
            best[4 * t + 1] = l > 0 ? sin / l : 0;
            best[4 * t + 2] = l;
        }
        return energy;
    }

    /**
     * The quadratic at the map whose energy was asked for last.
     *
     * @param matrix of the pattern of two unknowns a point, empty; its second derivatives are added
     * @param downhill overwritten with the first derivatives, turned round
     */
    void quadratic(SymmetricMatrix matrix, double[] downhill) {
        Arrays.fill(downhill, 0);
        int[] c = surface.corners();
        double[] q = new double[6];
        for (int t = 0; t < surface.triangles(); t++) {
            double cos = best[4 * t];
            double sin = best[4 * t + 1];
            Arrays.fill(q, 0);
            for (int k = 0; k < 3; k++) {
                int m = (k + 1) % 3;
                int i = 2 * c[3 * t + k];
                int j = 2 * c[3 * t + m];
                double w = weight[3 * t + k];
                double dx = edge[6 * t + 2 * k];
                double dy = edge[6 * t + 2 * k + 1];
                double u = w * (cos * dx - sin * dy);
                double v = w * (sin * dx + cos * dy);
                double pullX = u - w * (at[i] - at[j]);
                double pullY = v - w * (at[i + 1] - at[j + 1]);
                downhill[i] += pullX;
                downhill[i + 1] += pullY;
                downhill[j] -= pullX;
                downhill[j + 1] -= pullY;
                q[2 * k] -= v;
                q[2 * k + 1] += u;
                q[2 * m] += v;
                q[2 * m + 1] -= u;
                for (int xy = 0; xy < 2; xy++) {
                    matrix.add(i + xy, i + xy, w);
                    matrix.add(j + xy, j + xy, w);
                    matrix.add(i + xy, j + xy, -w);
                }
            }
            double off = (1 - HELD) / Math.max(best[4 * t + 2], best[4 * t + 3]);
            for (int k = 0; k < 3; k++) {
                int i = 2 * c[3 * t + k];
                matrix.add(i, i, -off * q[2 * k] * q[2 * k]);
                matrix.add(i, i + 1, -off * q[2 * k] * q[2 * k + 1]);
                matrix.add(i + 1, i + 1, -off * q[2 * k + 1] * q[2 * k + 1]);
                int m = (k + 1) % 3;
                int j = 2 * c[3 * t + m];
                for (int a = 0; a < 2; a++) {
                    for (int b = 0; b < 2; b++) {
                        matrix.add(i + a, j + b, -off * q[2 * k + a] * q[2 * m + b]);
                    }
                }
            }
        }
        // The pattern may float: one point is held, by as much as its neighbours hold it.
        matrix.add(0, 0, matrix.get(0, 0));
        matrix.add(1, 1, matrix.get(1, 1));
    }
}
