// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Strengths;

/**
 * Criteria of ply strength in plane stress. Each gives the stress exposure: the inverse of the factor by which all three
 * stresses may grow in proportion before the criterion is met.
 *
 * <p>First-ply failure of the resin is not the strength of a laminate, which often carries several times as much; ask
 * {@link FailureMode#isFibre()} and report the two apart.
 */
public enum StrengthCriterion {
    /** Each stress against its own strength. */
    MAXIMUM_STRESS {
        @Override
        public Exposure exposure(double[] s, Strengths r) {
            return Exposure.larger(
                    fibre(s[0], r),
                    Exposure.larger(
                            s[1] >= 0
                                    ? new Exposure(s[1] / r.yt(), FailureMode.MATRIX_TENSION)
                                    : new Exposure(-s[1] / r.yc(), FailureMode.MATRIX_COMPRESSION),
                            new Exposure(Math.abs(s[2]) / r.s12(), FailureMode.SHEAR)));
        }
    },

    /** Tsai and Hill with strengths by the sign of each stress (Kaw 2006, eq. 2.151). */
    MODIFIED_TSAI_HILL {
        @Override
        public Exposure exposure(double[] s, Strengths r) {
            double x1 = s[0] >= 0 ? r.xt() : r.xc();
            double x2 = s[1] >= 0 ? r.xt() : r.xc();
            double y = s[1] >= 0 ? r.yt() : r.yc();
            double f = square(s[0] / x1) - s[0] * s[1] / (x2 * x2) + square(s[1] / y) + square(s[2] / r.s12());
            return new Exposure(Math.sqrt(Math.max(0, f)), FailureMode.INTERACTION);
        }
    },

    /** Tsai and Wu 1971 with the interaction term F12 = −½ √(F11 F22). */
    TSAI_WU {
        @Override
        public Exposure exposure(double[] s, Strengths r) {
            double f11 = 1 / (r.xt() * r.xc());
            double f22 = 1 / (r.yt() * r.yc());
            double quadratic =
                    f11 * s[0] * s[0] + f22 * s[1] * s[1] + square(s[2] / r.s12()) - Math.sqrt(f11 * f22) * s[0] * s[1];
            double linear = (1 / r.xt() - 1 / r.xc()) * s[0] + (1 / r.yt() - 1 / r.yc()) * s[1];
            return new Exposure(exposureOf(quadratic, linear), FailureMode.INTERACTION);
        }
    },

    /** Hashin 1980 in plane stress, transverse shear strength taken as YC/2, shear counted in fibre tension. */
    HASHIN {
        @Override
        public Exposure exposure(double[] s, Strengths r) {
            double shear = square(s[2] / r.s12());
            Exposure fibre = s[0] >= 0
                    ? new Exposure(Math.sqrt(square(s[0] / r.xt()) + shear), FailureMode.FIBRE_TENSION)
                    : new Exposure(-s[0] / r.xc(), FailureMode.FIBRE_COMPRESSION);
            // With ST = YC/2 the linear term of matrix compression vanishes.
            Exposure matrix = s[1] >= 0
                    ? new Exposure(Math.sqrt(square(s[1] / r.yt()) + shear), FailureMode.MATRIX_TENSION)
                    : new Exposure(Math.sqrt(square(s[1] / r.yc()) + shear), FailureMode.MATRIX_COMPRESSION);
            return Exposure.larger(fibre, matrix);
        }
    },

    /** Puck's plane-stress criterion with the slopes of carbon, p+ = .35 and p− = .30 (Puck, Kopp and Knops 2002). */
    PUCK {
        @Override
        public Exposure exposure(double[] s, Strengths r) {
            double tau = Math.abs(s[2]);
            double plus = 0.35;
            double minus = 0.30;
            double ra = r.s12() / (2 * minus) * (Math.sqrt(1 + 2 * minus * r.yc() / r.s12()) - 1);
            double across = minus * ra / r.s12();
            double tauC = r.s12() * Math.sqrt(1 + 2 * across);
            Exposure matrix;
            if (s[1] >= 0) {
                double f = Math.sqrt(square(tau / r.s12()) + square((1 - plus * r.yt() / r.s12()) * s[1] / r.yt()))
                        + plus * s[1] / r.s12();
                matrix = new Exposure(f, FailureMode.MATRIX_TENSION);
            } else if (-s[1] * tauC <= ra * tau) {
                double f = (Math.sqrt(tau * tau + square(minus * s[1])) + minus * s[1]) / r.s12();
                matrix = new Exposure(f, FailureMode.SHEAR);
            } else {
                double f = (square(tau / (2 * (1 + across) * r.s12())) + square(s[1] / r.yc())) * r.yc() / -s[1];
                matrix = new Exposure(f, FailureMode.MATRIX_COMPRESSION);
            }
            return Exposure.larger(fibre(s[0], r), matrix);
        }
    };

    /**
     * How far a ply is used.
     *
     * @param value 0 unloaded, 1 at failure
     * @param mode what fails
     */
    public record Exposure(double value, FailureMode mode) {
        static Exposure larger(Exposure a, Exposure b) {
            return a.value >= b.value ? a : b;
        }

        /** The factor on the stresses at failure; infinite if unloaded. */
        public double reserveFactor() {
            return 1 / value;
        }
    }

    /**
     * Exposure under stresses that all grow together.
     *
     * @param stress (σ1, σ2, τ12) in the ply's axes, Pa
     */
    public abstract Exposure exposure(double[] stress, Strengths strengths);

    /**
     * Factor on the load stresses alone at failure, residual stresses staying as they are; 0 if the residual stresses fail
     * the ply by themselves, infinite if no factor up to 10⁹ does.
     *
     * @param load (σ1, σ2, τ12) that grow, Pa
     * @param residual (σ1, σ2, τ12) that stay, Pa
     */
    public double reserveFactor(double[] load, double[] residual, Strengths strengths) {
        if (exposureAt(load, residual, 0, strengths) >= 1) {
            return 0;
        }
        double high = 1e-3;
        while (exposureAt(load, residual, high, strengths) < 1) {
            high *= 2;
            if (high > 1e9) {
                return Double.POSITIVE_INFINITY;
            }
        }
        double low = high > 1e-3 ? high / 2 : 0;
        while (high - low > 1e-12 * high) {
            double middle = 0.5 * (low + high);
            if (exposureAt(load, residual, middle, strengths) < 1) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private double exposureAt(double[] load, double[] residual, double factor, Strengths strengths) {
        double[] total = new double[3];
        for (int i = 0; i < 3; i++) {
            total[i] = residual[i] + factor * load[i];
        }
        return exposure(total, strengths).value();
    }

    private static Exposure fibre(double s1, Strengths r) {
        return s1 >= 0
                ? new Exposure(s1 / r.xt(), FailureMode.FIBRE_TENSION)
                : new Exposure(-s1 / r.xc(), FailureMode.FIBRE_COMPRESSION);
    }

    /** 1/f with quadratic f² + linear f = 1, f > 0. */
    private static double exposureOf(double quadratic, double linear) {
        return 0.5 * (linear + Math.sqrt(Math.max(0, linear * linear + 4 * quadratic)));
    }

    private static double square(double x) {
        return x * x;
    }
}
