// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

import java.util.Arrays;

/**
 * A surface of flat triangles joined along their edges, each triangle with a plane frame of its own: origin at its first
 * corner, x along its first edge, y to the left of it seen against the normal. Unfolding one triangle into the plane of
 * its neighbour is a plane rotation and shift, kept for every edge, so that a straightest line (Polthier & Schmies 1998,
 * "Straightest geodesics on polyhedral surfaces") is a straight line from frame to frame. Intrinsically flat surfaces,
 * such as cylinders and cones meshed along their rulings, stay so exactly. Immutable; arrays are shared, not copied.
 */
public final class TriangleSurface {
    private final double[] points;
    private final int[] corners;
    /** Triangle across edge k (from corner k to corner k + 1) of triangle t at 3t + k; -1 at the rim. */
    final int[] across;
    /** That edge's place in the triangle across. */
    final int[] acrossEdge;
    /** Per triangle: length of the first edge, x and y of the third corner, m. */
    final double[] plane;
    /** Per triangle: unit vectors x, y and normal in space. */
    final double[] frame;
    /** Per edge: cosine, sine, shift x, shift y that carry this triangle's plane into that of the triangle across. */
    final double[] unfold;
    /** Per edge: the angle of that rotation, rad. */
    final double[] turn;

    private TriangleSurface(double[] points, int[] corners, int[] across, int[] acrossEdge) {
        this.points = points;
        this.corners = corners;
        this.across = across;
        this.acrossEdge = acrossEdge;
        int n = corners.length / 3;
        plane = new double[3 * n];
        frame = new double[9 * n];
        unfold = new double[12 * n];
        turn = new double[3 * n];
        for (int t = 0; t < n; t++) {
            layOut(t);
        }
        for (int e = 0; e < 3 * n; e++) {
            if (across[e] >= 0) {
                unfold(e);
            }
        }
    }

    /**
     * Joins triangles into a surface.
     *
     * @param points 3 coordinates each, m
     * @param corners 3 indices of points per triangle, anticlockwise seen against the normal
     * @throws IllegalArgumentException where an edge has more than two triangles, neighbours are turned against each
     *     other, or a triangle has no area
     */
    public static TriangleSurface of(double[] points, int[] corners) {
        int[] across = new int[corners.length];
        int[] acrossEdge = new int[corners.length];
        join(corners, across, acrossEdge);
        return new TriangleSurface(points, corners, across, acrossEdge);
    }

    /** The same triangles with their points elsewhere. */
    public TriangleSurface movedTo(double[] other) {
        if (other.length != points.length) {
            throw new IllegalArgumentException(
                    "the surface has " + points.length / 3 + " points, not " + other.length / 3);
        }
        return new TriangleSurface(other, corners, across, acrossEdge);
    }

    private static void join(int[] corners, int[] across, int[] acrossEdge) {
        Arrays.fill(across, -1);
        int points = 0;
        for (int c : corners) {
            points = Math.max(points, c + 1);
        }
        // Edges hang in a chain at the point they leave from.
        int[] head = new int[points];
        int[] chain = new int[corners.length];
        Arrays.fill(head, -1);
        for (int e = 0; e < corners.length; e++) {
            if (leaving(corners, head, chain, corners[e], corners[next(e)]) >= 0) {
                throw new IllegalArgumentException("the edge between points " + corners[e] + " and "
                        + corners[next(e)]
                        + " has more than two triangles, or two that are turned against each other");
            }
            chain[e] = head[corners[e]];
            head[corners[e]] = e;
        }
        for (int e = 0; e < corners.length; e++) {
            int other = leaving(corners, head, chain, corners[next(e)], corners[e]);
            if (other >= 0) {
                across[e] = other / 3;
                acrossEdge[e] = other % 3;
            }
        }
    }

    private static int leaving(int[] corners, int[] head, int[] chain, int from, int to) {
        for (int e = head[from]; e >= 0; e = chain[e]) {
            if (corners[next(e)] == to) {
                return e;
            }
        }
        return -1;
    }

    private static int next(int e) {
        return e % 3 == 2 ? e - 2 : e + 1;
    }

    private void layOut(int t) {
        int a = 3 * corners[3 * t];
        int b = 3 * corners[3 * t + 1];
        int c = 3 * corners[3 * t + 2];
        double[] x = {points[b] - points[a], points[b + 1] - points[a + 1], points[b + 2] - points[a + 2]};
        double[] s = {points[c] - points[a], points[c + 1] - points[a + 1], points[c + 2] - points[a + 2]};
        double[] n = Space.cross(x, s);
        double length = Space.length(x);
        double twice = Space.length(n);
        if (!(twice > 1e-12 * length * Space.length(s))) {
            throw new IllegalArgumentException("triangle " + t + " has no area");
        }
        for (int i = 0; i < 3; i++) {
            frame[9 * t + i] = x[i] / length;
            frame[9 * t + 6 + i] = n[i] / twice;
        }
        double[] y = Space.cross(
                new double[] {n[0] / twice, n[1] / twice, n[2] / twice},
                new double[] {x[0] / length, x[1] / length, x[2] / length});
        System.arraycopy(y, 0, frame, 9 * t + 3, 3);
        plane[3 * t] = length;
        plane[3 * t + 1] = Space.dot(s, x) / length;
        plane[3 * t + 2] = twice / length;
    }

