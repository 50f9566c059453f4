// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/**
 * One piece of a failure surface: a1 σ1² + a2 σ2² + a12 τ² + b σ1 σ2 + l1 σ1 + l2 σ2 + l12 τ + c = 0, negative inside.
 */
record Quadric(double a1, double a2, double a12, double b, double l1, double l2, double l12, double c) {
    /** A root nearer to the end of its piece than this share of the way is left to the next piece. */
    private static final double END = 1e-12;

    /** The plane l1 σ1 + l2 σ2 + l12 τ = 1. */
    static Quadric plane(double l1, double l2, double l12) {
        return new Quadric(0, 0, 0, 0, l1, l2, l12, -1);
    }

    /** Left side of the equation. */
    double value(double s1, double s2, double s12) {
        return a1 * s1 * s1 + a2 * s2 * s2 + a12 * s12 * s12 + b * s1 * s2 + l1 * s1 + l2 * s2 + l12 * s12 + c;
    }

    /**
     * Smallest factor λ in [from, to) at which r + λ m leaves the inside, infinite if there is none.
     *
     * <p>Along the ray the quadric is a parabola in λ, so the root is exact.
     */
    double crossing(double m1, double m2, double m12, double r1, double r2, double r12, double from, double to) {
        double s1 = r1 + from * m1;
        double s2 = r2 + from * m2;
        double s12 = r12 + from * m12;
        double start = value(s1, s2, s12);
        double slope = 2 * (a1 * s1 * m1 + a2 * s2 * m2 + a12 * s12 * m12)
                + b * (s1 * m2 + s2 * m1)
                + l1 * m1
                + l2 * m2
                + l12 * m12;
        if (start > 0 || (start == 0 && slope > 0)) {
            return from;
        }
        double bend = a1 * m1 * m1 + a2 * m2 * m2 + a12 * m12 * m12 + b * m1 * m2;
        double discriminant = slope * slope - 4 * bend * start;
        double step = Double.POSITIVE_INFINITY;
        if (discriminant >= 0) {
            double root = Math.sqrt(discriminant);
            if (slope > 0) {
                step = -2 * start / (slope + root);
            } else if (bend > 0) {
                step = (root - slope) / (2 * bend);
            }
        }
        return from + step < to * (1 - END) ? from + step : Double.POSITIVE_INFINITY;
    }
}
