// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * Torsional stiffness, with intervals, of many layups of one tub as its makers build it.
 *
 * <p>As {@link NextTub}: ln(stiffness) is linear in θ about the calibrated mean, u² = sᵀ C s + m². The derivative s is
 * taken whole for the tub the layups come from; for a layup only what weighs there is taken anew, the rest kept. What is
 * kept brings less than {@link #WEIGHS}² of the variance each. Not for several threads.
 */
public final class LayupForecast {
    /** Doubts that bring less than this share of the standard deviation are not derived again for each layup. */
    private static final double WEIGHS = 0.02;

    private final Case.Torsion loading;
    private final Calibration known;
    private final double modelError;
    private final double meshSize;
    private final double derivativeSize;
    private final DirectSolver solver;
    private final BooleanSupplier cancelled;
    private final double[] slope;
    private final double spread;

    /**
     * A stiffness foretold.
     *
     * @param stiffness between the case's stations, N·m/rad
     * @param spread standard deviation of its logarithm
     */
    public record Foretold(double stiffness, double spread) {
        /** Half-width of the 95 % interval, N·m/rad. */
        public double expanded() {
            return 1.96 * spread * stiffness;
        }
    }

    /**
     * @param built the tub that layups are changes of, with the calibrated factors on it
     * @param loading its torsion case
     * @param known the calibration as it bears on it, see {@link Calibration#on}
     * @param modelError standard uncertainty of the model by its mesh, as a share
     * @param meshSize m
     * @param derivativeSize mesh size for derivatives, m
     * @param solver backend
     * @param cancelled asked before each solution
     */
    public LayupForecast(
            Tub built,
            Case.Torsion loading,
            Calibration known,
            double modelError,
            double meshSize,
            double derivativeSize,
            DirectSolver solver,
            BooleanSupplier cancelled) {
        this.loading = loading;
        this.known = known;
        this.modelError = modelError;
        this.meshSize = meshSize;
        this.derivativeSize = derivativeSize;
        this.solver = solver;
        this.cancelled = cancelled;
        this.slope = slope(built, _ -> true);
        this.spread = NextTub.spread(slope, known.covariance());
    }

    /** Foretells a layup of the tub. */
    public Foretold of(Tub layup) {
        double[] here = slope(layup, this::weighs);
        for (int i = 0; i < here.length; i++) {
            here[i] = weighs(i) ? here[i] : slope[i];
        }
        double stiffness = model(layup, meshSize).stiffness(new double[slope.length]);
        return new Foretold(stiffness, Math.hypot(NextTub.spread(here, known.covariance()), modelError));
    }

    /** How many doubts are derived anew for each layup. */
    public int weighing() {
        return (int) IntStream.range(0, slope.length).filter(this::weighs).count();
    }

    private boolean weighs(int doubt) {
        return Math.abs(slope[doubt]) * Math.sqrt(known.covariance()[doubt][doubt]) > WEIGHS * spread;
    }

    /** About θ = 0: the calibrated factors are on the tub already, and e^(mean + θ) is e^mean e^θ. */
    private double[] slope(Tub tub, IntPredicate asked) {
        return model(tub, derivativeSize).slope(new double[known.doubts().size()], asked);
    }

    private TubTwistModel model(Tub tub, double size) {
        return new TubTwistModel(
                tub,
                loading,
                List.copyOf(known.doubts()),
                new double[0],
                OptionalDouble.empty(),
                size,
                size,
                solver,
                cancelled);
    }
}
