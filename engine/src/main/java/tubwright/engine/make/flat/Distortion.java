// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import tubwright.engine.make.surface.TriangleSurface;

/**
 * How a flat pattern differs from the surface it comes from, by the singular values σ1 ≥ σ2 of each triangle's map into
 * the plane (the flat's length over the surface's).
 *
 * @param longest largest σ1 less 1
 * @param shortest smallest σ2 less 1, negative where the flat is short
 * @param mean root mean square of σ1 − 1 and σ2 − 1 over the area
 * @param area flat area over surface area, less 1
 * @param angle largest σ1/σ2 less 1
 * @param beyond share of the area where a length is off by more than {@link #LIMIT}
 * @param flipped triangles that came to lie upside down
 */
public record Distortion(
        double longest, double shortest, double mean, double area, double angle, double beyond, int flipped) {
    /** What tape, film and core take without a cut: 0.5 %, from memory, low confidence. */
    public static final double LIMIT = 0.005;

    /** Of a map that gives each point of a surface two coordinates. */
    public static Distortion of(TriangleSurface surface, double[] flat) {
        double longest = Double.NEGATIVE_INFINITY;
        double shortest = Double.POSITIVE_INFINITY;
        double angle = 0;
        double sum = 0;
        double whole = 0;
        double laid = 0;
        double beyond = 0;
        int flipped = 0;
        for (int t = 0; t < surface.triangles(); t++) {
            double[] s = stretches(surface, flat, t);
            double area = surface.area(t);
            longest = Math.max(longest, s[0] - 1);
            shortest = Math.min(shortest, s[1] - 1);
            angle = Math.max(angle, s[0] / Math.max(1e-12, Math.abs(s[1])) - 1);
            sum += area * ((s[0] - 1) * (s[0] - 1) + (s[1] - 1) * (s[1] - 1)) / 2;
            whole += area;
            laid += area * s[0] * s[1];
            if (s[0] - 1 > LIMIT || 1 - s[1] > LIMIT) {
                beyond += area;
            }
            if (s[1] <= 0) {
                flipped++;
            }
        }
        return new Distortion(
                longest, shortest, Math.sqrt(sum / whole), laid / whole - 1, angle, beyond / whole, flipped);
    }

    /** σ1 and σ2 of one triangle; σ2 is negative where it lies upside down. */
    public static double[] stretches(TriangleSurface surface, double[] flat, int t) {
        int a = 2 * surface.corners()[3 * t];
        int b = 2 * surface.corners()[3 * t + 1];
        int c = 2 * surface.corners()[3 * t + 2];
        double[] local = surface.localCorners(t);
        double ux = (flat[b] - flat[a]) / local[0];
        double vx = (flat[b + 1] - flat[a + 1]) / local[0];
        double uy = (flat[c] - flat[a] - local[1] * ux) / local[2];
        double vy = (flat[c + 1] - flat[a + 1] - local[1] * vx) / local[2];
        double sum = Math.sqrt((ux + vy) * (ux + vy) + (vx - uy) * (vx - uy));
        double difference = Math.sqrt((ux - vy) * (ux - vy) + (vx + uy) * (vx + uy));
        return new double[] {(sum + difference) / 2, (sum - difference) / 2};
    }
}
