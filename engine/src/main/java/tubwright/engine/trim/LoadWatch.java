// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ZoneReserves;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Buckling;
import tubwright.engine.structure.BucklingAnswer;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Fittings;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.Structure;
import tubwright.numerics.DirectSolver;

/**
 * What gives way in the load cases when something is left out: the lowest reserve factor of the zone it is taken from,
 * each case solved anew from the nominal state, and the lowest buckling factor to first order.
 *
 * @param loads the cases
 * @param basis criteria and knock-downs
 * @param buckling whether to look at buckling too, which costs several factorisations a case
 * @param solver backend
 * @param stage hears in words what is being done
 * @param fittings what is bolted on, on which the cases' loads may act
 */
public record LoadWatch(
        List<Case.Loads> loads,
        StrengthBasis basis,
        boolean buckling,
        DirectSolver solver,
        Consumer<String> stage,
        Fittings fittings) {
    /** A change of a load case counts as known when its work is known to this share of its change. */
    private static final double EFFECT_SHARE = 1e-3;

    private static final double ROUNDING = 1e-8;

    public LoadWatch {
        loads = List.copyOf(loads);
    }

    /** Of a tub with nothing bolted on. */
    public LoadWatch(
            List<Case.Loads> loads,
            StrengthBasis basis,
            boolean buckling,
            DirectSolver solver,
            Consumer<String> stage) {
        this(loads, basis, buckling, solver, stage, Fittings.NONE);
    }

    /**
     * What is tried.
     *
     * @param owner that gives something up
     * @param layup without it
     */
    record Trial(Owner owner, Layup layup) {}

    /**
     * What trials do, by load case.
     *
     * @param reserves lowest reserve factor of the owner's shells; none for joints
     * @param buckling lowest buckling factor of the whole; none where nothing buckles
     */
    record Found(List<Guard> reserves, List<Guard> buckling) {
        Found() {
            this(new ArrayList<>(), new ArrayList<>());
        }
    }

    /** Tries all of them in all load cases. */
    List<Found> of(LoadedTub nominal, List<Trial> trials) {
        List<Found> found = new ArrayList<>();
        trials.forEach(_ -> found.add(new Found()));
        Structure structure = nominal.structure().with(fittings);
        for (Case.Loads load : loads) {
            stage.accept("load case " + load.name());
            try (LoadedTub tub = LoadedTub.solve(structure, load, nominal.nominal(), solver)) {
                List<Change> changes =
                        trials.stream().map(t -> tub.change(t.layup())).toList();
                reserves(tub, load, trials, changes, found);
                if (buckling) {
                    stage.accept("buckling in load case " + load.name());
                    buckling(tub, load, changes, found);
                }
            }
        }
        return found;
    }

    private void reserves(LoadedTub tub, Case.Loads load, List<Trial> trials, List<Change> changes, List<Found> found) {
        ZoneReserves zones = new ZoneReserves(tub.structure(), basis);
        Map<Owner, Optional<Reserve>> before = new HashMap<>();
        Laminate[] nominal = laminates(tub, tub.nominal());
        double c = tub.compliance();
        new Resolve(tub)
                .solve(
                        changes,
                        i -> i.high() - i.low() <= Math.max(EFFECT_SHARE * Math.abs(i.low() - c), ROUNDING * c),
                        (solved, k) -> {
                            Trial trial = trials.get(k);
                            if (trial.owner() instanceof Owner.Joint) {
                                return;
                            }
                            int[] elements = tub.blocksOf(trial.owner()).stream()
                                    .flatMap(b -> tub.blocks().elements(b).stream())
                                    .mapToInt(Integer::intValue)
                                    .sorted()
                                    .toArray();
                            Optional<Reserve> was = before.computeIfAbsent(
                                    trial.owner(),
                                    _ -> zones.lowest(elements, nominal, load.name(), tub.displacements()));
                            Optional<Reserve> is = zones.lowest(
                                    elements, laminates(tub, trial.layup()), load.name(), solved.displacements());
                            if (was.isPresent() && is.isPresent()) {
                                found.get(k)
                                        .reserves()
                                        .add(new Guard(
                                                load.name(),
                                                was.get().value(),
                                                is.get().value(),
                                                words(is.get())));
                            }
                        });
    }

    private void buckling(LoadedTub tub, Case.Loads load, List<Change> changes, List<Found> found) {
        Solution solution = new Solution(load, tub.displacements(), new double[0], 0.5 * tub.compliance(), 0);
        BucklingAnswer answer =
                Buckling.solve(tub.structure(), List.of(solution), 1, 0, solver).getFirst();
        if (answer.modes().isEmpty()) {
            return;
        }
        BucklingWorth worth = new BucklingWorth(tub, answer.modes().getFirst());
        String part =
                tub.structure().parts().get(answer.modes().getFirst().part()).name();
        for (int k = 0; k < changes.size(); k++) {
            found.get(k).buckling().add(new Guard(load.name(), worth.nominal(), worth.after(changes.get(k)), part));
        }
    }

    private static Laminate[] laminates(LoadedTub tub, Layup layup) {
        List<Region> regions = tub.structure().mesh().regions();
        Laminate[] result = new Laminate[regions.size()];
        for (int r = 0; r < result.length; r++) {
            Region region = regions.get(r);
            Laminate whole = layup.laminate(new Blocks.Block(region.zone(), region.patches(), false, 0));
            result[r] = region.mirrored() ? whole.mirrored() : whole;
        }
        return result;
    }

    private static String words(Reserve reserve) {
        return reserve.check() + (reserve.ply().isEmpty() ? "" : ", " + reserve.ply());
    }
}
