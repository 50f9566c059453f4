// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/**
 * Hashin's criterion in plane stress (Hashin 1980, J. Appl. Mech. 47, 329): four surfaces.
 *
 * <p>Fibre tension (σ1/XT)² + α (τ/S)² = 1; fibre compression σ1 = −XC; matrix tension (σ2/YT)² + (τ/S)² = 1; matrix
 * compression (σ2/2ST)² + [(YC/2ST)² − 1] σ2/YC + (τ/S)² = 1. For unidirectional plies.
 */
public final class Hashin {
    private Hashin() {}

    /**
     * With transverse shear strength ST = YC/2, Hashin's own choice, and no shear in fibre tension (α = 0).
     */
    public static PlyCriterion of(PlyStrengths s) {
        return of(s, s.yc() / 2, 0);
    }

    /**
     * With stated choices.
     *
     * @param st transverse shear strength, Pa: YC/2, or {@link FracturePlane#transverseShearStrength()}
     * @param alpha weight of shear in fibre tension, 0 or 1
     * @throws IllegalArgumentException for a cloth, whose direction 2 is no matrix direction
     */
    public static PlyCriterion of(PlyStrengths s, double st, double alpha) {
        if (s.woven()) {
            throw new IllegalArgumentException("Hashin's criterion is for unidirectional plies, not for cloth");
        }
        String choices = "ST = " + Math.round(1000 * st / s.yc()) / 1000.0 + " YC, shear in fibre tension " + alpha;
        return new PlyCriterion("Hashin", "Hashin 1980; " + choices, new Fibre(s, alpha), new Matrix(s, st));
    }

    private static final class Fibre extends FailureSurface {
        private final Quadric tension;
        private final Quadric compression;
        private final boolean convex;

        Fibre(PlyStrengths s, double alpha) {
            super(1, 0, 0);
            tension = new Quadric(1 / (s.xt() * s.xt()), 0, alpha / (s.s12() * s.s12()), 0, 0, 0, 0, -1);
            compression = Quadric.plane(-1 / s.xc(), 0, 0);
            convex = alpha == 0;
        }

        @Override
        boolean convex() {
            return convex;
        }

        @Override
        double kept(double fibre, double between) {
            return fibre;
        }

        @Override
        Quadric pieceAt(double s1, double s2, double s12) {
            return s1 > 0 ? tension : compression;
        }

        @Override
        FailureMode modeAt(double s1, double s2, double s12) {
            return s1 > 0 ? FailureMode.FIBRE_TENSION : FailureMode.FIBRE_COMPRESSION;
        }
    }

    private static final class Matrix extends FailureSurface {
        private final Quadric tension;
        private final Quadric compression;
        private final boolean convex;

        Matrix(PlyStrengths s, double st) {
            super(0, 1, 0);
            double shear = 1 / (s.s12() * s.s12());
            double ratio = s.yc() / (2 * st);
            tension = new Quadric(0, 1 / (s.yt() * s.yt()), shear, 0, 0, 0, 0, -1);
            compression = new Quadric(0, 1 / (4 * st * st), shear, 0, 0, (ratio * ratio - 1) / s.yc(), 0, -1);
            convex = ratio <= 1;
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
            return s2 > 0 ? tension : compression;
        }

        @Override
        FailureMode modeAt(double s1, double s2, double s12) {
            return s2 > 0 ? FailureMode.MATRIX_TENSION : FailureMode.MATRIX_COMPRESSION;
        }
    }
}
