// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Shear along a single lap whose sheets stretch but do not bend (Volkersen 1938, Luftfahrtforschung 15, 41).
 *
 * <p>ψ = E1 t1/(E2 t2), ω² = (1 + ψ) G l²/(E1 t1 ta), X = x/l from −½ to ½:
 * τ/τ̄ = (ω/2) cosh ωX / sinh(ω/2) + ((ψ−1)/(ψ+1)) (ω/2) sinh ωX / cosh(ω/2).
 *
 * @param one the sheet that ends at X = ½
 * @param two the sheet that ends at X = −½
 * @param bond the adhesive
 * @param overlap l, m
 */
public record Volkersen(Adherend one, Adherend two, BondLine bond, double overlap) {

    /** ψ. */
    public double stiffnessRatio() {
        return one.stiffness() / two.stiffness();
    }

    /** ω. */
    public double lengthParameter() {
        double phi = bond.shearModulus() * overlap * overlap / (one.stiffness() * bond.thickness());
        return Math.sqrt((1 + stiffnessRatio()) * phi);
    }

    /** Shear stress over its mean at X = x/l. */
    public double shearRatio(double x) {
        double psi = stiffnessRatio();
        double half = lengthParameter() / 2;
        return half * coshOverSinh(half, x) + (psi - 1) / (psi + 1) * half * sinhOverCosh(half, x);
    }

    /** Largest shear over mean, at the end of the softer sheet's partner. */
    public double peakRatio() {
        return Math.max(shearRatio(-0.5), shearRatio(0.5));
    }

    // In exponentials of negative numbers, so that a very long overlap does not overflow.

    private static double coshOverSinh(double half, double x) {
        double a = Math.exp(2 * half * (x - 0.5));
        double b = Math.exp(-2 * half * (x + 0.5));
        return (a + b) / (1 - Math.exp(-2 * half));
    }

    private static double sinhOverCosh(double half, double x) {
        double a = Math.exp(2 * half * (x - 0.5));
        double b = Math.exp(-2 * half * (x + 0.5));
        return (a - b) / (1 + Math.exp(-2 * half));
    }
}
