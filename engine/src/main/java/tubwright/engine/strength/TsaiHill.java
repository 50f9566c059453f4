// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/**
 * Hill's yield condition carried over to plies (Azzi and Tsai 1965; Kaw 2006, section 2.8.6).
 *
 * <p>(σ1² − σ1 σ2)/X² + σ2²/Y² + τ²/S² = 1.
 */
public final class TsaiHill {
    private TsaiHill() {}

    /** As first written: the tensile strengths serve for both signs. */
    public static PlyCriterion plain(PlyStrengths s) {
        return new PlyCriterion(
                "Tsai-Hill", "Azzi and Tsai 1965; tensile strengths for both signs", new Surface(s, false));
    }

    /** The strengths follow the signs: X of the first term that of σ1, X of the product that of σ2 (Kaw eq. 2.150). */
    public static PlyCriterion modified(PlyStrengths s) {
        return new PlyCriterion(
                "modified Tsai-Hill", "Kaw 2006, eq. 2.150; strengths by sign of stress", new Surface(s, true));
    }

    private static final class Surface extends FailureSurface {
        private final PlyStrengths strengths;
        /** Index 2 (σ1 > 0) + (σ2 > 0). */
        private final Quadric[] pieces = new Quadric[4];

        Surface(PlyStrengths s, boolean bySign) {
            super(1, 0, 0, 0, 1, 0);
            strengths = s;
            for (int i = 0; i < 4; i++) {
                double x1 = !bySign || i / 2 == 1 ? s.xt() : s.xc();
                double x2 = !bySign || i % 2 == 1 ? s.xt() : s.xc();
                double y = !bySign || i % 2 == 1 ? s.yt() : s.yc();
                pieces[i] =
                        new Quadric(1 / (x1 * x1), 1 / (y * y), 1 / (s.s12() * s.s12()), -1 / (x2 * x2), 0, 0, 0, -1);
            }
        }

        @Override
        Quadric pieceAt(double s1, double s2, double s12) {
            return pieces[(s1 > 0 ? 2 : 0) + (s2 > 0 ? 1 : 0)];
        }

        @Override
        FailureMode modeAt(double s1, double s2, double s12) {
            return strengths.largestRatio(s1, s2, s12);
        }
    }
}
