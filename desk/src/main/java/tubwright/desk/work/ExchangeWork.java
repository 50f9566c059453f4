// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.design.Design;
import tubwright.engine.response.Study;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Borders;
import tubwright.engine.trim.ExchangeCurve;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupRules;
import tubwright.engine.trim.Lighten;
import tubwright.engine.trim.LightenProblem;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.OutOfReach;
import tubwright.engine.trim.Site;
import tubwright.engine.trim.Sites;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.solver.Solvers;

/** Draws the curve of mass against stiffness of a design. */
public final class ExchangeWork {
    private ExchangeWork() {}

    /**
     * What is asked.
     *
     * @param on variant, case and mesh
     * @param from least share of the present stiffness
     * @param to most
     * @param points of the curve, at least two
     * @param choice share of the present stiffness to be marked and written
     * @param fewest plies each skin keeps; empty for the design's own rule
     * @param seconds to spend on all points together
     * @param calibration what a test has taught, to be put on the tubs
     */
    public record Request(
            TrimWork.Request on,
            double from,
            double to,
            int points,
            Optional<Double> choice,
            OptionalInt fewest,
            double seconds,
            Optional<Calibration> calibration) {}

    /**
     * Draws the curve.
     *
     * @param stop asked now and then whether to end with the points there are
     * @throws CancellationException where it was to end before there was one
     */
    public static ExchangeAnswer exchange(
            Design design,
            Request request,
            String stamp,
            String version,
            Workbench.Listener listener,
            java.util.function.BooleanSupplier stop) {
        Design.Variant variant = TrimWork.variant(design, request.on);
        Tub tub = AsBuilt.of(variant.tub(), request.calibration);
        Case loading = TrimWork.loading(tub, request.on.loading());
        DirectSolver solver = Solvers.best();
        try {
            listener.stage("mesh and solution");
            Structure structure = Structure.of(tub, Study.mesh(tub, TrimWork.meshSize(tub, request.on)));
            try (LoadedTub loaded = LoadedTub.solve(structure, loading, Layup.of(tub), solver)) {
                double present = loaded.stiffness(loaded.compliance());
                List<Double> asked = asked(request, present);
                ExchangeCurve curve = curve(problem(variant, loaded, request), loaded, asked, request, listener, stop);
                if (curve.points().isEmpty()) {
                    throw new CancellationException("stopped before the first point was found");
                }
                List<ExchangeAnswer.Mark> marks = new ArrayList<>();
                marks.add(new ExchangeAnswer.Mark(variant.name(), loaded.mass(loaded.nominal()), present));
                marks.addAll(others(design, variant, request, loading.name(), listener, solver));
                Optional<Integer> chosen = request.choice.map(share -> nearest(curve, share * present));
                chosen.ifPresent(k -> {
                    ExchangeCurve.Point point = curve.points().get(k);
                    marks.add(new ExchangeAnswer.Mark(
                            "chosen", point.found().mass(), point.reached().low()));
                });
                List<LayupForecast.Foretold> foretold = request.calibration
                        .map(c -> foretold(variant.tub(), tub, loading, curve, c, request, listener, solver))
                        .orElse(List.of());
                return new ExchangeAnswer(
                        design.name(),
                        variant.name(),
                        loading.name(),
                        StiffnessUnit.of(loading),
                        curve,
                        readings(curve),
                        marks,
                        chosen,
                        foretold,
                        request.calibration.map(AsBuilt::words),
                        structure.unknowns(),
                        stamp,
                        version);
            }
        } catch (StructureException | ShapeException fault) {
            throw design.explain(fault);
        }
    }

    /** Each point as its makers build it. */
    private static List<LayupForecast.Foretold> foretold(
            Tub designed,
            Tub built,
            Case loading,
            ExchangeCurve curve,
            Calibration calibration,
            Request request,
            Workbench.Listener listener,
            DirectSolver solver) {
        listener.stage("how sure the stiffness of each point is");
        LayupForecast forecast =
                AsBuilt.forecast(designed, loading, calibration, TrimWork.meshSize(designed, request.on), solver);
        List<LayupForecast.Foretold> result = new ArrayList<>();
        for (ExchangeCurve.Point point : curve.points()) {
            listener.stage("how sure its stiffness is: point " + (result.size() + 1) + " of "
                    + curve.points().size());
            result.add(forecast.of(AsBuilt.with(built, point.found().layup())));
        }
        return result;
    }

