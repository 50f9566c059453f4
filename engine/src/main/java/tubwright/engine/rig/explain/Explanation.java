// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * A measured twist line explained by the model.
 *
 * @param loading the case that stands for the test
 * @param measured readings
 * @param update what they say about the doubts
 * @param segments from the held end to the loaded one
 * @param likeness pairs of doubts the test cannot tell apart, the most alike first
 * @param predicted stiffness between the case's stations as designed, N·m/rad
 * @param calibrated the same after the update, N·m/rad
 * @param spread standard deviation of ln(calibrated)
 * @param solutions full solutions it took
 */
public record Explanation(
        Case.Torsion loading,
        Measured measured,
        Update update,
        List<Segment> segments,
        List<Alike> likeness,
        double predicted,
        double calibrated,
        double spread,
        int solutions) {
    public Explanation {
        segments = List.copyOf(segments);
        likeness = List.copyOf(likeness);
    }

    /** A doubt counts as settled when the test took this share of its spread away, and as untouched below a tenth. */
    public static final double SETTLED = 0.5;

    /** Spread of what an unread rig gives: nobody knows, and half of the tub's own twist is a great deal. */
    static final double GIVE = 0.5;

    /**
     * Where along a tub the model's own twist line may lie beside that of a tub with the same stiffnesses, as a standard
     * share of the whole twist: what is left of a mesh once its common factor is out. Common practice, no source.
     */
    static final double DISCREPANCY = 2e-3;

    /** Below this share of its spread taken away the test has said nothing about a doubt. */
    public static final double SILENT = 0.1;

    /** Correlation beyond which two doubts count as not told apart. */
    private static final double ALIKE = 0.7;

    /**
     * Two doubts that the test sees as one: their sum is known better than either.
     *
     * @param first its place in the list of doubts
     * @param second likewise
     * @param correlation after the test
     */
    public record Alike(int first, int second, double correlation) {}

    /**
     * Explains a reduced test.
     *
     * @param tub as designed, and as it was when it was tested
     * @param loading the torsion case that stands for the test
     * @param reading the reduced test
     * @param doubts of the tub, see {@link Doubts#of}
     * @param modelError standard uncertainty of the model by its mesh, as a share
     * @param meshSize m
     * @param derivativeSize mesh size for derivatives, m
     * @param solver backend
     * @param cancelled asked before each solution
     */
    public static Explanation of(
            Tub tub,
            Case.Torsion loading,
            TorsionReading reading,
            List<Doubt> doubts,
            double modelError,
            double meshSize,
            double derivativeSize,
            DirectSolver solver,
            BooleanSupplier cancelled) {
        Measured measured = Measured.of(reading, DISCREPANCY);
        List<Doubt> all = new ArrayList<>(doubts);
        double scale = Math.hypot(measured.scale(), modelError);
        if (scale > 0) {
            all.add(Doubt.of(Doubt.Kind.TORQUE_SCALE, scale));
        }
        if (measured.held().isEmpty()) {
            all.add(Doubt.of(Doubt.Kind.RIG_GIVE, GIVE));
        }
        TubTwistModel model = new TubTwistModel(
                tub, loading, all, measured.stations(), measured.held(), meshSize, derivativeSize, solver, cancelled);
        Update update = Update.of(measured, all, model);
        double[] nothing = new double[all.size()];
        double predicted = model.stiffness(nothing);
        double calibrated = model.stiffness(update.mean());
        double[] slope = model.slope(update.mean());
        double heldStation =
                measured.held().orElse(reading.readings().setup().heldStation().orElse(loading.rearStation()));
        return new Explanation(
                loading,
                measured,
                update,
                Segment.of(measured, update, heldStation),
                alike(update),
                predicted,
                calibrated,
                NextTub.spread(slope, update.covariance()),
                model.solutions());
    }

    /** The segment whose difference stands out most, if any does. */
    public List<Segment> standingOut() {
        return segments.stream()
                .filter(Segment::standsOut)
                .sorted(Comparator.comparingDouble((Segment s) -> Math.abs(s.significance()))
                        .reversed())
                .toList();
    }

    /** Root mean square of what is left after the update, over the standard uncertainties of the readings. */
    public double leftOver() {
        return Math.sqrt(update.misfit() / measured.angles().length);
    }

    /** Half-width of the 95 % interval of the calibrated stiffness, N·m/rad. */
    public double expanded() {
        return 1.96 * spread * calibrated;
    }

    /** Angle measured at a station, if there are gauges. */
    public OptionalDouble measuredAt(double station) {
        for (int k = 0; k < measured.stations().length; k++) {
            if (Math.abs(measured.stations()[k] - station) < 1e-6) {
                return OptionalDouble.of(measured.angles()[k]);
            }
        }
        return OptionalDouble.empty();
    }

    private static List<Alike> alike(Update update) {
        List<Alike> pairs = new ArrayList<>();
        for (int a = 0; a < update.doubts().size(); a++) {
            for (int b = a + 1; b < update.doubts().size(); b++) {
                double r = update.correlation(a, b);
                if (Math.abs(r) > ALIKE && update.learnt(a) > 0 && update.learnt(b) > 0) {
                    pairs.add(new Alike(a, b, r));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble((Alike p) -> Math.abs(p.correlation()))
                .reversed());
        return pairs;
    }
}
