// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tubwright.desk.answer.ForetoldTub;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.Limit;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Borders;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupRules;
import tubwright.engine.trim.Lighten;
import tubwright.engine.trim.LightenProblem;
import tubwright.engine.trim.Lightened;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.OutOfReach;
import tubwright.engine.trim.Owner;
import tubwright.engine.trim.Site;
import tubwright.engine.trim.Sites;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.solver.Solvers;

/** Finds the lightest layup of a design. */
public final class LightenWork {
    private LightenWork() {}

    /**
     * What is asked.
     *
     * @param on variant, leading case and mesh
     * @param keep share of the leading case's stiffness to keep; empty for the design's own target
     * @param also shares of other cases' stiffness to keep, by case name
     * @param fewest plies a skin keeps; empty for what the design's layup rules say
     * @param cores stocked, besides those of the design and its rules, m
     * @param margin by which targets are passed, as a share of them
     * @param scatter share by which stiffness of materials may be off; empty where that is not asked
     * @param solves exact solutions allowed; empty for the usual
     * @param seconds to spend
     * @param calibration what a test has taught, to be put on the tub
     */
    public record Request(
            TrimWork.Request on,
            Optional<Double> keep,
            Map<String, Double> also,
            OptionalInt fewest,
            List<Double> cores,
            double margin,
            OptionalDouble scatter,
            OptionalInt solves,
            double seconds,
            Optional<Calibration> calibration) {
        public Request {
            also = new LinkedHashMap<>(also);
            cores = List.copyOf(cores);
        }

        LayupRules rules(LayupRules ofDesign) {
            List<Double> all = new ArrayList<>(ofDesign.coreThicknesses());
            all.addAll(cores);
            return ofDesign.withFewest(fewest.orElse(ofDesign.fewestPlies())).withCores(all);
        }
    }

    /** Hears how it goes and may end it. */
    public interface Watcher extends Workbench.Listener {
        /** A better mass or bound. */
        default void step(Lightened.Step step) {}

        /** Whether to end with what there is. */
        default boolean stop() {
            return false;
        }
    }

    /** Finds the lightest layup. */
    public static LightenAnswer lighten(Design design, Request request, String version, Watcher watcher) {
        Design.Variant variant = TrimWork.variant(design, request.on);
        Tub tub = AsBuilt.of(variant.tub(), request.calibration);
        List<Case> cases = new ArrayList<>(List.of(TrimWork.loading(tub, request.on.loading())));
        request.also.keySet().forEach(name -> cases.add(TrimWork.loading(tub, Optional.of(name))));
        List<LoadedTub> loaded = new ArrayList<>();
        DirectSolver solver = Solvers.best();
        try {
            watcher.stage("mesh and solution");
            Mesh mesh = Study.mesh(tub, TrimWork.meshSize(tub, request.on));
            Structure structure = Structure.of(tub, mesh);
            for (Case each : cases) {
                loaded.add(LoadedTub.solve(structure, each, Layup.of(tub), solver));
            }
            List<Lighten.Target> targets = targets(variant, request, loaded);
            LayupRules rules = request.rules(variant.layupRules());
            Borders borders = Borders.of(mesh);
            LayupChecks checks = new LayupChecks(tub, mesh, variant.targets(), request.margin, solver);
            Lightened found;
            Optional<LightenAnswer.Scatter> scatter = Optional.empty();
            try {
                List<Site> sites = Sites.of(loaded.getFirst(), rules);
                LightenProblem problem = LightenProblem.of(loaded, sites, borders.neighbours(sites, rules));
                double share = request.scatter.isPresent() ? 0.4 : 1;
                found = Lighten.run(problem, targets, checks, budget(request, share), heard(watcher));
                if (request.scatter.isPresent()) {
                    scatter = Optional.of(new MaterialScatter(variant, request, mesh, rules, solver, watcher)
                            .of(tub, problem, targets, checks, found));
                }
            } catch (OutOfReach unreachable) {
                throw new UserMistake(unreachable.getMessage() + "\n    ask for less, or allow heavier stacks");
            } catch (IllegalArgumentException emptied) {
                throw new UserMistake(emptied.getMessage() + "\n    change the stack, or what \"layup rules:\" asks");
            }
            watcher.stage("solving the chosen layup anew");
            Layup chosen = found.layup();
            Optional<ForetoldTub> foretold = request.calibration.map(
                    c -> foretold(variant.tub(), tub, cases.getFirst(), chosen, c, request, watcher, solver));
            return new LightenAnswer(
                    design.name(),
                    variant.name(),
                    goals(tub, targets, found, mesh, solver),
                    loaded.getFirst().mass(Layup.of(tub)),
                    found,
                    changes(tub, loaded.getFirst(), found.layup()),
                    request.margin,
                    checks.unasked(),
                    borders.alone(),
                    variant.targets()
                            .mass()
                            .filter(l -> !l.atLeast())
                            .map(l -> OptionalDouble.of(l.si()))
                            .orElse(OptionalDouble.empty()),
                    scatter,
                    foretold,
                    structure.unknowns(),
                    version);
        } catch (StructureException | ShapeException fault) {
            throw design.explain(fault);
        } finally {
            loaded.forEach(LoadedTub::close);
        }
    }

