// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

/**
 * Walks straight over a {@link TriangleSurface}: on from triangle to triangle with the direction kept in the unfolded
 * plane, which is parallel transport. A reusable holder for hot loops; one per thread.
 */
public final class Walker {
    private static final int MOST_CROSSINGS = 100_000;

    private final TriangleSurface surface;
    /** The triangle walked to. */
    public int triangle;
    /** Place in its plane, m. */
    public double x;

    public double y;
    /** Direction in its plane, from the frame's x, rad. */
    public double angle;
    /** How far the last walk went, m. */
    public double walked;

    public Walker(TriangleSurface surface) {
        this.surface = surface;
    }

    /** Stands at a point and looks along a direction of its triangle's plane. */
    public void stand(int atTriangle, double atX, double atY, double direction) {
        triangle = atTriangle;
        x = atX;
        y = atY;
        angle = direction;
    }

    /**
     * Walks on.
     *
     * @param distance m, not negative
     * @return whether all of it was walked; false where the rim of the surface was met first
     */
    public boolean walk(double distance) {
        double rest = distance;
        double dx = Math.cos(angle);
        double dy = Math.sin(angle);
        int entered = -1;
        for (int crossings = 0; crossings < MOST_CROSSINGS; crossings++) {
            int out = -1;
            double least = Double.POSITIVE_INFINITY;
            double bx = surface.plane[3 * triangle];
            double cx = surface.plane[3 * triangle + 1];
            double cy = surface.plane[3 * triangle + 2];
            for (int k = 0; k < 3; k++) {
                if (k == entered) {
                    continue;
                }
                double px = k == 0 ? 0 : k == 1 ? bx : cx;
                double py = k == 2 ? cy : 0;
                double nx = k == 0 ? 0 : k == 1 ? cy : -cy;
                double ny = k == 0 ? -bx : k == 1 ? bx - cx : cx;
                double speed = nx * dx + ny * dy;
                if (speed > 0) {
                    double t = Math.max(0, (nx * (px - x) + ny * (py - y)) / speed);
                    if (t < least) {
                        least = t;
                        out = k;
                    }
                }
            }
            if (out < 0 || least >= rest) {
                x += rest * dx;
                y += rest * dy;
                walked = distance;
                return true;
            }
            x += least * dx;
            y += least * dy;
            rest -= least;
            int e = 3 * triangle + out;
            int next = surface.across[e];
            if (next < 0) {
                walked = distance - rest;
                return false;
            }
            double c = surface.unfold[4 * e];
            double s = surface.unfold[4 * e + 1];
            double ox = x;
            double od = dx;
            x = c * ox - s * y + surface.unfold[4 * e + 2];
            y = s * ox + c * y + surface.unfold[4 * e + 3];
            dx = c * od - s * dy;
            dy = s * od + c * dy;
            angle += surface.turn[e];
            entered = surface.acrossEdge[e];
            triangle = next;
        }
        throw new IllegalStateException("a straight line of " + distance + " m does not leave triangle " + triangle);
    }

    /** Where the walker stands. */
    public SurfacePoint point() {
        return new SurfacePoint(triangle, x, y);
    }
}
