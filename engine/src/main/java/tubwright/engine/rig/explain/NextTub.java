// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * The torsional stiffness of a tub that is not built yet, with an interval from what the works is known to build.
 *
 * <p>ln(stiffness) is taken as linear in θ about the calibrated mean: variance = sᵀ C s + m², s its derivative there, C
 * the covariance after the test, m the share by which the mesh may be off (first-order propagation, JCGM 100:2008,
 * eq. 13).
 *
 * @param stiffness between the case's stations at the calibrated mean, N·m/rad
 * @param uncalibrated the same as the model stands by itself, N·m/rad
 * @param spread standard deviation of ln(stiffness)
 * @param uncalibratedSpread the same before any test
 * @param solutions full solutions it took
 */
public record NextTub(double stiffness, double uncalibrated, double spread, double uncalibratedSpread, int solutions) {
    /**
     * Predicts.
     *
     * @param tub the next one
     * @param loading its torsion case
     * @param calibration as it bears on it, see {@link Calibration#on}
     * @param modelError standard uncertainty of the model by its mesh, as a share
     * @param meshSize m
     * @param derivativeSize mesh size for derivatives, m
     * @param solver backend
     * @param cancelled asked before each solution
     */
    public static NextTub of(
            Tub tub,
            Case.Torsion loading,
            Calibration calibration,
            double modelError,
            double meshSize,
            double derivativeSize,
            DirectSolver solver,
            BooleanSupplier cancelled) {
        List<Doubt> doubts = calibration.doubts();
        TubTwistModel model = new TubTwistModel(
                tub,
                loading,
                doubts,
                new double[0],
                OptionalDouble.empty(),
                meshSize,
                derivativeSize,
                solver,
                cancelled);
        double[] nothing = new double[doubts.size()];
        double uncalibrated = model.stiffness(nothing);
        double stiffness = model.stiffness(calibration.mean());
        double[] slope = model.slope(calibration.mean());
        double[][] prior = new double[doubts.size()][doubts.size()];
        for (int i = 0; i < prior.length; i++) {
            prior[i][i] = doubts.get(i).spread() * doubts.get(i).spread();
        }
        double[] start = model.slope(nothing);
        return new NextTub(
                stiffness,
                uncalibrated,
                Math.hypot(spread(slope, calibration.covariance()), modelError),
                Math.hypot(spread(start, prior), modelError),
                model.solutions());
    }

    /** Half-width of the 95 % interval, N·m/rad. */
    public double expanded() {
        return 1.96 * spread * stiffness;
    }

    /** Half-width of the 95 % interval before any test, N·m/rad. */
    public double uncalibratedExpanded() {
        return 1.96 * uncalibratedSpread * uncalibrated;
    }

    /** How many standard deviations a measured stiffness lies off the prediction, in ln. */
    public double score(double measured, double measuredSpread) {
        return Math.log(measured / stiffness) / Math.hypot(spread, measuredSpread);
    }

    /** Standard deviation of a quantity with this derivative. */
    static double spread(double[] slope, double[][] covariance) {
        double variance = 0;
        for (int a = 0; a < slope.length; a++) {
            for (int b = 0; b < slope.length; b++) {
                variance += slope[a] * covariance[a][b] * slope[b];
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }
}
