// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tubwright.desk.answer.LightenAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Doubts;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Borders;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupRules;
import tubwright.engine.trim.Lighten;
import tubwright.engine.trim.LightenProblem;
import tubwright.engine.trim.Lightened;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.OutOfReach;
import tubwright.engine.trim.Site;
import tubwright.engine.trim.Sites;
import tubwright.numerics.DirectSolver;

/** Which choices of the lightest layup hang on the stiffness of the materials, by searching again with it moved. */
final class MaterialScatter {
    /** Shares of the time: all stiffness up or down, and one material softer. */
    private static final double FOR_ALL = 0.3;

    private static final double FOR_ONE = 0.1;

    private final Design.Variant variant;
    private final LightenWork.Request request;
    private final Mesh mesh;
    private final LayupRules rules;
    private final DirectSolver solver;
    private final LightenWork.Watcher watcher;

    /**
     * @param rules in force
     * @param watcher hears how it goes
     */
    MaterialScatter(
            Design.Variant variant,
            LightenWork.Request request,
            Mesh mesh,
            LayupRules rules,
            DirectSolver solver,
            LightenWork.Watcher watcher) {
        this.variant = variant;
        this.request = request;
        this.mesh = mesh;
        this.rules = rules;
        this.solver = solver;
        this.watcher = watcher;
    }

    /** All stiffness lower by a share is the same as all targets higher by as much, and the other way round. */
    LightenAnswer.Scatter of(
            Tub tub, LightenProblem problem, List<Lighten.Target> targets, LayupChecks checks, Lightened found) {
        double share = request.scatter().getAsDouble();
        List<Lightened> others = new ArrayList<>();
        for (double factor : new double[] {1 - share, 1 + share}) {
            watcher.stage("the same with stiffness at " + Math.round(100 * factor) + " %");
            List<Lighten.Target> moved = targets.stream()
                    .map(t -> new Lighten.Target(t.tub(), t.stiffness() / factor))
                    .toList();
            others.add(run(problem, moved, checks, FOR_ALL));
        }
        List<String> firm = new ArrayList<>();
        List<String> loose = new ArrayList<>();
        for (Site site : problem.sites()) {
            Layup kept = found.layup();
            boolean same =
                    others.stream().noneMatch(o -> kept.differences(o.layup()).contains(site.owner()));
            (same ? firm : loose).add(site.owner().name());
        }
        return new LightenAnswer.Scatter(
                share,
                others.getFirst().mass(),
                others.getLast().mass(),
                firm,
                loose,
                byMaterial(tub, targets, found, 1 - share));
    }

    private List<LightenAnswer.OfMaterial> byMaterial(
            Tub tub, List<Lighten.Target> targets, Lightened found, double factor) {
        return tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst()
                .map(torsion -> byMaterial(tub, torsion, targets, found, factor))
                .orElse(List.of());
    }

    /** @param torsion any case of that kind; its hardpoints are left as they are */
    private List<LightenAnswer.OfMaterial> byMaterial(
            Tub tub, Case.Torsion torsion, List<Lighten.Target> targets, Lightened found, double factor) {
        List<LightenAnswer.OfMaterial> result = new ArrayList<>();
        for (Doubt doubt : Doubts.of(tub, torsion)) {
            if ((doubt.is(Doubt.Kind.LAMINATE) || doubt.is(Doubt.Kind.CORE_SHEAR)) && !watcher.stop()) {
                watcher.stage("the same with the " + doubt.name() + " at " + Math.round(100 * factor) + " %");
                Tub softer = Doubts.applied(tub, torsion, List.of(doubt), new double[] {Math.log(factor)});
                try {
                    Lightened other = lightest(softer, targets);
                    result.add(new LightenAnswer.OfMaterial(
                            doubt.name(), OptionalDouble.of(other.mass()), changed(found, other)));
                } catch (OutOfReach none) {
                    result.add(new LightenAnswer.OfMaterial(doubt.name(), OptionalDouble.empty(), List.of()));
                }
            }
        }
        result.sort(Comparator.comparingDouble(
                (LightenAnswer.OfMaterial m) -> -m.mass().orElse(Double.POSITIVE_INFINITY)));
        return result;
    }

    /** The lightest layup of another tub for the same targets. */
    private Lightened lightest(Tub softer, List<Lighten.Target> targets) {
        Structure structure = Structure.of(softer, mesh);
        List<LoadedTub> loaded = new ArrayList<>();
        try {
            List<Lighten.Target> same = new ArrayList<>();
            for (Lighten.Target target : targets) {
                loaded.add(LoadedTub.solve(structure, target.tub().loading(), Layup.of(softer), solver));
                same.add(new Lighten.Target(loaded.getLast(), target.stiffness()));
            }
            List<Site> sites = Sites.of(loaded.getFirst(), rules);
            LightenProblem problem =
                    LightenProblem.of(loaded, sites, Borders.of(mesh).neighbours(sites, rules));
            return run(
                    problem, same, new LayupChecks(softer, mesh, variant.targets(), request.margin(), solver), FOR_ONE);
        } finally {
            loaded.forEach(LoadedTub::close);
        }
    }

    private Lightened run(LightenProblem problem, List<Lighten.Target> targets, LayupChecks checks, double share) {
        return Lighten.run(problem, targets, checks, LightenWork.budget(request, share), LightenWork.heard(watcher));
    }

    /** Zones and patches whose stacks differ: materials by name, since one of them is softer in the other layup. */
    private static List<String> changed(Lightened one, Lightened two) {
        Map<String, List<String>> first = stacks(one.layup());
        Map<String, List<String>> second = stacks(two.layup());
        return first.keySet().stream()
                .filter(name -> !first.get(name).equals(second.get(name)))
                .toList();
    }

    private static Map<String, List<String>> stacks(Layup layup) {
        Map<String, List<String>> stacks = new TreeMap<>();
        layup.zones().forEach((name, laminate) -> stacks.put(name, words(laminate.layers())));
        layup.patchesByName().forEach((name, layers) -> stacks.put(name, words(layers)));
        return stacks;
    }

    private static List<String> words(List<Layer> layers) {
        return layers.stream()
                .map(l -> l.material().name() + " " + l.thickness() + " " + l.angle())
                .collect(Collectors.toList());
    }
}
