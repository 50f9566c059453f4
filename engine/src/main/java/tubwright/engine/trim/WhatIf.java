// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.DoubleConsumer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.numerics.DirectSolver;

/**
 * Answers changes of layup at once, for several cases together, each with bounds that are proved for the finite-element
 * model.
 *
 * <p>The first question about a zone costs a few back-substitutions for its fields, the first about a set of zones one
 * visit to their shells; from then on an answer is a small dense problem. {@link #prepare} makes all of that beforehand,
 * so that every question is answered in milliseconds. Safe to use from several threads: questions that need nothing new
 * do not wait for each other.
 */
public final class WhatIf implements AutoCloseable {
    /** Outward rounding of exact answers, share of the compliance. */
    private static final double ROUNDING = 1e-9;

    private final List<LoadedTub> tubs;
    private final List<Basis> bases;
    private final boolean own;

    /**
     * What a change does.
     *
     * @param readings one for each case, in their order
     * @param mass kg
     * @param pieces mass by piece, kg
     * @param instant whether the reduced models alone answered
     * @param substitutions back-substitutions spent on this answer, on fields that later answers share included
     */
    public record Answer(
            List<Reading> readings, double mass, SortedMap<String, Double> pieces, boolean instant, int substitutions) {
        public Answer {
            readings = List.copyOf(readings);
            pieces = Collections.unmodifiableSortedMap(new TreeMap<>(pieces));
        }

        /** Bounds on the stiffness in the first case. */
        public Interval stiffness() {
            return readings.getFirst().stiffness();
        }
    }

    /**
     * The stiffness in one case.
     *
     * @param loading name of the case
     * @param stiffness bounds: N·m/rad or N/m between loaded and held hardpoints
     */
    public record Reading(String loading, Interval stiffness) {}

    /**
     * What making ready took.
     *
     * @param fields back-substitutions, all cases together
     * @param bytes kept for them
     * @param seconds spent
     */
    public record Preparation(int fields, long bytes, double seconds) {}

    private WhatIf(List<LoadedTub> tubs, boolean own) {
        this.tubs = List.copyOf(tubs);
        this.own = own;
        bases = tubs.stream().map(Basis::new).toList();
        if (tubs.isEmpty()) {
            throw new IllegalArgumentException("what-if needs a case");
        }
    }

    /** Questions about one tub under one case, which stays the caller's to close. */
    public WhatIf(LoadedTub tub) {
        this(List.of(tub), false);
    }

    /** Questions about one tub solved under several cases, which stay the caller's to close. */
    public WhatIf(List<LoadedTub> tubs) {
        this(tubs, false);
    }

    /**
     * Solves a tub under several cases and keeps all that is needed for questions until closed.
     *
     * @param structure the tub's, with the nominal layup's laminates
     * @param cases torsion and bending cases; others have no stiffness to ask for
     * @param nominal layup the structure was built with
     * @param solver backend
     */
    public static WhatIf solve(Structure structure, List<Case> cases, Layup nominal, DirectSolver solver) {
        List<LoadedTub> tubs = new ArrayList<>();
        try {
            cases.forEach(c -> tubs.add(LoadedTub.solve(structure, c, nominal, solver)));
            return new WhatIf(tubs, true);
        } catch (RuntimeException fault) {
            tubs.forEach(LoadedTub::close);
            throw fault;
        }
    }

    /** The solved tubs, one for each case. */
    public List<LoadedTub> tubs() {
        return tubs;
    }

    /** The layup from which changes are counted. */
    public Layup nominal() {
        return tubs.getFirst().nominal();
    }

