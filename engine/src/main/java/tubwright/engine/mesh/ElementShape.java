// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

/**
 * How well an element is shaped: 1 for a square or an equilateral triangle, 0 for a degenerate one, negative for one
 * that is folded in the chart. Angles are true angles in space.
 */
final class ElementShape {
    private ElementShape() {}

    static double of(PlaneMesh m, int e) {
        int at = 4 * e;
        return m.corners[at + 3] < 0
                ? triangle(m, m.corners[at], m.corners[at + 1], m.corners[at + 2])
                : quad(m, m.corners[at], m.corners[at + 1], m.corners[at + 2], m.corners[at + 3]);
    }

    /** Smallest sine of the corners, over that of 60 degrees. */
    static double triangle(PlaneMesh m, int p, int q, int r) {
        if (cross(m, p, q, r) <= 0) {
            return -1;
        }
        double least = Math.min(sine(m, p, q, r), Math.min(sine(m, q, r, p), sine(m, r, p, q)));
        return Math.min(1, least / 0.8660254037844386);
    }

    /** Smallest sine of the corners; negative where a corner is not convex. */
    static double quad(PlaneMesh m, int p, int q, int r, int s) {
        double least = Math.min(
                Math.min(signed(m, p, q, r), signed(m, q, r, s)), Math.min(signed(m, r, s, p), signed(m, s, p, q)));
        return least;
    }

    private static double signed(PlaneMesh m, int p, int q, int r) {
        return cross(m, p, q, r) <= 0 ? -1 : sine(m, p, q, r);
    }

    private static double cross(PlaneMesh m, int p, int q, int r) {
        return (m.a[q] - m.a[p]) * (m.b[r] - m.b[q]) - (m.b[q] - m.b[p]) * (m.a[r] - m.a[q]);
    }

    /** Sine of the angle at q between p and r. */
    private static double sine(PlaneMesh m, int p, int q, int r) {
        double ux = m.xyz[3 * p] - m.xyz[3 * q];
        double uy = m.xyz[3 * p + 1] - m.xyz[3 * q + 1];
        double uz = m.xyz[3 * p + 2] - m.xyz[3 * q + 2];
        double vx = m.xyz[3 * r] - m.xyz[3 * q];
        double vy = m.xyz[3 * r + 1] - m.xyz[3 * q + 1];
        double vz = m.xyz[3 * r + 2] - m.xyz[3 * q + 2];
        double cx = uy * vz - uz * vy;
        double cy = uz * vx - ux * vz;
        double cz = ux * vy - uy * vx;
        double l = (ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz);
        return l > 0 ? Math.sqrt((cx * cx + cy * cy + cz * cz) / l) : 0;
    }
}