    private void unfold(int e) {
        int t = e / 3;
        int k = e % 3;
        int other = across[e];
        int m = acrossEdge[e];
        double ax = cornerX(t, k);
        double ay = cornerY(t, k);
        double mx = cornerX(t, (k + 1) % 3) - ax;
        double my = cornerY(t, (k + 1) % 3) - ay;
        int far = (m + 1) % 3; // my corner k is the far end of the edge as the other triangle runs
        double bx = cornerX(other, far);
        double by = cornerY(other, far);
        double tx = cornerX(other, m) - bx;
        double ty = cornerY(other, m) - by;
        double along = mx * tx + my * ty;
        double aside = mx * ty - my * tx;
        double length = Math.sqrt(along * along + aside * aside);
        double c = along / length;
        double s = aside / length;
        turn[e] = Math.atan2(aside, along);
        unfold[4 * e] = c;
        unfold[4 * e + 1] = s;
        unfold[4 * e + 2] = bx - (c * ax - s * ay);
        unfold[4 * e + 3] = by - (s * ax + c * ay);
    }

    double cornerX(int t, int k) {
        return k == 0 ? 0 : k == 1 ? plane[3 * t] : plane[3 * t + 1];
    }

    double cornerY(int t, int k) {
        return k == 2 ? plane[3 * t + 2] : 0;
    }

    /** Number of triangles. */
    public int triangles() {
        return corners.length / 3;
    }

    /** Number of points. */
    public int pointCount() {
        return points.length / 3;
    }

    /** 3 coordinates per point, m; read only. */
    public double[] points() {
        return points;
    }

    /** 3 points per triangle; read only. */
    public int[] corners() {
        return corners;
    }

    /** The triangle across edge {@code k} (from corner k to the next) of a triangle; -1 at the rim. */
    public int across(int triangle, int k) {
        return across[3 * triangle + k];
    }

    /** A triangle in its own plane: length of its first edge, x and y of its third corner, m. */
    public double[] localCorners(int t) {
        return Arrays.copyOfRange(plane, 3 * t, 3 * t + 3);
    }

    /** Area of a triangle, m². */
    public double area(int t) {
        return plane[3 * t] * plane[3 * t + 2] / 2;
    }

    /** Position in space of a point of a triangle's plane. */
    public void position(int t, double x, double y, double[] xyz) {
        int a = 3 * corners[3 * t];
        int f = 9 * t;
        for (int i = 0; i < 3; i++) {
            xyz[i] = points[a + i] + x * frame[f + i] + y * frame[f + 3 + i];
        }
    }

    /** Unit vector in space of a direction in a triangle's plane, given by its angle from the frame's x, rad. */
    public void direction(int t, double angle, double[] xyz) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        int f = 9 * t;
        for (int i = 0; i < 3; i++) {
            xyz[i] = c * frame[f + i] + s * frame[f + 3 + i];
        }
    }

    /** Angle in a triangle's plane of the projection of a vector in space, rad. */
    public double angle(int t, double[] vector) {
        int f = 9 * t;
        double x = vector[0] * frame[f] + vector[1] * frame[f + 1] + vector[2] * frame[f + 2];
        double y = vector[0] * frame[f + 3] + vector[1] * frame[f + 4] + vector[2] * frame[f + 5];
        return Math.atan2(y, x);
    }

    /** Unit normal of a triangle. */
    public double[] normal(int t) {
        return Arrays.copyOfRange(frame, 9 * t + 6, 9 * t + 9);
    }

    /** The point of a triangle with these weights of its second and third corner. */
    public SurfacePoint at(int t, double second, double third) {
        return new SurfacePoint(t, second * plane[3 * t] + third * plane[3 * t + 1], third * plane[3 * t + 2]);
    }

    /** The weights of a triangle's second and third corner at a point of its plane. */
    public double[] weights(SurfacePoint p) {
        int t = p.triangle();
        double third = p.y() / plane[3 * t + 2];
        return new double[] {(p.x() - third * plane[3 * t + 1]) / plane[3 * t], third};
    }

    /** The angle from triangle {@code from} to its neighbour {@code to} by which directions turn, rad; 0 to itself. */
    public double turnInto(int from, int to) {
        for (int k = 0; from != to && k < 3; k++) {
            if (across[3 * from + k] == to) {
                return turn[3 * from + k];
            }
        }
        return 0;
    }

    /** Whether two triangles are the same or share an edge. */
    public boolean touch(int a, int b) {
        return a == b || across[3 * a] == b || across[3 * a + 1] == b || across[3 * a + 2] == b;
    }

    /** Angle at corner k of a triangle, rad. */
    public double cornerAngle(int t, int k) {
        double x = cornerX(t, k);
        double y = cornerY(t, k);
        double px = cornerX(t, (k + 1) % 3) - x;
        double py = cornerY(t, (k + 1) % 3) - y;
        double qx = cornerX(t, (k + 2) % 3) - x;
        double qy = cornerY(t, (k + 2) % 3) - y;
        return Math.atan2(px * qy - py * qx, px * qx + py * qy);
    }

    /**
     * The whole (Gaussian) curvature gathered in every point, rad: 2π less the angles round it, 0 at the rim. Summed over
     * a patch it is the angle no flat pattern can take out (Gauss & Bonnet).
     */
    public double[] curvatures() {
        double[] left = new double[pointCount()];
        boolean[] rim = new boolean[pointCount()];
        for (int e = 0; e < corners.length; e++) {
            left[corners[e]] += cornerAngle(e / 3, e % 3);
            if (across[e] < 0) {
                rim[corners[e]] = true;
                rim[corners[next(e)]] = true;
            }
        }
        for (int p = 0; p < left.length; p++) {
            left[p] = rim[p] || left[p] == 0 ? 0 : 2 * Math.PI - left[p];
        }
        return left;
    }
}
