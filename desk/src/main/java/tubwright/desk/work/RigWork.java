// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.answer.RigPlanAnswer;
import tubwright.desk.answer.RigPredictAnswer;
import tubwright.desk.answer.WeighedIn;
import tubwright.desk.export.CalibrationFile;
import tubwright.desk.export.KeptPrediction;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.make.built.WeighedTub;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.Reserves;
import tubwright.engine.response.Study;
import tubwright.engine.rig.Gauge;
import tubwright.engine.rig.Plausibility;
import tubwright.engine.rig.Readings;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.ScaleModel;
import tubwright.engine.rig.Setup;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Doubts;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.explain.NextTub;
import tubwright.engine.rig.explain.TubTwistModel;
import tubwright.engine.rig.plan.Means;
import tubwright.engine.rig.plan.TestPlanner;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Plans torsion tests, explains them and foretells the next tub. */
public final class RigWork {
    /** A gauge may stand on a bracket that sticks out of the tub by as much, m. */
    private static final double BEYOND = 0.05;

    /** How much coarser the mesh for derivatives is. */
    static final double DERIVATIVE = 2;

    private RigWork() {}

    @FunctionalInterface
    private interface Task<A> {
        A on(Design.Variant variant, Case.Torsion loading, double meshSize);
    }

    /** Plans a test of a design. */
    public static RigPlanAnswer plan(
            Design design,
            TrimWork.Request request,
            Means means,
            String stamp,
            String version,
            Workbench.Listener listener) {
        return on(design, request, (variant, loading, fine) -> {
            double size = DERIVATIVE * fine;
            listener.stage("what each gauge would tell of each material and joint");
            TestPlanner planner = new TestPlanner(variant.tub(), loading, size, Solvers.best(), Thread::interrupted);
            return new RigPlanAnswer(variant.name(), planner.plan(means), size, version, stamp);
        });
    }

    /**
     * Explains a test of a design as it was built.
     *
     * @param spreads of doubts by name, instead of the usual ones
     * @param kept predictions made before
     * @param built the tub as it was weighed; the test is then explained from there on
     * @param stop asked before each solution; ends it with a {@link java.util.concurrent.CancellationException}
     */
    public static RigExplainAnswer explain(
            Design design,
            TrimWork.Request request,
            TorsionReading reading,
            Map<String, Double> spreads,
            List<KeptPrediction> kept,
            Optional<BuiltWork> built,
            String stamp,
            String version,
            Workbench.Listener listener,
            BooleanSupplier stop) {
        return on(design, request, (variant, loading, size) -> {
            Optional<WeighedIn> weighed = built.map(b -> b.on(variant.tub(), loading));
            Tub tub = weighed(variant.tub(), loading, weighed);
            List<Doubt> doubts = withSpreads(Doubts.of(tub, loading), spreads);
            checkStations(tub, reading.readings());
            listener.stage("how far the mesh may be off");
            double fine = stiffness(tub, loading, size, stop);
            Plausibility.against(reading.best().stiffness(), fine).ifPresent(words -> {
                throw new ReadingsException(reading.readings().source() + ": " + words);
            });
            double error = meshError(tub, loading, size, fine, stop);
            listener.stage("which stiffness of " + doubts.size() + " explains the readings");
            Explanation explanation =
                    Explanation.of(tub, loading, reading, doubts, error, size, DERIVATIVE * size, Solvers.best(), stop);
            double measured = reading.best().stiffness();
            double spread = reading.best().expanded() / 1.96 / measured;
            List<RigExplainAnswer.Foretold> foretold = kept.stream()
                    .filter(k -> k.tub().equals(design.name()) && k.variant().equals(variant.name()))
                    .map(k -> new RigExplainAnswer.Foretold(
                            k.name(),
                            k.stamp(),
                            k.stiffness(),
                            k.spread(),
                            k.mass(),
                            measured,
                            spread,
                            Math.log(measured / k.stiffness()) / Math.hypot(k.spread(), spread)))
                    .toList();
            return new RigExplainAnswer(
                    design.name(),
                    variant.name(),
                    reading,
                    explanation,
                    foretold,
                    Optional.empty(),
                    weighed,
                    size,
                    version,
                    stamp);
        });
    }

