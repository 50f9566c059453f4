// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.OptionalDouble;

/**
 * Puck's criterion in plane stress (Puck and Schürmann 1998, Compos. Sci. Technol. 58, 1045; Puck, Kopp and Knops 2002):
 * fibre fracture by maximum fibre stress, inter-fibre fracture in three modes. For unidirectional plies.
 *
 * <p>With p± the {@link PuckSlopes slopes}, RA = (S/2p−)(√(1 + 2 p− YC/S) − 1), p⊥⊥ = p− RA/S, τc = S √(1 + 2 p⊥⊥):
 *
 * <ul>
 *   <li>A, σ2 ≥ 0: √[(τ/S)² + (1 − p+ YT/S)² (σ2/YT)²] + p+ σ2/S = 1
 *   <li>B, |σ2/τ| ≤ RA/τc: [√(τ² + (p− σ2)²) + p− σ2]/S = 1
 *   <li>C, beyond: {[τ/(2 (1 + p⊥⊥) S)]² + (σ2/YC)²} YC/(−σ2) = 1, the fracture plane standing at
 *       cos²θ = [(RA τ/(S σ2))² + 1]/(2 (1 + p⊥⊥))
 * </ul>
 *
 * <p>Fibre stress does not weaken the matrix here (Puck's exponents for σ1 near fibre fracture are left out).
 */
public final class Puck {
    private Puck() {}

    /**
     * With these strengths.
     *
     * @throws IllegalArgumentException for a cloth, which has no single direction between fibres
     */
    public static PlyCriterion of(PlyStrengths s, PuckSlopes slopes) {
        if (s.woven()) {
            throw new IllegalArgumentException("Puck's criterion is for unidirectional plies, not for cloth");
        }
        return new PlyCriterion(
                "Puck",
                "Puck, Kopp and Knops 2002; slopes " + slopes.tension() + " and " + slopes.compression(),
                new PlaneSurface(FailureMode.FIBRE_TENSION, 1 / s.xt(), 0, 0),
                new PlaneSurface(FailureMode.FIBRE_COMPRESSION, -1 / s.xc(), 0, 0),
                new InterFibre(s, slopes));
    }

    /**
     * Stress exposure fE of inter-fibre fracture: 1 at fracture, proportional to the stress.
     *
     * @param s2 stress across the fibres, Pa
     * @param s12 in-plane shear stress, Pa
     */
    public static double exposure(PlyStrengths s, PuckSlopes slopes, double s2, double s12) {
        return 1 / new InterFibre(s, slopes).reserve(0, s2, s12, 0, 0, 0);
    }

    /** Fracture resistance of the action plane against transverse shear, RA, Pa. */
    public static double actionPlaneResistance(PlyStrengths s, PuckSlopes slopes) {
        double p = slopes.compression();
        return s.s12() / (2 * p) * (Math.sqrt(1 + 2 * p * s.yc() / s.s12()) - 1);
    }

    /** Slope p⊥⊥(−) that follows from Parabolic coupling, p⊥⊥ / RA = p− / S. */
    public static double transverseSlope(PlyStrengths s, PuckSlopes slopes) {
        return slopes.compression() * actionPlaneResistance(s, slopes) / s.s12();
    }

    /** Shear stress at the border of modes B and C, Pa. */
    public static double borderShear(PlyStrengths s, PuckSlopes slopes) {
        return s.s12() * Math.sqrt(1 + 2 * transverseSlope(s, slopes));
    }

    private static final class InterFibre extends FailureSurface {
        private final double resistance;
        private final double slope;
        private final double border;
        private final double shear;
        private final Quadric a;
        private final Quadric b;
        private final Quadric c;
        private final boolean convex;

        InterFibre(PlyStrengths s, PuckSlopes p) {
            super(
                    0,
                    1,
                    0,
                    0,
                    borderShear(s, p),
                    actionPlaneResistance(s, p),
                    0,
                    borderShear(s, p),
                    -actionPlaneResistance(s, p));
            resistance = actionPlaneResistance(s, p);
            slope = transverseSlope(s, p);
            border = borderShear(s, p);
            shear = s.s12();
            // A is then an ellipse and meets B without caving in; B runs into C without a kink.
            convex = p.tension() >= p.compression() && 2 * p.tension() * s.yt() < shear;
            double f66 = 1 / (shear * shear);
            double across = (1 - p.tension() * s.yt() / shear) / s.yt();
            double lift = p.tension() / shear;
            a = new Quadric(0, across * across - lift * lift, f66, 0, 0, 2 * lift, 0, -1);
            b = new Quadric(0, 0, f66, 0, 0, 2 * p.compression() / shear, 0, -1);
            double wide = 2 * (1 + slope) * shear;
            c = new Quadric(0, 1 / (s.yc() * s.yc()), 1 / (wide * wide), 0, 0, 1 / s.yc(), 0, 0);
        }

        @Override
        boolean convex() {
            return convex;
        }

        @Override
        double kept(double fibre, double between) {
            return between;
        }

        @Override
        Quadric pieceAt(double s1, double s2, double s12) {
            return switch (modeAt(s1, s2, s12)) {
                case INTER_FIBRE_A -> a;
                case INTER_FIBRE_B -> b;
                default -> c;
            };
        }

        @Override
        FailureMode modeAt(double s1, double s2, double s12) {
            if (s2 >= 0) {
                return FailureMode.INTER_FIBRE_A;
            }
            return -s2 * border <= resistance * Math.abs(s12) ? FailureMode.INTER_FIBRE_B : FailureMode.INTER_FIBRE_C;
        }

        @Override
        OptionalDouble fractureAngleAt(double s1, double s2, double s12) {
            if (modeAt(s1, s2, s12) != FailureMode.INTER_FIBRE_C) {
                return OptionalDouble.of(0);
            }
            double ratio = resistance * s12 / (shear * s2);
            double cosine = Math.sqrt((ratio * ratio + 1) / (2 * (1 + slope)));
            return OptionalDouble.of(Math.acos(Math.min(1, cosine)));
        }
    }
}
