// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

import java.util.Arrays;

/**
 * Finds the point of a surface nearest to a point in space, by a grid of boxes that hold the triangles passing through
 * them.
 */
public final class PointLocator {
    private final TriangleSurface surface;
    private final double[] low = new double[3];
    private final int[] count = new int[3];
    private final double box;
    private final int[] start;
    private final int[] inside;

    public PointLocator(TriangleSurface surface) {
        this.surface = surface;
        double[] high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        double[] points = surface.points();
        for (int i = 0; i < points.length; i++) {
            low[i % 3] = Math.min(low[i % 3], points[i]);
            high[i % 3] = Math.max(high[i % 3], points[i]);
        }
        double area = 0;
        for (int t = 0; t < surface.triangles(); t++) {
            area += surface.area(t);
        }
        double span = Math.max(high[0] - low[0], Math.max(high[1] - low[1], high[2] - low[2]));
        box = Math.max(span / 400, 2 * Math.sqrt(area / surface.triangles()));
        for (int i = 0; i < 3; i++) {
            count[i] = (int) ((high[i] - low[i]) / box) + 1;
        }
        int[] fill = new int[count[0] * count[1] * count[2] + 1];
        for (int t = 0; t < surface.triangles(); t++) {
            eachBox(t, b -> fill[b + 1]++);
        }
        for (int b = 0; b + 1 < fill.length; b++) {
            fill[b + 1] += fill[b];
        }
        start = fill.clone();
        inside = new int[start[start.length - 1]];
        for (int t = 0; t < surface.triangles(); t++) {
            int triangle = t;
            eachBox(t, b -> inside[fill[b]++] = triangle);
        }
    }

    private void eachBox(int t, java.util.function.IntConsumer take) {
        int[] from = new int[3];
        int[] to = new int[3];
        for (int i = 0; i < 3; i++) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                double v = surface.points()[3 * surface.corners()[3 * t + k] + i];
                least = Math.min(least, v);
                most = Math.max(most, v);
            }
            from[i] = cell(least, i);
            to[i] = cell(most, i);
        }
        for (int i = from[0]; i <= to[0]; i++) {
            for (int j = from[1]; j <= to[1]; j++) {
                for (int k = from[2]; k <= to[2]; k++) {
                    take.accept((i * count[1] + j) * count[2] + k);
                }
            }
        }
    }

    private int cell(double v, int axis) {
        return Math.clamp((int) Math.floor((v - low[axis]) / box), 0, count[axis] - 1);
    }

    /** What was found: where, and how far from the point asked for, m. */
    public record Found(SurfacePoint point, double distance) {}

    /** The nearest point of the surface to a point in space. */
    public Found nearest(double px, double py, double pz) {
        double[] p = {px, py, pz};
        Nearest best = new Nearest();
        int[] home = {cell(px, 0), cell(py, 1), cell(pz, 2)};
        // Nothing beyond the boxes looked into is nearer than their walls, and past the outermost there is nothing.
        double wall = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 3; i++) {
            double low = p[i] - (this.low[i] + home[i] * box);
            wall = Math.min(wall, home[i] == 0 ? Double.POSITIVE_INFINITY : low);
            wall = Math.min(wall, home[i] == count[i] - 1 ? Double.POSITIVE_INFINITY : box - low);
        }
        int most = Math.max(count[0], Math.max(count[1], count[2]));
        for (int ring = 0; ring <= most; ring++) {
            double sure = wall + (ring - 1) * box;
            if (ring > 0 && best.square <= sure * Math.abs(sure)) {
                break;
            }
            for (int i = Math.max(0, home[0] - ring); i <= Math.min(count[0] - 1, home[0] + ring); i++) {
                for (int j = Math.max(0, home[1] - ring); j <= Math.min(count[1] - 1, home[1] + ring); j++) {
                    boolean shell = Math.abs(i - home[0]) == ring || Math.abs(j - home[1]) == ring;
                    int step = shell ? 1 : Math.max(1, 2 * ring);
                    for (int k = home[2] - ring; k <= home[2] + ring; k += step) {
                        if (k < 0 || k >= count[2]) {
                            continue;
                        }
                        int b = (i * count[1] + j) * count[2] + k;
                        for (int n = start[b]; n < start[b + 1]; n++) {
                            look(inside[n], px, py, pz, best);
                        }
                    }
                }
            }
        }
        return new Found(new SurfacePoint(best.triangle, best.x, best.y), Math.sqrt(best.square));
    }

    /** The nearest so far. */
    private static final class Nearest {
        double square = Double.POSITIVE_INFINITY;
        int triangle;
        double x;
        double y;
    }

    /** Keeps the nearest point of a triangle if it is nearer than the best so far. */
    private void look(int t, double px, double py, double pz, Nearest best) {
        double[] points = surface.points();
        double[] frame = surface.frame;
        int a = 3 * surface.corners()[3 * t];
        int f = 9 * t;
        double dx = px - points[a];
        double dy = py - points[a + 1];
        double dz = pz - points[a + 2];
        double off = dx * frame[f + 6] + dy * frame[f + 7] + dz * frame[f + 8];
        double square = off * off;
        if (square >= best.square) {
            return;
        }
        double x = dx * frame[f] + dy * frame[f + 1] + dz * frame[f + 2];
        double y = dx * frame[f + 3] + dy * frame[f + 4] + dz * frame[f + 5];
        double nx = x;
        double ny = y;
        double gap = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            double ax = surface.cornerX(t, k);
            double ay = surface.cornerY(t, k);
            double ux = surface.cornerX(t, (k + 1) % 3) - ax;
            double uy = surface.cornerY(t, (k + 1) % 3) - ay;
            if (ux * (y - ay) - uy * (x - ax) < 0) {
                double s = Math.clamp(((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy), 0.0, 1.0);
                double gx = ax + s * ux - x;
                double gy = ay + s * uy - y;
                double here = gx * gx + gy * gy;
                if (here < gap) {
                    gap = here;
                    nx = ax + s * ux;
                    ny = ay + s * uy;
                }
            }
        }
        square += gap < Double.POSITIVE_INFINITY ? gap : 0;
        if (square < best.square) {
            best.square = square;
            best.triangle = t;
            best.x = nx;
            best.y = ny;
        }
    }
}
