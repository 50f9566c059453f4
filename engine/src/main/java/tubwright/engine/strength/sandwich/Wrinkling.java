// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/**
 * Short-wave buckling of a face on its core (Hoff and Mautner 1945; Plantema 1966; Allen 1969; Sullins, Smith and Spier
 * 1969, NASA CR-1457; reviewed by Ley, Lin and Mbanefo 1999, NASA/CR-1999-208994). Stresses in the face, Pa.
 *
 * <p>Constants from memory unless said. Real faces are wavy: tests lie far below theory, hence the design constants.
 */
public final class Wrinkling {
    /** Theory on a thick isotropic core, symmetric waves (Hoff and Mautner). */
    public static final double THEORY_ISOTROPIC = 0.91;

    /** Theory by decaying waves (Plantema). */
    public static final double PLANTEMA = 0.825;

    /** Theory with a Winkler foundation (re-read). */
    public static final double WINKLER = 0.76;

    /** Design value for thin cores (re-read). */
    public static final double DESIGN_THIN_ISOTROPIC = 0.63;

    /** Design value for thick isotropic cores: lower bound of tests (re-read). */
    public static final double DESIGN_ISOTROPIC = 0.50;

    /** Theory on honeycomb, √(2/3), rounded up to .82 in the handbooks (re-read). */
    public static final double THEORY_HONEYCOMB = 0.82;

    /** Design value on honeycomb: lower bound of tests (re-read). */
    public static final double DESIGN_HONEYCOMB = 0.33;

    private Wrinkling() {}

    /** On an isotropic core, Q (Ef Ec Gc)^⅓. */
    public static double onIsotropicCore(double q, double faceModulus, double coreModulus, double coreShearModulus) {
        return q * Math.cbrt(faceModulus * coreModulus * coreShearModulus);
    }

    /** Core thickness above which the isotropic formula holds, 1.82 tf (Ef Ec/Gc²)^⅓, m. */
    public static double thickCoreLimit(
            double faceThickness, double faceModulus, double coreModulus, double coreShearModulus) {
        return 1.82 * faceThickness * Math.cbrt(faceModulus * coreModulus / (coreShearModulus * coreShearModulus));
    }

    /** On honeycomb, k Ef √(Ec tf/(Ef tc)). */
    public static double onHoneycomb(
            double k, double faceModulus, double faceThickness, double coreModulus, double coreThickness) {
        return k * faceModulus * Math.sqrt(coreModulus * faceThickness / (faceModulus * coreThickness));
    }

    /** Orthotropic face on honeycomb, theory: √[2 tf Ec √(Ex Ey)/(3 tc (1 − νxy νyx))] (re-read as a NASA formula). */
    public static double orthotropicOnHoneycomb(
            double ex, double ey, double nuxy, double faceThickness, double coreModulus, double coreThickness) {
        double contraction = 1 - nuxy * nuxy * ey / ex;
        return Math.sqrt(2 * faceThickness * coreModulus * Math.sqrt(ex * ey) / (3 * coreThickness * contraction));
    }

    /**
     * Share of the theoretical value on honeycomb that is left to a face with waves of amplitude δ0, whose core crushes:
     * 1/(1 + 0.64 δ0 Ec/(tc Fc)) (NASA CR-1457).
     *
     * @param amplitude δ0, m
     * @param flatwiseStrength Fc of the core or its bond, the lesser of tension and compression, Pa
     */
    public static double wavinessFactor(
            double amplitude, double coreModulus, double coreThickness, double flatwiseStrength) {
        return 1 / (1 + 0.64 * amplitude * coreModulus / (coreThickness * flatwiseStrength));
    }

    /** Share left of the uniaxial value with γ = minor/major compression acting across: (1 + γ³)^−⅓. */
    public static double biaxialFactor(double gamma) {
        return 1 / Math.cbrt(1 + gamma * gamma * gamma);
    }

    /**
     * Reserve factor by Rc + Rs² = 1 of compression with shear.
     *
     * @param compression Rc, applied over allowed
     * @param shear Rs, applied over allowed
     */
    public static double reserveWithShear(double compression, double shear) {
        if (shear == 0) {
            return compression > 0 ? 1 / compression : Double.POSITIVE_INFINITY;
        }
        return 2 / (compression + Math.sqrt(compression * compression + 4 * shear * shear));
    }
}
