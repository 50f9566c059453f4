// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * A single lap of two sheets, like or unlike, under all that a joint line may carry, elastic.
 *
 * <p>Pull across the line: the largest of Volkersen's shear (the true pair, no bending) and Goland and Reissner's with
 * Hart-Smith's moment factor, who treat like sheets: the lap is computed with either sheet standing for both. Shear along
 * the line: Volkersen's equation with G t of the sheets in place of E t (Hart-Smith 1973 notes that edgewise shear obeys
 * the same law). Both are largest at the ends and are added there as components of one shear stress. A push across the line
 * is taken with the moment factor 1 and no peel at the ends.
 *
 * <p>A moment M about the line and a force V out of the surface bend the sheet that goes on: to the end moment of the lap
 * come M + V l/2, to its end shear V, and a long overlap peels by μ² M0 + μ V0, μ⁴ = Ea/(2 D ta) (Goland and Reissner 1944).
 *
 * @param one a sheet
 * @param two the other
 * @param bond the adhesive
 * @param overlap l, m
 */
public record BondedLap(Sheet one, Sheet two, BondLine bond, double overlap) {

    /** Shear stress at the ends of the overlap, Pa. */
    public double peakShear(LineLoad load) {
        double across = Math.abs(load.across());
        double mean = across / overlap;
        double peak = mean * new Volkersen(one.adherend(), two.adherend(), bond, overlap).peakRatio();
        for (Sheet sheet : new Sheet[] {one, two}) {
            SingleLap lap = lap(sheet);
            double k = load.across() > 0 ? lap.momentFactorHartSmith(across) : 1;
            if (across > 0) {
                peak = Math.max(peak, lap.peakShear(across, k));
            }
        }
        return Math.hypot(peak, peakAlong(load.along()));
    }

    /** Shear stress at the ends by the flow along the line alone, Pa. */
    public double peakAlong(double flow) {
        return Math.abs(flow) / overlap * new Volkersen(one.inShear(), two.inShear(), bond, overlap).peakRatio();
    }

    /** Largest peel stress at the ends, Pa, tension positive. */
    public double peakPeel(LineLoad load) {
        double moment = Math.abs(load.moment()) + Math.abs(load.normal()) * overlap / 2;
        double worst = 0;
        for (Sheet sheet : new Sheet[] {one, two}) {
            SingleLap lap = lap(sheet);
            double mu2 = Math.sqrt(bond.modulus() / (2 * sheet.adherend().bending() * bond.thickness()));
            double peel = mu2 * moment + Math.sqrt(mu2) * Math.abs(load.normal());
            if (load.across() > 0) {
                peel += lap.peakPeel(load.across(), lap.momentFactorHartSmith(load.across()));
            }
            worst = Math.max(worst, peel);
        }
        return worst;
    }

    private SingleLap lap(Sheet sheet) {
        return new SingleLap(sheet.adherend(), bond, overlap);
    }
}
