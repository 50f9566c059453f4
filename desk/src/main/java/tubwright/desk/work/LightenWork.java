// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.Limit;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupRules;
import tubwright.engine.trim.Lighten;
import tubwright.engine.trim.Lightened;
import tubwright.engine.trim.LoadedTub;
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
     * @param rules candidates keep to
     * @param seconds to spend
     */
    public record Request(
            TrimWork.Request on, Optional<Double> keep, Map<String, Double> also, LayupRules rules, double seconds) {
        public Request {
            also = new LinkedHashMap<>(also);
        }
    }

    /** Finds the lightest layup. */
    public static LightenAnswer lighten(Design design, Request request, String version, Workbench.Listener listener) {
        Design.Variant variant = TrimWork.variant(design, request.on);
        Tub tub = variant.tub();
        List<Case> cases = new ArrayList<>(List.of(TrimWork.loading(tub, request.on.loading())));
        request.also.keySet().forEach(name -> cases.add(TrimWork.loading(tub, Optional.of(name))));
        List<LoadedTub> loaded = new ArrayList<>();
        DirectSolver solver = Solvers.best();
        try {
            listener.stage("mesh and solution");
            Mesh mesh = Study.mesh(tub, TrimWork.meshSize(tub, request.on));
            Structure structure = Structure.of(tub, mesh);
            for (Case each : cases) {
                loaded.add(LoadedTub.solve(structure, each, Layup.of(tub), solver));
            }
            List<Lighten.Target> targets = new ArrayList<>();
            double first = request.keep
                    .map(share -> share * present(loaded.getFirst()))
                    .orElseGet(() -> ofDesign(variant, loaded.getFirst()));
            targets.add(new Lighten.Target(loaded.getFirst(), first));
            int next = 1;
            for (double share : request.also.values()) {
                LoadedTub other = loaded.get(next++);
                targets.add(new Lighten.Target(other, share * present(other)));
            }
            Map<String, List<Laminate>> candidates = new TreeMap<>();
            tub.laminates().forEach((zone, laminate) -> candidates.put(zone, request.rules.thinned(laminate)));
            listener.stage("looking for the lightest layup");
            Lightened found;
            try {
                found = Lighten.lightest(targets, candidates, request.seconds);
            } catch (IllegalArgumentException unreachable) {
                throw new UserMistake(unreachable.getMessage() + "\n    ask for less, or allow heavier stacks");
            }
            listener.stage("solving the chosen layup anew");
            return answer(design, variant, targets, found, mesh, version, solver);
        } catch (StructureException | ShapeException fault) {
            throw design.explain(variant, fault);
        } finally {
            loaded.forEach(LoadedTub::close);
        }
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

    private static LightenAnswer answer(
            Design design,
            Design.Variant variant,
            List<Lighten.Target> targets,
            Lightened found,
            Mesh mesh,
            String version,
            DirectSolver solver) {
        Tub tub = variant.tub();
        Tub lighter = tub.with(found.layup().zones(), tub.patchPlies(), tub.joints(), tub.hardpoints());
        Structure structure = Structure.of(lighter, mesh);
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
        LoadedTub nominal = targets.getFirst().tub();
        double mass = nominal.mass(nominal.nominal());
        List<LightenAnswer.Change> changes = new ArrayList<>();
        nominal.nominal().differences(found.layup()).forEach(owner -> {
            Laminate was = tub.laminates().get(owner.name());
            Laminate is = found.layup().zones().get(owner.name());
            changes.add(new LightenAnswer.Change(
                    owner.name(),
                    LaminatorWords.of(was, is),
                    Laminates.code(was),
                    Laminates.code(is),
                    mass - nominal.mass(nominal.nominal().withZone(owner.name(), is))));
        });
        changes.sort(
                java.util.Comparator.comparingDouble(LightenAnswer.Change::mass).reversed());
        return new LightenAnswer(
                design.name(),
                variant.name(),
                goals,
                mass,
                found,
                changes,
                nominal.structure().unknowns(),
                version);
    }
}