    private static ForetoldTub foretold(
            Tub designed,
            Tub built,
            Case loading,
            Layup layup,
            Calibration calibration,
            Request request,
            Watcher watcher,
            DirectSolver solver) {
        watcher.stage("how sure its stiffness is");
        double size = TrimWork.meshSize(designed, request.on);
        return AsBuilt.foretold(
                AsBuilt.forecast(designed, loading, calibration, size, solver), built, layup, calibration, size);
    }

    static Lighten.Budget budget(Request request, double share) {
        Lighten.Budget whole = Lighten.Budget.ofSeconds(share * request.seconds);
        return new Lighten.Budget(request.solves.orElse(whole.solves()), whole.nodes(), whole.seconds(), whole.gap());
    }

    static Lighten.Listener heard(Watcher watcher) {
        return new Lighten.Listener() {
            @Override
            public void stage(String words) {
                watcher.stage(words);
            }

            @Override
            public void step(Lightened.Step step) {
                watcher.step(step);
            }

            @Override
            public boolean stop() {
                return watcher.stop();
            }
        };
    }

    private static List<Lighten.Target> targets(Design.Variant variant, Request request, List<LoadedTub> loaded) {
        List<Lighten.Target> targets = new ArrayList<>();
        double first = request.keep
                .map(share -> share * present(loaded.getFirst()))
                .orElseGet(() -> ofDesign(variant, loaded.getFirst()));
        targets.add(new Lighten.Target(loaded.getFirst(), first * (1 + request.margin)));
        int next = 1;
        for (double share : request.also.values()) {
            LoadedTub other = loaded.get(next++);
            targets.add(new Lighten.Target(other, share * present(other) * (1 + request.margin)));
        }
        return targets;
    }

    private static double present(LoadedTub tub) {
        return tub.stiffness(tub.compliance());
    }

    /**
     * The design's target is read between skin sections. Between hardpoints the flexibility around them comes on top; it
     * is taken as it is now, and what comes out is solved anew.
     */
    private static double ofDesign(Design.Variant variant, LoadedTub tub) {
        Optional<Limit> limit = StiffnessUnit.of(tub.loading()) == StiffnessUnit.TORSION
                ? variant.targets().torsionalStiffness()
                : variant.targets().bendingStiffness();
        double target = limit.filter(Limit::atLeast)
                .map(Limit::si)
                .orElseThrow(() -> new UserMistake("the design has no target for the stiffness of case \""
                        + tub.loading().name() + "\"\n    write one under \"targets:\", or say how much of the present"
                        + " stiffness to keep: --keep \"90 %\""));
        double around = 1 / present(tub) - 1 / tub.sectionStiffness();
        return 1 / (1 / target + around);
    }

    private static List<LightenAnswer.Goal> goals(
            Tub tub, List<Lighten.Target> targets, Lightened found, Mesh mesh, DirectSolver solver) {
        Structure structure = Structure.of(LayupChecks.with(tub, found.layup()), mesh);
        List<LightenAnswer.Goal> goals = new ArrayList<>();
        for (Lighten.Target target : targets) {
            LoadedTub before = target.tub();
            try (LoadedTub after = LoadedTub.solve(structure, before.loading(), found.layup(), solver)) {
                goals.add(new LightenAnswer.Goal(
                        before.loading().name(),
                        StiffnessUnit.of(before.loading()),
                        target.stiffness(),
                        present(before),
                        before.sectionStiffness(),
                        after.sectionStiffness()));
            }
        }
        return goals;
    }

    private static List<LightenAnswer.Change> changes(Tub tub, LoadedTub nominal, Layup chosen) {
        double mass = nominal.mass(nominal.nominal());
        List<LightenAnswer.Change> changes = new ArrayList<>();
        for (Owner owner : nominal.nominal().differences(chosen)) {
            String name = owner.name();
            changes.add(
                    switch (owner) {
                        case Owner.Zone _ -> {
                            Laminate was = tub.laminates().get(name);
                            Laminate is = chosen.zones().get(name);
                            yield new LightenAnswer.Change(
                                    name,
                                    LaminatorWords.of(was, is),
                                    Laminates.code(was),
                                    Laminates.code(is),
                                    mass - nominal.mass(nominal.nominal().withZone(name, is)));
                        }
                        case Owner.Patch _ -> {
                            Laminate was =
                                    bare(nominal.nominal().patchesByName().get(name));
                            Laminate is = bare(chosen.patchesByName().get(name));
                            yield new LightenAnswer.Change(
                                    name,
                                    LaminatorWords.of(was, is),
                                    Laminates.code(was),
                                    Laminates.code(is),
                                    mass
                                            - nominal.mass(nominal.nominal()
                                                    .withPatch(
                                                            name,
                                                            chosen.patchesByName()
                                                                    .get(name))));
                        }
                        case Owner.Joint _ -> {
                            double share = chosen.joints().getOrDefault(name, 1.0);
                            String percent = Math.round(100 * share) + " %";
                            yield new LightenAnswer.Change(name, "bond " + percent + " as wide", "100 %", percent, 0);
                        }
                    });
        }
        changes.sort(
                java.util.Comparator.comparingDouble(LightenAnswer.Change::mass).reversed());
        return changes;
    }

    private static Laminate bare(List<Layer> plies) {
        return new Laminate(plies, Reference.OUTER);
    }
}
