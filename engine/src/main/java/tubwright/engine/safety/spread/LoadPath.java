// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import tubwright.engine.structure.StructureException;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.SingularMatrixException;

/**
 * Follows a load past its peak. Each step prescribes the energy that mechanisms take (energy-release control after Gutiérrez
 * 2004 and Verhoosel, Remmers and Gutiérrez 2009); load and movement follow, either of which may go back.
 *
 * <p>A step is solved with secants: with the stiffness K(d) of the damage of the last round, u = λ K⁻¹ f; the energy taken
 * under λ K⁻¹ f grows with λ, so that one λ takes what the step prescribes; that gives the damage of the next round. Where
 * K(d) u balances λ f the step has settled. Unloading goes straight to the origin.
 */
public final class LoadPath {
    /**
     * When to stop and how finely to go.
     *
     * @param most steps
     * @param until share of the peak at which it ends
     * @param tolerance imbalance that counts as settled
     * @param fineness largest energy of a step, as a share of the elastic energy in the structure
     */
    public record Manner(int most, double until, double tolerance, double fineness) {
        /** 200 steps, to 20 % of the peak, balanced to 0.1 %, up to 4 % of the elastic energy a step. */
        public static final Manner USUAL = new Manner(200, 0.2, 1e-3, 0.04);
    }

    /**
     * How far it has come.
     *
     * @param step number of the step that begins
     * @param factor on the load after the step before
     * @param peak largest so far
     */
    public record Reached(int step, double factor, double peak) {}

    private static final int ROUNDS = 40;
    private static final int QUICK = 6;
    private static final double FIRST = 2e-3;
    private static final int HALVINGS = 4;
    /** Steps in a row that do not settle, after which nothing more can be read. */
    private static final int LOST = 5;
    /** Share of its onset at which a piece is woken. */
    private static final double RESTLESS = 0.7;
    /** Times the load of the first failure beyond which what is elastic here would have given way. */
    private static final double FAR = 30;

    private final SpreadModel model;
    private final Manner manner;
    private final DirectSolver solver;
    private final boolean[] follows;
    private final boolean[] ends;
    private final boolean[] shells;
    private final Set<String> needs = new LinkedHashSet<>();
    private final Map<String, Onset> onsets = new LinkedHashMap<>();

    private static final class Onset {
        private final String zone;
        private final String what;
        private final double factor;
        private final double movement;
        private final double[] place;
        private final int layerKey;

        Onset(String zone, String what, double factor, double movement, double[] place, int layerKey) {
            this.zone = zone;
            this.what = what;
            this.factor = factor;
            this.movement = movement;
            this.place = place;
            this.layerKey = layerKey;
        }
    }

    private LoadPath(SpreadModel model, Manner manner, DirectSolver solver) {
        this.model = model;
        this.manner = manner;
        this.solver = solver;
        follows = new boolean[model.mechanisms()];
        ends = new boolean[follows.length];
        shells = new boolean[follows.length];
        for (int p = 0; p < model.pieces(); p++) {
            int last = p + 1 < model.pieces() ? model.first(p + 1) : follows.length;
            for (int m = model.first(p); m < last; m++) {
                List<String> missing = model.isShell(p)
                        ? model.mechanism(p, m).needs()
                        : model.bond(p).needs();
                shells[m] = model.isShell(p);
                follows[m] = missing.isEmpty();
                ends[m] = !missing.isEmpty()
                        && (!model.isShell(p) || model.mechanism(p, m).ends());
                needs.addAll(missing);
            }
        }
    }

    /**
     * Follows the load.
     *
     * @param step hears of each step as it begins
     * @param stop asked before each step whether to end there
     */
    public static SpreadAnswer of(
            SpreadModel model, Manner manner, DirectSolver solver, Consumer<Reached> step, BooleanSupplier stop) {
        return new LoadPath(model, manner, solver).run(step, stop);
    }

    private double[] begin() {
        try {
            return awake.solve();
        } catch (SingularMatrixException e) {
            throw new StructureException(
                    "something is left that nothing holds before any load acts",
                    "look for what is cut off by what was torn out, or hold more");
        }
    }

    /** A try at a step. */
    private record Tried(SpreadState state, double[] u, double factor, double imbalance, int rounds, String end) {
        boolean settled(double tolerance) {
            return imbalance <= tolerance;
        }
    }

    private Awake awake;
    private SpreadState assembled;

