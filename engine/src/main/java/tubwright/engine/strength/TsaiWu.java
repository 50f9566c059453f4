// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/**
 * The tensor polynomial (Tsai and Wu 1971): F1 σ1 + F2 σ2 + F11 σ1² + F22 σ2² + F66 τ² + 2 F12 σ1 σ2 = 1.
 *
 * <p>F1 = 1/XT − 1/XC, F11 = 1/(XT XC), likewise across; F66 = 1/S²; F12 = F12* √(F11 F22). The interaction term cannot be
 * had from uniaxial tests and has to be stated with every result.
 */
public final class TsaiWu {
    /** The usual value, for which the polynomial becomes Hill's for equal strengths (Tsai and Hahn 1980). */
    public static final double USUAL_INTERACTION = -0.5;

    private TsaiWu() {}

    /**
     * With these strengths.
     *
     * @param interaction F12*, between −1 and 1 or the surface would be open
     */
    public static PlyCriterion of(PlyStrengths s, double interaction) {
        if (!(Math.abs(interaction) < 1)) {
            throw new IllegalArgumentException(
                    "the Tsai-Wu interaction term F12* must lie between -1 and 1, not " + interaction);
        }
        double f11 = 1 / (s.xt() * s.xc());
        double f22 = 1 / (s.yt() * s.yc());
        Quadric quadric = new Quadric(
                f11,
                f22,
                1 / (s.s12() * s.s12()),
                2 * interaction * Math.sqrt(f11 * f22),
                1 / s.xt() - 1 / s.xc(),
                1 / s.yt() - 1 / s.yc(),
                0,
                -1);
        return new PlyCriterion("Tsai-Wu", "Tsai and Wu 1971; F12* = " + interaction, new FailureSurface() {
            @Override
            boolean convex() {
                return true;
            }

            @Override
            Quadric pieceAt(double s1, double s2, double s12) {
                return quadric;
            }

            @Override
            FailureMode modeAt(double s1, double s2, double s12) {
                return s.largestRatio(s1, s2, s12);
            }
        });
    }
}
