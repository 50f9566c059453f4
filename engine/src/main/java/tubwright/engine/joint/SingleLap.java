// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Shear and peel along a single lap of two like sheets, bending by the offset load included (Goland and Reissner 1944,
 * J. Appl. Mech. 11, A17, flexible adhesive), with the moment factor of Goland and Reissner or of Hart-Smith 1973 (NASA
 * CR-112236).
 *
 * <p>The moment at the end of the overlap is M0 = k P t/2 per width. Goland and Reissner take the overlap for one solid
 * piece, Hart-Smith lets the adhesive and the overlap bend: his k is the lower.
 *
 * @param sheet either sheet
 * @param bond the adhesive
 * @param overlap 2c, m
 */
public record SingleLap(Adherend sheet, BondLine bond, double overlap) {

    /** k = cosh u / (cosh u + 2√2 sinh u), u = (c/t) √(3 (1 − ν²) P/(2 t E)). */
    public double momentFactorGolandReissner(double loadPerWidth) {
        double t = sheet.thickness();
        double nu = sheet.poisson();
        double u = c() / t * Math.sqrt(1.5 * (1 - nu * nu) * loadPerWidth / sheet.stiffness());
        return 1 / (1 + 2 * Math.sqrt(2) * Math.tanh(u));
    }

    /** k = 1/(1 + ξc + ξ²c²/6), ξ² = P/D. */
    public double momentFactorHartSmith(double loadPerWidth) {
        double xi = c() * Math.sqrt(loadPerWidth / sheet.bending());
        return 1 / (1 + xi + xi * xi / 6);
    }

    /** Mean shear stress, Pa. */
    public double meanShear(double loadPerWidth) {
        return loadPerWidth / overlap;
    }

    /**
     * Shear stress at x from the middle of the overlap, Pa: (P/8c) {(βc/t)(1 + 3k) cosh(βx/t)/sinh(βc/t) + 3 (1 − k)},
     * β² = 8 G t/(E ta).
     *
     * @param loadPerWidth P, N/m
     * @param k moment factor
     */
    public double shear(double loadPerWidth, double k, double x) {
        double t = sheet.thickness();
        double beta = Math.sqrt(8 * bond.shearModulus() * t / (sheet.modulus() * bond.thickness()));
        double end = beta * c() / t;
        double shape = (Math.exp(beta * (Math.abs(x) - c()) / t) + Math.exp(-beta * (Math.abs(x) + c()) / t))
                / (1 - Math.exp(-2 * end));
        return loadPerWidth / (8 * c()) * (end * (1 + 3 * k) * shape + 3 * (1 - k));
    }

    /** Shear stress at the ends, Pa. */
    public double peakShear(double loadPerWidth, double k) {
        return shear(loadPerWidth, k, c());
    }

    /**
     * Peel stress at x from the middle of the overlap, Pa, tension positive (Goland and Reissner 1944, eq. 34 in later
     * reprints; from memory).
     */
    public double peel(double loadPerWidth, double k, double x) {
        double t = sheet.thickness();
        double c = c();
        double nu = sheet.poisson();
        double lambda = c / t * Math.pow(6 * bond.modulus() * t / (sheet.modulus() * bond.thickness()), 0.25);
        double shearForce = k * c / t * Math.sqrt(3 * (1 - nu * nu) * loadPerWidth / sheet.stiffness());
        double ch = Math.cosh(lambda);
        double sh = Math.sinh(lambda);
        double co = Math.cos(lambda);
        double si = Math.sin(lambda);
        double r1 = ch * si + sh * co;
        double r2 = sh * co - ch * si;
        double r3 = 0.5 * (Math.sinh(2 * lambda) + Math.sin(2 * lambda));
        double at = lambda * x / c;
        double moment = lambda * lambda * k / 2;
        double even = (r2 * moment + lambda * shearForce * ch * co) * Math.cosh(at) * Math.cos(at);
        double odd = (r1 * moment + lambda * shearForce * sh * si) * Math.sinh(at) * Math.sin(at);
        return loadPerWidth * t / (c * c * r3) * (even + odd);
    }

    /** Peel stress at the ends, Pa. */
    public double peakPeel(double loadPerWidth, double k) {
        return peel(loadPerWidth, k, c());
    }

    /** Peel at the ends of a long overlap from the end moment alone: M0 √(Ea/(2 D ta)), Pa. */
    public double peelByMoment(double loadPerWidth, double k) {
        double moment = k * loadPerWidth * sheet.thickness() / 2;
        return moment * Math.sqrt(bond.modulus() / (2 * sheet.bending() * bond.thickness()));
    }

    /** Largest stress in the sheet at the end of the overlap, P (1 + 3k)/t, Pa. */
    public double sheetStress(double loadPerWidth, double k) {
        return loadPerWidth / sheet.thickness() * (1 + 3 * k);
    }

    private double c() {
        return overlap / 2;
    }
}
