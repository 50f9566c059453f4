// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.IntPredicate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.response.TwistReader;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * The tub itself as the model: every new question is answered by a full solution on one mesh. Derivatives come from a
 * mesh of their own, which may be coarser: what the mesh makes too stiff or too soft drops out of their ratios to what is
 * read. Not for several threads.
 */
public final class TubTwistModel implements TwistModel {
    private final Tub tub;
    private final Case.Torsion loading;
    private final List<Doubt> doubts;
    private final double[] stations;
    private final OptionalDouble held;
    private final Mesh mesh;
    private final DirectSolver solver;
    private final BooleanSupplier cancelled;
    private final Optional<TubTwistModel> coarse;
    private final Map<List<Double>, Turned> answered = new HashMap<>();
    private int solutions;

    /**
     * @param tub as designed
     * @param loading how it is held and loaded
     * @param doubts in the order of the numbers asked with
     * @param stations of the gauge pairs, m
     * @param held station whose reading is subtracted, m
     * @param meshSize m
     * @param derivativeSize mesh size for derivatives, m; not below {@code meshSize}
     * @param solver backend
     * @param cancelled asked before each solution
     */
    public TubTwistModel(
            Tub tub,
            Case.Torsion loading,
            List<Doubt> doubts,
            double[] stations,
            OptionalDouble held,
            double meshSize,
            double derivativeSize,
            DirectSolver solver,
            BooleanSupplier cancelled) {
        this.tub = tub;
        this.loading = loading;
        this.doubts = List.copyOf(doubts);
        this.stations = stations.clone();
        this.held = held;
        this.mesh = Study.mesh(tub, meshSize);
        this.solver = solver;
        this.cancelled = cancelled;
        this.coarse = derivativeSize > meshSize
                ? Optional.of(new TubTwistModel(
                        tub, loading, doubts, stations, held, derivativeSize, derivativeSize, solver, cancelled))
                : Optional.empty();
    }

    @Override
    public double[] read(double[] logarithms) {
        Turned turned = turned(logarithms);
        double[] angles = turned.angles.clone();
        double scale = 1;
        double give = 0;
        for (int i = 0; i < logarithms.length; i++) {
            switch (doubts.get(i).kind()) {
                case TORQUE_SCALE -> scale = Math.exp(logarithms[i]);
                case RIG_GIVE -> give = logarithms[i] * turned.whole;
                default -> {
                    // Already in the tub.
                }
            }
        }
        for (int k = 0; k < angles.length; k++) {
            angles[k] = scale * (angles[k] + give);
        }
        return angles;
    }

    /**
     * Stiffness between the case's own stations.
     *
     * @param logarithms θ of each doubt
     * @return N·m/rad
     */
    public double stiffness(double[] logarithms) {
        return 1 / turned(logarithms).whole;
    }

    @Override
    public double[] change(double[] logarithms, int doubt, double step) {
        if (coarse.isEmpty()) {
            return TwistModel.super.change(logarithms, doubt, step);
        }
        double[] fine = read(logarithms);
        double[] rough = coarse.get().read(logarithms);
        double[] change = coarse.get().change(logarithms, doubt, step);
        for (int k = 0; k < fine.length; k++) {
            change[k] *= rough[k] == 0 ? 1 : fine[k] / rough[k];
        }
        return change;
    }

    /** Derivative of ln(stiffness) by the doubts; nothing for those of the test itself. */
    public double[] slope(double[] logarithms) {
        return slope(logarithms, _ -> true);
    }

    /** The same for the doubts asked for alone; 0 for the others. */
    double[] slope(double[] logarithms, IntPredicate asked) {
        if (coarse.isPresent()) {
            return coarse.get().slope(logarithms, asked);
        }
        double here = stiffness(logarithms);
        double[] slope = new double[logarithms.length];
        for (int i = 0; i < slope.length; i++) {
            if (!doubts.get(i).ofTheTest() && asked.test(i)) {
                double[] aside = logarithms.clone();
                aside[i] -= DIFFERENCE;
                slope[i] = Math.log(here / stiffness(aside)) / DIFFERENCE;
            }
        }
        return slope;
    }

    /** How many full solutions were needed so far, on either mesh. */
    public int solutions() {
        return solutions + coarse.map(TubTwistModel::solutions).orElse(0);
    }

    private record Turned(double[] angles, double whole) {}

    private Turned turned(double[] logarithms) {
        List<Double> asked = java.util.Arrays.stream(logarithms).boxed().toList();
        Turned known = answered.get(asked);
        if (known == null) {
            known = solve(logarithms);
            answered.put(asked, known);
        }
        return known;
    }

    private Turned solve(double[] logarithms) {
        if (cancelled.getAsBoolean()) {
            throw new CancellationException("stopped");
        }
        solutions++;
        Structure structure = Structure.of(Doubts.applied(tub, loading, doubts, logarithms), mesh);
        Solution solution = StaticSolver.solve(structure, List.of(loading), solver, new StepTimes())
                .getFirst();
        TwistReader reader = new TwistReader(mesh);
        double[] u = solution.displacements();
        double sign = Math.signum(loading.couple());
        double torque = Math.abs(loading.couple());
        double ground = held.isPresent() ? reader.twist(held.getAsDouble(), u) : 0;
        double[] angles = new double[stations.length];
        for (int k = 0; k < angles.length; k++) {
            angles[k] = sign * (reader.twist(stations[k], u) - ground) / torque;
        }
        double whole =
                Math.abs(reader.twist(loading.frontStation(), u) - reader.twist(loading.rearStation(), u)) / torque;
        return new Turned(angles, whole);
    }
}