    /** Refuses stations where the model has no tub: a slip of a unit or of the datum. */
    private static void checkStations(Tub tub, Readings readings) {
        double front = tub.shape().front();
        double rear = tub.shape().rear();
        String reach = ", but the tub reaches from x = " + Math.round(1000 * front) + " to " + Math.round(1000 * rear)
                + " mm: check unit and datum";
        List<String> faults = new ArrayList<>();
        for (Gauge gauge : readings.gauges()) {
            if (gauge.station() < front - BEYOND || gauge.station() > rear + BEYOND) {
                faults.add(readings.source() + ":" + gauge.line() + ": the gauge \"" + gauge.name()
                        + "\" is said to stand" + " at x = " + Math.round(1000 * gauge.station()) + " mm" + reach);
            }
        }
        Setup setup = readings.setup();
        Map<String, OptionalDouble> ends =
                Map.of("held station", setup.heldStation(), "loaded station", setup.loadedStation());
        ends.forEach((name, end) -> end.ifPresent(x -> {
            if (x < front - BEYOND || x > rear + BEYOND) {
                faults.add(readings.source() + ": \"" + name + "\" is " + Math.round(1000 * x) + " mm" + reach);
            }
        }));
        if (!faults.isEmpty()) {
            throw new ReadingsException(faults);
        }
    }

    /**
     * Keeps what an explanation has taught as the project's calibration.
     *
     * @param home folder of the project
     * @return the answer, which now says where
     */
    public static RigExplainAnswer kept(Design design, RigExplainAnswer answer, Path home) throws IOException {
        double mass = mass(design.variant(answer.variant()).orElseThrow().tub(), answer.meshSize());
        Path place = CalibrationFile.of(home);
        CalibrationFile.write(
                place,
                Calibration.of(
                        answer.explanation(),
                        answer.tub() + (answer.variant().equals(Design.AS_DESIGNED) ? "" : ", " + answer.variant()),
                        mass,
                        answer.reading().readings().source(),
                        answer.stamp()));
        return new RigExplainAnswer(
                answer.tub(),
                answer.variant(),
                answer.reading(),
                answer.explanation(),
                answer.foretold(),
                Optional.of(place.toString()),
                answer.weighed(),
                answer.meshSize(),
                answer.version(),
                answer.stamp());
    }

    /**
     * Foretells the stiffness of a design.
     *
     * @param calibration from a test of another tub, if there was one
     * @param built this tub as it was weighed, if it was
     * @param fingerprint of the design's text
     */
    public static RigPredictAnswer predict(
            Design design,
            TrimWork.Request request,
            Optional<Calibration> calibration,
            Optional<BuiltWork> built,
            String fingerprint,
            String stamp,
            String version,
            Workbench.Listener listener) {
        return on(design, request, (variant, loading, size) -> {
            Optional<WeighedIn> weighed = built.map(b -> b.on(variant.tub(), loading));
            Tub tub = weighed(variant.tub(), loading, weighed);
            listener.stage("how far the mesh may be off");
            double error = meshError(tub, loading, size);
            listener.stage("the next tub, as this works builds");
            Calibration known = calibration.map(c -> c.on(tub, loading)).orElse(Calibration.none(tub, loading));
            NextTub next = NextTub.of(
                    tub, loading, known, error, size, DERIVATIVE * size, Solvers.best(), Thread::interrupted);
            Structure structure = Structure.of(tub, Study.mesh(tub, size));
            return new RigPredictAnswer(
                    design.name(),
                    variant.name(),
                    next,
                    calibration,
                    MassRollUp.of(structure).whole().mass(),
                    calibration.map(Calibration::mass).orElse(Double.NaN),
                    weakest(tub, structure),
                    fingerprint,
                    Optional.empty(),
                    weighed,
                    size,
                    version,
                    stamp);
        });
    }