    private SpreadAnswer run(Consumer<Reached> told, BooleanSupplier stop) {
        SpreadState state = new SpreadState(shells);
        List<SpreadAnswer.Step> steps = new ArrayList<>();
        steps.add(new SpreadAnswer.Step(0, 0, 0, 0, 0, 0, true));
        String ended = "";
        boolean round = false;
        awake = Awake.all(model, solver);
        try {
            assemble(state);
            double[] unit = begin();
            SpreadModel.Driven driven = model.drive(unit, left(assembled), awake.pieces());
            double first = state.reach(driven, follows);
            double bar = state.reach(driven, ends);
            double factor = Math.min(first, bar);
            if (factor == Double.POSITIVE_INFINITY) {
                return answer(state, steps, "nothing that is looked at is driven by this load", false);
            }
            double movement = factor * awake.along(unit, 1);
            note(state, state.after(driven, follows, factor * (1 + 1e-9)), driven, factor, movement);
            steps.add(new SpreadAnswer.Step(factor, movement, 0, 0, 0, 1, true));
            if (bar <= first) {
                return answer(state, steps, barred(driven, bar), false);
            }
            wake(model.drive(times(unit, factor), left(assembled), awake.pieces()), state, new boolean[model.pieces()]);
            double elastic = 0.5 * factor * movement;
            double energy = FIRST * elastic;
            double peak = factor;
            double released = 0;
            SpreadState before = state;
            double last = energy;
            int lost = 0;
            for (int n = 1; n <= manner.most() && ended.isEmpty(); n++) {
                if (stop.getAsBoolean()) {
                    ended = "it was stopped";
                    break;
                }
                told.accept(new Reached(n, steps.getLast().factor(), peak));
                Tried tried = settle(state, state.onward(before, energy / last), energy);
                for (int half = 0;
                        half < HALVINGS && !tried.settled(manner.tolerance()) && tried.end.isEmpty();
                        half++) {
                    energy *= 0.5;
                    tried = settle(state, state.onward(before, energy / last), energy);
                }
                if (tried.u == null) {
                    ended = tried.end;
                    break;
                }
                if (!(tried.factor <= FAR * first)) {
                    round = true;
                    ended = String.format(
                            Locale.ROOT,
                            "the load goes round this place: at %.0f times what began the first failure the rest, which is"
                                    + " elastic here, still carries it",
                            FAR);
                    break;
                }
                SpreadModel.Driven now = model.drive(tried.u, left(assembled), awake.pieces());
                double next = tried.factor;
                double moved = awake.along(tried.u, next);
                note(state, tried.state, now, next, moved);
                SpreadAnswer.Step old = steps.getLast();
                released += 0.5 * (old.factor() * moved - next * old.movement());
                before = state;
                last = energy;
                state = tried.state;
                steps.add(new SpreadAnswer.Step(
                        next,
                        moved,
                        state.taken(),
                        released,
                        tried.imbalance,
                        tried.rounds,
                        tried.settled(manner.tolerance())));
                ended = tried.end;
                lost = tried.settled(manner.tolerance()) ? 0 : lost + 1;
                if (ended.isEmpty() && lost == LOST) {
                    ended = LOST + " steps in a row did not come into balance; what comes after could not be read";
                }
                peak = Math.max(peak, next);
                if (ended.isEmpty() && next < manner.until() * peak) {
                    ended = String.format(Locale.ROOT, "it bears less than %.0f %% of its peak", 100 * manner.until());
                }
                double most = manner.fineness() * 0.5 * next * moved;
                energy = Math.min(
                        Math.max(most, FIRST * elastic),
                        tried.rounds <= QUICK ? 1.6 * energy : tried.rounds <= 2 * QUICK ? 1.2 * energy : energy);
            }
        } finally {
            awake.close();
        }
        return answer(state, steps, ended.isEmpty() ? manner.most() + " steps were made" : ended, round);
    }