    private static ExchangeCurve curve(
            LightenProblem problem,
            LoadedTub loaded,
            List<Double> asked,
            Request request,
            Workbench.Listener listener,
            java.util.function.BooleanSupplier stop) {
        try {
            return ExchangeCurve.of(
                    problem,
                    loaded,
                    asked,
                    List.of(),
                    Lighten.Budget.ofSeconds(request.seconds / asked.size()),
                    new ExchangeCurve.Listener() {
                        @Override
                        public void point(int number, int all) {
                            listener.step("point " + number + " of " + all, number - 1, all);
                        }

                        @Override
                        public void stage(String words) {
                            listener.stage(words);
                        }

                        @Override
                        public boolean stop() {
                            return stop.getAsBoolean();
                        }
                    });
        } catch (OutOfReach unreachable) {
            throw new UserMistake(unreachable.getMessage() + "\n    ask for less: --from, --to");
        }
    }

    private static LightenProblem problem(Design.Variant variant, LoadedTub loaded, Request request) {
        LayupRules ofDesign = variant.layupRules();
        LayupRules rules = request.fewest.isPresent() ? ofDesign.withFewest(request.fewest.getAsInt()) : ofDesign;
        try {
            List<Site> sites = Sites.of(loaded, rules);
            Borders borders = Borders.of(loaded.structure().mesh());
            return LightenProblem.of(List.of(loaded), sites, borders.neighbours(sites, rules));
        } catch (IllegalArgumentException emptied) {
            throw new UserMistake(emptied.getMessage() + "\n    change the stack, or what \"layup rules:\" asks");
        }
    }

    private static List<Double> asked(Request request, double present) {
        List<Double> asked = new ArrayList<>();
        for (int k = 0; k < request.points; k++) {
            asked.add(present * (request.from + (request.to - request.from) * k / (request.points - 1)));
        }
        request.choice
                .map(share -> share * present)
                .filter(s -> !asked.contains(s))
                .ifPresent(asked::add);
        return asked;
    }

    /** The design's other variants as they are: the first tub, the aluminium one. */
    private static List<ExchangeAnswer.Mark> others(
            Design design,
            Design.Variant worked,
            Request request,
            String loading,
            Workbench.Listener listener,
            DirectSolver solver) {
        List<ExchangeAnswer.Mark> marks = new ArrayList<>();
        for (Design.Variant variant : design.variants()) {
            Tub tub = AsBuilt.of(variant.tub(), request.calibration);
            Optional<Case> same =
                    tub.cases().stream().filter(c -> c.name().equals(loading)).findFirst();
            if (variant.name().equals(worked.name()) || same.isEmpty()) {
                continue;
            }
            listener.stage("variant " + variant.name());
            Structure structure = Structure.of(tub, Study.mesh(tub, TrimWork.meshSize(tub, request.on)));
            try (LoadedTub loaded = LoadedTub.solve(structure, same.get(), Layup.of(tub), solver)) {
                marks.add(new ExchangeAnswer.Mark(
                        variant.name(), loaded.mass(loaded.nominal()), loaded.stiffness(loaded.compliance())));
            }
        }
        return marks;
    }

    private static int nearest(ExchangeCurve curve, double asked) {
        int best = 0;
        for (int k = 1; k < curve.points().size(); k++) {
            if (Math.abs(curve.points().get(k).asked() - asked)
                    < Math.abs(curve.points().get(best).asked() - asked)) {
                best = k;
            }
        }
        return best;
    }

    /** At as many masses as there are points, evenly from the lightest to the heaviest. */
    private static List<ExchangeCurve.Reading> readings(ExchangeCurve curve) {
        double low =
                curve.points().stream().mapToDouble(p -> p.found().mass()).min().orElseThrow();
        double high =
                curve.points().stream().mapToDouble(p -> p.found().mass()).max().orElseThrow();
        int count = curve.points().size();
        List<ExchangeCurve.Reading> readings = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            readings.add(curve.at(k == count - 1 ? high : low + (high - low) * k / Math.max(1, count - 1)));
        }
        return readings;
    }
}
