// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.OptionalDouble;

/**
 * A closed or open surface in ply stress space made of quadrics, each valid in a sector cut out by planes through the
 * origin. All criteria of this package are of that kind, which makes load scaling with a fixed residual stress exact.
 *
 * <p>Immutable and free of allocation in {@link #reserve}, so that it can stand in the innermost loop.
 */
abstract class FailureSurface {
    /** Far above what rounding does to a stress over its strength, far below what anybody would tell apart. */
    static final double HAIR = 1e-9;

    private final double[] borders;

    /** Planes through the origin on which the valid quadric may change: coefficients of (σ1, σ2, τ), three a plane. */
    FailureSurface(double... borders) {
        this.borders = borders;
    }

    /** The quadric valid in the sector of this stress. */
    abstract Quadric pieceAt(double s1, double s2, double s12);

    /** How the ply gives way at this stress. */
    abstract FailureMode modeAt(double s1, double s2, double s12);

    /** Angle between the fracture plane and the thickness direction at this stress, radians, where the criterion knows. */
    OptionalDouble fractureAngleAt(double s1, double s2, double s12) {
        return OptionalDouble.empty();
    }

    /** Whether all that lies between two stresses inside is known to be inside. */
    boolean convex() {
        return false;
    }

    /** Which of two factors, that of the fibres and that between them, this surface can lower: the larger where both. */
    double kept(double fibre, double between) {
        return Math.max(fibre, between);
    }

    /** Whether a stress is inside by more than a hair. */
    boolean holds(double s1, double s2, double s12) {
        return pieceAt(s1, s2, s12).value(s1, s2, s12) < -HAIR;
    }

    /** Smallest λ ≥ 0 at which r + λ m reaches the surface; 0 if r is there already, infinite if it never is. */
    double reserve(double m1, double m2, double m12, double r1, double r2, double r12) {
        if (r1 == 0 && r2 == 0 && r12 == 0) {
            return pieceAt(m1, m2, m12).crossing(m1, m2, m12, 0, 0, 0, 0, Double.POSITIVE_INFINITY);
        }
        double from = 0;
        while (true) {
            double to = nextBorder(m1, m2, m12, r1, r2, r12, from);
            double inside = to == Double.POSITIVE_INFINITY ? 2 * from + 1 : 0.5 * (from + to);
            Quadric piece = pieceAt(r1 + inside * m1, r2 + inside * m2, r12 + inside * m12);
            double found = piece.crossing(m1, m2, m12, r1, r2, r12, from, to);
            if (found < Double.POSITIVE_INFINITY || to == Double.POSITIVE_INFINITY) {
                return found;
            }
            from = to;
        }
    }

    private double nextBorder(double m1, double m2, double m12, double r1, double r2, double r12, double from) {
        double next = Double.POSITIVE_INFINITY;
        for (int i = 0; i < borders.length; i += 3) {
            double rate = borders[i] * m1 + borders[i + 1] * m2 + borders[i + 2] * m12;
            double start = borders[i] * r1 + borders[i + 1] * r2 + borders[i + 2] * r12;
            if (start * rate < 0) {
                double at = -start / rate;
                if (at > from && at < next) {
                    next = at;
                }
            }
        }
        return next;
    }
}