    /** Tries a step until nothing that sleeps would have begun in it. */
    private Tried settle(SpreadState from, SpreadState guess, double energy) {
        Tried tried = attempt(from, guess, energy);
        int rounds = tried.rounds;
        while (!awake.whole()) {
            if (tried.u == null) {
                // What sleeps may carry on, or take the energy.
                boolean[] all = new boolean[model.pieces()];
                Arrays.fill(all, true);
                rise(all);
            } else {
                awake.complete(tried.u, tried.factor);
                int[] asleep = IntStream.range(0, model.pieces())
                        .filter(p -> !awake.isAwake(p))
                        .toArray();
                SpreadModel.Driven driven = model.drive(tried.u, left(assembled), asleep);
                if (!(largest(driven, from, asleep) >= 1)) {
                    break;
                }
                boolean[] woken = new boolean[model.pieces()];
                Arrays.stream(awake.pieces()).forEach(p -> woken[p] = true);
                wake(driven, from, woken);
            }
            tried = attempt(from, tried.u == null ? guess : tried.state, energy);
            rounds += tried.rounds;
        }
        return new Tried(tried.state, tried.u, tried.factor, tried.imbalance, rounds, tried.end);
    }

    /** Wakes what a field drives to a good part of its onset, and the pieces next to that. */
    private void wake(SpreadModel.Driven driven, SpreadState state, boolean[] woken) {
        BitSet near = new BitSet();
        for (int p = 0; p < woken.length; p++) {
            if (!woken[p] && largest(driven, state, new int[] {p}) >= RESTLESS) {
                woken[p] = true;
                Arrays.stream(model.nodesOf(p)).forEach(near::set);
            }
        }
        for (int p = 0; p < woken.length; p++) {
            woken[p] |= Arrays.stream(model.nodesOf(p)).anyMatch(near::get);
        }
        rise(woken);
    }

    private void rise(boolean[] woken) {
        awake.close();
        awake = Awake.of(model, woken, solver);
        awake.assemble();
    }

    /** The largest ratio of what is looked at in some pieces. */
    private double largest(SpreadModel.Driven driven, SpreadState state, int[] some) {
        double most = 0;
        for (int p : some) {
            int last = p + 1 < model.pieces() ? model.first(p + 1) : follows.length;
            for (int m = model.first(p); m < last; m++) {
                if (follows[m] || ends[m]) {
                    most = Math.max(most, state.driven(driven, m));
                }
            }
        }
        return most;
    }

    private Tried attempt(SpreadState from, SpreadState guess, double energy) {
        double target = from.taken() + energy;
        SpreadState now = guess;
        double factor = 0;
        double imbalance = Double.POSITIVE_INFINITY;
        double[] u = null;
        double scale = 1;
        for (int round = 1; round <= ROUNDS; round++) {
            double[] unit;
            try {
                assemble(now);
                if (u != null) {
                    imbalance = imbalance(u, factor);
                    if (imbalance <= manner.tolerance()) {
                        return new Tried(now, u, factor, imbalance, round - 1, "");
                    }
                }
                unit = awake.solve();
            } catch (SingularMatrixException e) {
                return new Tried(from, null, 0, 0, round, "nothing carries the load any more");
            }
            // Ratios are taken at about the load, since those of bonds are not quite in proportion to it.
            double[] at = unit.clone();
            for (int i = 0; i < at.length; i++) {
                at[i] *= scale;
            }
            SpreadModel.Driven driven = model.drive(at, left(assembled), awake.pieces());
            double bar = from.reach(driven, ends);
            double found = from.factor(driven, follows, target);
            if (found >= bar) {
                double[] there = times(unit, bar * scale);
                SpreadState last = from.after(driven, follows, bar);
                return new Tried(last, there, bar * scale, 0, round, barred(driven, bar));
            }
            if (found == Double.POSITIVE_INFINITY) {
                return new Tried(from, null, 0, 0, round, "nothing is left that could take more energy");
            }
            SpreadState next = from.after(driven, follows, found);
            factor = found * scale;
            u = times(unit, factor);
            scale = factor;
            now = next;
        }
        return new Tried(now, u, factor, imbalance, ROUNDS, "");
    }

    private void assemble(SpreadState state) {
        double[] left = left(state);
        boolean[] changed = new boolean[model.pieces()];
        for (int p = 0; p < changed.length; p++) {
            int last = p + 1 < changed.length ? model.first(p + 1) : left.length;
            changed[p] = assembled == null;
            for (int m = model.first(p); m < last; m++) {
                changed[p] |= assembled != null && left[m] != assembled.left(m);
            }
        }
        model.update(left, changed);
        awake.assemble();
        assembled = state;
    }

    private double[] left(SpreadState state) {
        double[] left = new double[follows.length];
        for (int m = 0; m < left.length; m++) {
            left[m] = state.left(m);
        }
        return left;
    }

