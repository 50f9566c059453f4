// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * State of a buckled {@link ShearWeb} (Kuhn, Peterson and Levin 1952, NACA TN 2661).
 *
 * <p>σU = −k τ tan α/[AUe/(d t) + ½ (1 − k)], σF = −k τ cot α/[2 AF/(h t) + ½ (1 − k)], strain along the folds ε = (τ/E)
 * {2k/sin 2α + (1 − k)(1 + μ) sin 2α}, and tan²α = (ε − εx)/(ε − εy) with εx = σF/E, εy = σU/E.
 *
 * @param shearStress τ, mean, Pa
 * @param factor k
 * @param angle α of the folds against the flanges, radians
 * @param uprightStress σU, mean along the upright at its median line, Pa, compression negative
 * @param flangeStress σF, Pa, compression negative
 * @param web the sheet
 */
public record DiagonalTension(
        double shearStress, double factor, double angle, double uprightStress, double flangeStress, ShearWeb web) {
    private static final int ROUNDS = 200;

    /** Solves for the angle by repeated substitution. */
    static DiagonalTension of(ShearWeb web, double tau, double k) {
        double alpha = Math.PI / 4;
        double upright = 0;
        double flange = 0;
        for (int i = 0; i < ROUNDS; i++) {
            upright = uprightStress(web, tau, k, alpha);
            flange = flangeStress(web, tau, k, alpha);
            double sine = Math.sin(2 * alpha);
            double along = tau / web.modulus() * (2 * k / sine + (1 - k) * (1 + web.poisson()) * sine);
            double next = Math.atan(Math.sqrt((along - flange / web.modulus()) / (along - upright / web.modulus())));
            if (Math.abs(next - alpha) < 1e-14) {
                break;
            }
            alpha = next;
        }
        return new DiagonalTension(tau, k, alpha, upright, flange, web);
    }

    private static double uprightStress(ShearWeb web, double tau, double k, double alpha) {
        double area = web.uprights().effectiveArea() / (web.spacing() * web.thickness());
        return -k * tau * Math.tan(alpha) / (area + 0.5 * (1 - k));
    }

    private static double flangeStress(ShearWeb web, double tau, double k, double alpha) {
        double area = 2 * web.flangeArea() / (web.depth() * web.thickness());
        return area == Double.POSITIVE_INFINITY ? 0 : -k * tau / Math.tan(alpha) / (area + 0.5 * (1 - k));
    }

    /**
     * Largest over mean stress of an upright, 1 + (1 − k)(0.78 − 0.65 d/hU) (fit to the chart of TN 2661, from memory; it
     * meets both worked examples).
     */
    public double uprightPeakRatio() {
        double aspect = web.spacing() / web.uprights().length();
        return 1 + (1 - factor) * (0.78 - 0.65 * aspect);
    }

    /** Length over which a pair of uprights buckles as a column, hU/√[1 + k² (3 − 2 d/hU)] for d < 1.5 hU, m. */
    public double columnLength() {
        double h = web.uprights().length();
        double aspect = web.spacing() / h;
        return aspect < 1.5 ? h / Math.sqrt(1 + factor * factor * (3 - 2 * aspect)) : h;
    }

    /** Euler stress of a pair of uprights over {@link #columnLength()}, π² E ρ²/Le², Pa. */
    public double columnStress() {
        double slender = columnLength() / web.uprights().gyration();
        return Math.PI * Math.PI * web.modulus() / (slender * slender);
    }

    /** C1 = 1/sin 2α − 1: the folds are not at 45°. */
    public double angleFactor() {
        return 1 / Math.sin(2 * angle) - 1;
    }

    /**
     * ωd = 0.7 d [t/((IT + IC) he)]^¼, how limp the flanges are.
     *
     * @param sumOfFlangeInertias IT + IC, m⁴
     */
    public double flangeLimpness(double sumOfFlangeInertias) {
        return 0.7 * web.spacing() * Math.pow(web.thickness() / (sumOfFlangeInertias * web.depth()), 0.25);
    }

    /**
     * C2, by which limp flanges raise the web stress near the uprights, from ωd.
     *
     * <p>Derived here: the flange is a beam clamped at the uprights, the web its elastic bedding, so that C2 is the largest
     * over mean tension of the bedding, less one; (ωd)⁴/180 for small ωd. It meets the one value of TN 2661's chart that the
     * worked example prints (0.01 at 1.20).
     */
    public static double flangeFactor(double limpness) {
        double u = limpness / 2;
        if (u < 1e-3) {
            return Math.pow(limpness, 4) / 180;
        }
        double c = Math.cosh(u) * Math.cos(u);
        double s = Math.sinh(u) * Math.sin(u);
        double p = Math.sinh(u) * Math.cos(u);
        double q = Math.cosh(u) * Math.sin(u);
        // Gap A ch cos + B sh sin is 1 and level at the ends.
        double b = -(p - q) / (q + p);
        double scale = 1 / (c + b * s);
        double mean = scale / u * ((p + q) / 2 + b * (q - p) / 2);
        return 1 / mean - 1;
    }

    /** Largest shear stress of the web, τ (1 + k² C1)(1 + k C2), Pa. */
    public double largestShear(double flangeFactor) {
        return shearStress * (1 + factor * factor * angleFactor()) * (1 + factor * flangeFactor);
    }

    /** Load on the rivets between web and flange per length, q (1 + 0.414 k) with q = τ t, N/m. */
    public double rivetLoadPerLength() {
        return shearStress * web.thickness() * (1 + 0.414 * factor);
    }

    /**
     * Shear modulus of the buckled web over that of the flat one: 1/G' = (1 − k)/G + k/GPDT, E/GPDT = 4/sin² 2α + (d t/AUe)
     * tan²α + (h t/(2 AF)) cot²α (by the energy of folds, uprights and flanges).
     */
    public double stiffnessRatio() {
        double sine = Math.sin(2 * angle);
        double tangent = Math.tan(angle);
        double pure = 4 / (sine * sine)
                + web.spacing() * web.thickness() / web.uprights().effectiveArea() * tangent * tangent
                + web.depth() * web.thickness() / (2 * web.flangeArea()) / (tangent * tangent);
        double flat = 2 * (1 + web.poisson());
        return flat / ((1 - factor) * flat + factor * pure);
    }

    /**
     * Stress at which the buckles of the web force the legs of an upright to cripple, C k^⅔ (tU/t)^⅓, Pa, positive (TN 2661).
     *
     * @param uprightThickness tU of the leg on the web, m
     * @param constant C of the upright's metal, Pa
     */
    public double forcedCripplingStress(double uprightThickness, double constant) {
        return constant * Math.pow(factor, 2.0 / 3.0) * Math.cbrt(uprightThickness / web.thickness());
    }

    /** What the folds pull on an edge of the web, square to it and in its plane, per length: k q, N/m. */
    public double foldPull() {
        return factor * shearStress * web.thickness();
    }
}
