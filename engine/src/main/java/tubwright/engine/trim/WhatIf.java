// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.LayerRole;

/**
 * Answers changes of layup at once, each with bounds that are proved for the finite-element model.
 *
 * <p>The first question about a zone costs a few back-substitutions for its fields, the first about a set of zones one
 * visit to their shells; from then on an answer is a small dense problem. Not thread-safe.
 */
public final class WhatIf {
    /** Outward rounding of exact answers, share of the compliance. */
    private static final double ROUNDING = 1e-9;

    private final LoadedTub tub;
    private final Resolve resolve;
    private final Map<Owner, Fields> fields = new HashMap<>();
    private final Map<List<Owner>, Fields> grown = new HashMap<>();
    private final Map<List<Owner>, ReducedModel> models = new HashMap<>();

    private record Fields(List<Change> changes, List<double[]> derivatives) {
        Fields() {
            this(new ArrayList<>(), new ArrayList<>());
        }

        void addAll(Fields others) {
            changes.addAll(others.changes);
            derivatives.addAll(others.derivatives);
        }
    }

    /**
     * What a change does.
     *
     * @param stiffness bounds: N·m/rad or N/m between loaded and held hardpoints
     * @param mass kg
     * @param instant whether the reduced model alone answered
     * @param substitutions back-substitutions spent on this answer, on fields that later answers share included
     */
    public record Answer(Interval stiffness, double mass, boolean instant, int substitutions) {}

    public WhatIf(LoadedTub tub) {
        this.tub = tub;
        resolve = new Resolve(tub);
    }

    /**
     * The instant answer, however wide.
     *
     * @throws IllegalArgumentException if a laminate is left without plies or stiffness
     */
    public Answer ask(Layup layup) {
        return ask(layup, Double.POSITIVE_INFINITY);
    }

    /**
     * An answer of at most the given width. Where the reduced model's is wider the very change asked for joins its
     * fields, one back-substitution; where that does not do, it is solved from the reduced answer on.
     *
     * @param width relative to the stiffness
     * @throws IllegalArgumentException if a laminate is left without plies or stiffness
     */
    public Answer ask(Layup layup, double width) {
        check(layup);
        int before = tub.substitutions();
        List<Owner> owners = tub.nominal().differences(layup);
        Change change = tub.change(layup);
        if (change.isNothing()) {
            Interval exact = new Interval(tub.compliance(), tub.compliance()).outward(ROUNDING);
            return answer(exact, layup, true, before);
        }
        ReducedModel model = model(owners);
        ReducedModel.Instant instant = model.answer(change);
        if (instant.compliance().relativeWidth() <= width) {
            return answer(instant.compliance(), layup, true, before);
        }
        grow(owners, change);
        model = model(owners);
        instant = model.answer(change);
        if (instant.compliance().relativeWidth() <= width) {
            return answer(instant.compliance(), layup, false, before);
        }
        Resolve.Solved solved = resolve.solve(change, model.start(instant), Resolve.within(width));
        return answer(solved.compliance().outward(ROUNDING).and(instant.compliance()), layup, false, before);
    }

    /**
     * The exact answer: conjugate gradients on the nominal factor from the reduced answer until the bounds close.
     *
     * @param width relative to the stiffness, for instance 1e-8
     */
    public Answer solve(Layup layup, double width) {
        check(layup);
        int before = tub.substitutions();
        Change change = tub.change(layup);
        if (change.isNothing()) {
            return ask(layup);
        }
        ReducedModel model = model(tub.nominal().differences(layup));
        Resolve.Solved solved = resolve.solve(change, model.start(model.answer(change)), Resolve.within(width));
        return answer(solved.compliance().outward(ROUNDING), layup, false, before);
    }

    private Answer answer(Interval compliance, Layup layup, boolean instant, int before) {
        Interval stiffness = new Interval(tub.stiffness(compliance.high()), tub.stiffness(compliance.low()));
        return new Answer(stiffness, tub.mass(layup), instant, tub.substitutions() - before);
    }

    private ReducedModel model(List<Owner> owners) {
        ReducedModel known = models.get(owners);
        if (known != null) {
            return known;
        }
        Fields all = new Fields();
        for (Owner owner : owners) {
            all.addAll(fields.computeIfAbsent(owner, this::fields));
        }
        all.addAll(grown.getOrDefault(owners, new Fields()));
        ReducedModel model = new ReducedModel(tub, all.changes, all.derivatives);
        models.put(owners, model);
        return model;
    }

    private Fields fields(Owner owner) {
        List<Change> changes =
                Samples.of(tub.nominal(), owner).stream().map(tub::change).toList();
        return derived(changes);
    }

    private Fields derived(List<Change> changes) {
        double[][] v =
                changes.stream().map(c -> tub.forces(c, tub.displacements())).toArray(double[][]::new);
        tub.substitute(v);
        return new Fields(new ArrayList<>(changes), new ArrayList<>(List.of(v)));
    }

    private void grow(List<Owner> owners, Change change) {
        grown.computeIfAbsent(owners, _ -> new Fields()).addAll(derived(List.of(change)));
        models.remove(owners);
    }

    private static void check(Layup layup) {
        layup.zones().forEach((zone, laminate) -> {
            if (laminate.layers().stream().noneMatch(l -> l.role() == LayerRole.PLY || l.role() == LayerRole.SHEET)) {
                throw new IllegalArgumentException("zone '" + zone + "' is left without a ply");
            }
        });
    }
}