    /** Force out of balance over the load, both as lengths of vectors of forces. */
    private double imbalance(double[] u, double factor) {
        double all = 0;
        for (int i = 0; i < u.length; i++) {
            if (!model.fixed()[i] && i % 6 < 3) {
                all += model.load()[i] * model.load()[i];
            }
        }
        return awake.outOfBalance(u, factor) / (Math.abs(factor) * Math.sqrt(all));
    }

    private static double[] times(double[] a, double factor) {
        double[] b = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            b[i] = factor * a[i];
        }
        return b;
    }

    private String barred(SpreadModel.Driven driven, double bar) {
        for (int m = 0; m < ends.length; m++) {
            if (ends[m] && bar * driven.ratio()[m] >= 1 - 1e-9) {
                int p = model.pieceOf(m);
                String who = zone(p) + ": " + what(p, m, driven.tension()[m]);
                List<String> missing = model.isShell(p)
                        ? model.mechanism(p, m).needs()
                        : model.bond(p).needs();
                return who + "; not followed further: needs " + String.join(", ", missing);
            }
        }
        return "not followed further";
    }

    private String zone(int p) {
        return model.isShell(p)
                ? model.mesh().region(model.elements()[p]).zone()
                : model.bond(p).name();
    }

    private String what(int p, int m, boolean tension) {
        return model.isShell(p)
                ? model.mechanism(p, m).label() + " " + model.mechanism(p, m).words(tension)
                : model.bond(p).words();
    }

    /** Keeps what has begun in a step, first things first. */
    private void note(
            SpreadState before, SpreadState after, SpreadModel.Driven driven, double factor, double movement) {
        List<Integer> begun = new ArrayList<>();
        for (int m = 0; m < follows.length; m++) {
            if (after.begun(m) && !before.begun(m)) {
                begun.add(m);
            }
        }
        begun.sort((a, b) -> Double.compare(after.kappa[b], after.kappa[a]));
        for (int m : begun) {
            int p = model.pieceOf(m);
            String what = what(p, m, driven.tension()[m]);
            onsets.putIfAbsent(
                    zone(p) + "|" + what,
                    new Onset(zone(p), what, factor, movement, model.place(p), m - model.first(p)));
        }
    }

    private SpreadAnswer answer(SpreadState state, List<SpreadAnswer.Step> steps, String ended, boolean round) {
        List<SpreadAnswer.Event> events = new ArrayList<>();
        for (Onset each : onsets.values()) {
            int of = 0;
            int begun = 0;
            int gone = 0;
            for (int p = 0; p < model.pieces(); p++) {
                int m = model.first(p) + each.layerKey;
                int last = p + 1 < model.pieces() ? model.first(p + 1) : follows.length;
                if (m < last && zone(p).equals(each.zone)) {
                    of++;
                    begun += state.begun(m) ? 1 : 0;
                    gone += state.lost(m) > 0.99 ? 1 : 0;
                }
            }
            events.add(new SpreadAnswer.Event(
                    each.zone,
                    each.what,
                    each.factor,
                    each.movement,
                    each.place,
                    (double) begun / of,
                    (double) gone / of));
        }
        int shells = model.elements().length;
        double[] failed = new double[shells];
        double[] cracked = new double[shells];
        Map<String, Double> lowered = new LinkedHashMap<>();
        for (int p = 0; p < shells; p++) {
            int last = p + 1 < model.pieces() ? model.first(p + 1) : follows.length;
            for (int m = model.first(p); m < last; m++) {
                double lost = state.lost(m);
                if (model.mechanism(p, m).kind().carries()) {
                    failed[p] = Math.max(failed[p], lost);
                } else {
                    cracked[p] = Math.max(cracked[p], lost);
                }
                if (state.sharper[m] > 1) {
                    lowered.merge(zone(p) + ": " + model.mechanism(p, m).label(), state.sharper[m], Math::max);
                }
            }
        }
        List<String> words = lowered.entrySet().stream()
                .map(e -> String.format(
                        Locale.ROOT,
                        "%s: strength down to %.0f %%, elements %.1f times too large for its fracture energy",
                        e.getKey(),
                        100 / e.getValue(),
                        e.getValue() * e.getValue()))
                .toList();
        return new SpreadAnswer(steps, events, ended, round, List.copyOf(needs), words, failed, cracked);
    }
}