    private static Tub weighed(Tub tub, Case.Torsion loading, Optional<WeighedIn> weighed) {
        return weighed.map(w -> WeighedTub.of(tub, loading, w.known())).orElse(tub);
    }

    /** The mass of a variant, kg. */
    public static double mass(Tub tub, double meshSize) {
        return MassRollUp.of(Structure.of(tub, Study.mesh(tub, meshSize)))
                .whole()
                .mass();
    }

    /** Computes tub and model. */
    public static ScaleModel scale(
            Design design,
            TrimWork.Request request,
            double length,
            double plies,
            double cores,
            Workbench.Listener listener) {
        return on(design, request, (variant, loading, size) -> {
            listener.stage("tub and model");
            return ScaleModel.of(variant.tub(), loading, length, plies, cores, size, Solvers.best());
        });
    }

    /** The layup of a zone or wall of the design at a place. */
    public static Laminate layupOf(Path place, String zone) {
        Map<String, Laminate> laminates = Design.read(place).asDesigned().tub().laminates();
        if (!laminates.containsKey(zone)) {
            throw TrimWork.unknown(
                    "zone", zone, laminates.keySet().stream().sorted().toList());
        }
        return laminates.get(zone);
    }

    static Optional<Reserve> weakest(Tub tub, Structure structure) {
        List<Case> loads =
                tub.cases().stream().filter(Case.Loads.class::isInstance).toList();
        if (loads.isEmpty()) {
            return Optional.empty();
        }
        Structure fitted = structure.with(tub.fittings());
        List<Solution> solutions = StaticSolver.solve(fitted, loads, Solvers.best(), new StepTimes());
        Laminate[] laminates =
                structure.mesh().regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        return Reserves.of(fitted, laminates, solutions, StrengthBasis.USUAL).rows().stream()
                .findFirst();
    }

    /** Share by which a mesh may be off. */
    static double meshError(Tub tub, Case.Torsion loading, double size) {
        return meshError(tub, loading, size, stiffness(tub, loading, size, Thread::interrupted), Thread::interrupted);
    }

    /** Share by which a mesh may be off: for second order the change from a mesh √2 coarser is the error left. */
    private static double meshError(Tub tub, Case.Torsion loading, double size, double fine, BooleanSupplier stop) {
        double coarse = stiffness(tub, loading, size * Math.sqrt(2), stop);
        return Math.abs(coarse / fine - 1);
    }

    private static double stiffness(Tub tub, Case.Torsion loading, double size, BooleanSupplier stop) {
        double[] nothing = new double[0];
        return new TubTwistModel(
                        tub,
                        loading,
                        List.of(),
                        nothing,
                        java.util.OptionalDouble.empty(),
                        size,
                        size,
                        Solvers.best(),
                        stop)
                .stiffness(nothing);
    }

    private static List<Doubt> withSpreads(List<Doubt> doubts, Map<String, Double> spreads) {
        List<String> names = doubts.stream().map(Doubt::name).toList();
        spreads.keySet().forEach(name -> {
            if (!names.contains(name)) {
                throw TrimWork.unknown("doubt", name, names);
            }
        });
        return doubts.stream()
                .map(d -> spreads.containsKey(d.name()) ? d.withSpread(spreads.get(d.name())) : d)
                .toList();
    }

    private static <A> A on(Design design, TrimWork.Request request, Task<A> task) {
        Design.Variant variant = TrimWork.variant(design, request);
        Case loading = TrimWork.loading(variant.tub(), request.loading());
        if (!(loading instanceof Case.Torsion torsion)) {
            throw new UserMistake("case \"" + loading.name() + "\" is no torsion case; a torsion test needs one");
        }
        try {
            return task.on(variant, torsion, TrimWork.meshSize(variant.tub(), request));
        } catch (StructureException | ShapeException fault) {
            throw design.explain(fault);
        }
    }
}