    /**
     * Makes everything ready that {@link #ask(Layup)} may need.
     *
     * @param progress hears the share that is done, 0 to 1
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; questions can still be asked
     */
    public Preparation prepare(DoubleConsumer progress) {
        long start = System.nanoTime();
        int fields = 0;
        long bytes = 0;
        for (int k = 0; k < bases.size(); k++) {
            double done = k;
            Basis.Size size = bases.get(k).prepare(share -> progress.accept((done + share) / bases.size()));
            fields += size.fields();
            bytes += size.bytes();
        }
        return new Preparation(fields, bytes, (System.nanoTime() - start) * 1e-9);
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
        return answer(layup, basis -> asked(basis, layup, width));
    }

    /**
     * The exact answer: conjugate gradients on the nominal factor from the reduced answer until the bounds close.
     *
     * @param width relative to the stiffness, for instance 1e-8
     * @throws java.util.concurrent.CancellationException if the thread is interrupted
     */
    public Answer solve(Layup layup, double width) {
        return answer(layup, basis -> solved(basis, layup, width));
    }

    private record Part(Interval compliance, boolean instant, int substitutions) {}

    private interface Question {
        Part to(Basis basis);
    }

    private Answer answer(Layup layup, Question question) {
        check(layup);
        List<Reading> readings = new ArrayList<>();
        boolean instant = true;
        int substitutions = 0;
        for (Basis basis : bases) {
            LoadedTub tub = basis.tub();
            Part part = question.to(basis);
            readings.add(new Reading(
                    tub.loading().name(),
                    new Interval(tub.stiffness(part.compliance.high()), tub.stiffness(part.compliance.low()))));
            instant &= part.instant;
            substitutions += part.substitutions;
        }
        SortedMap<String, Double> pieces = tubs.getFirst().massByPiece(layup);
        double mass = pieces.values().stream().mapToDouble(Double::doubleValue).sum();
        return new Answer(readings, mass, pieces, instant, substitutions);
    }

    private static Part unchanged(LoadedTub tub) {
        return new Part(new Interval(tub.compliance(), tub.compliance()).outward(ROUNDING), true, 0);
    }

    private static Part asked(Basis basis, Layup layup, double width) {
        LoadedTub tub = basis.tub();
        Change change = tub.change(layup);
        if (change.isNothing()) {
            return unchanged(tub);
        }
        List<Owner> owners = tub.nominal().differences(layup);
        Basis.Made made = basis.model(owners);
        ReducedModel.Instant instant = made.model().answer(change);
        if (instant.compliance().relativeWidth() <= width) {
            return new Part(instant.compliance(), true, made.substitutions());
        }
        basis.grow(owners, change);
        ReducedModel model = basis.model(owners).model();
        instant = model.answer(change);
        int spent = made.substitutions() + 1;
        if (instant.compliance().relativeWidth() <= width) {
            return new Part(instant.compliance(), false, spent);
        }
        Resolve.Solved solved = new Resolve(tub).solve(change, model.start(instant), Resolve.within(width));
        return new Part(solved.compliance().outward(ROUNDING).and(instant.compliance()), false, spent + solved.steps());
    }

    private static Part solved(Basis basis, Layup layup, double width) {
        LoadedTub tub = basis.tub();
        Change change = tub.change(layup);
        if (change.isNothing()) {
            return unchanged(tub);
        }
        Basis.Made made = basis.model(tub.nominal().differences(layup));
        ReducedModel model = made.model();
        Resolve.Solved solved =
                new Resolve(tub).solve(change, model.start(model.answer(change)), Resolve.within(width));
        return new Part(solved.compliance().outward(ROUNDING), false, made.substitutions() + solved.steps());
    }

    private static void check(Layup layup) {
        layup.zones().forEach((zone, laminate) -> {
            if (laminate.layers().stream().noneMatch(l -> l.role() == LayerRole.PLY || l.role() == LayerRole.SHEET)) {
                throw new IllegalArgumentException("zone '" + zone + "' is left without a ply");
            }
        });
    }

    /** Lets go of the factors if they were made here. */
    @Override
    public void close() {
        if (own) {
            tubs.forEach(LoadedTub::close);
        }
    }
}
