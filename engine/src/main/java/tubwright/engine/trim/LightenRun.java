// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** One search for the lightest layup: what it knows, and the order in which it goes about it. */
final class LightenRun implements Search.Judge {
    /** Targets give way by so much, and printed intervals are widened by it. */
    private static final double ROUNDING = 1e-9;

    private static final double EXACT = 1e-8;
    private static final double HARVEST = 1e-4;
    /** How well the relaxation is solved, share of the compliance. */
    private static final double RELAXED = 2e-4;

    /** Missed by so much, a row of a comparison body will do; fields are not asked. */
    private static final double PLENTY = 3e-4;

    private static final int MOST_FIELDS = 120;
    private static final int AT_ONCE = 10;
    /** Solutions kept back for better designs that branch and bound comes upon. */
    private static final int FOR_THE_PROOF = 8;

    /** Parts of the time, from the beginning, after which the relaxation and its sharpening end. */
    private static final double TO_RELAX = 0.25;

    private static final double TO_IMPROVE = 0.34;
    private static final double TO_SHARPEN = 0.62;
    /** What the relaxation, and its sharpening, have at least, however long what was before them took. */
    private static final double LEAST_TO_RELAX = 0.08;

    private static final double LEAST_TO_SHARPEN = 0.25;
    private static final int MOST_BODIES = 4;
    /** A body that raised the bound by less than this share is not followed by another. */
    private static final double SHARPER = 2e-4;

    final LightenProblem problem;
    final int[] active;
    final double[] most;
    final RowMaker maker;
    private final Anew anew;
    private final Descent descent;
    private final List<Lighten.Target> targets;
    private final LayupCheck check;
    private final Lighten.Budget budget;
    private final Lighten.Listener listener;
    final List<Row> cuts = new ArrayList<>();
    /** Candidates not tried any more on the way down, because a check has failed with them; the bound knows nothing of it. */
    private final boolean[] banned;

    private final boolean[] worthy;

    private final Set<List<Integer>> refused = new HashSet<>();
    private final List<Lightened.Step> history = new ArrayList<>();
    private final long start = System.nanoTime();
    private int solves;
    private int harvests;
    private int nodes;
    private double bound;
    private Optional<Design> best = Optional.empty();
    private List<LayupCheck.Finding> verified = List.of();
    private String failed = "";
    private final ReducedAnswers answers;
    /** What the last comparison bodies know, for branch and bound. */
    private List<Sharpening.Bound> sharp = List.of();

    /**
     * A choice solved.
     *
     * @param solved by tub of the problem; those without a target are not solved
     * @param met whether all stiffness targets are met
     */
    record Design(int[] choice, double mass, Resolve.Solved[] solved, double[][][] gramians, boolean met) {
        double compliance(int t) {
            return solved[t].compliance().high();
        }
    }

    LightenRun(
            LightenProblem problem,
            List<Lighten.Target> targets,
            LayupCheck check,
            Lighten.Budget budget,
            Lighten.Listener listener) {
        this.problem = problem;
        this.targets = List.copyOf(targets);
        this.check = check;
        this.budget = budget;
        this.listener = listener;
        most = new double[problem.tubs.size()];
        Arrays.fill(most, Double.POSITIVE_INFINITY);
        for (Lighten.Target target : targets) {
            int t = problem.tubs.indexOf(target.tub());
            if (t < 0) {
                throw new IllegalArgumentException("a target's tub is none of the problem's");
            }
            most[t] = Math.min(most[t], target.compliance() * (1 + ROUNDING));
        }
        active = IntStream.range(0, most.length)
                .filter(t -> most[t] < Double.POSITIVE_INFINITY)
                .toArray();
        maker = new RowMaker(problem, most);
        answers = new ReducedAnswers(problem, active);
        anew = new Anew(problem);
        descent = new Descent(this);
        banned = new boolean[problem.masses.length];
        worthy = new boolean[banned.length];
        Arrays.fill(worthy, true);
        bound = problem.lightestMass();
    }

    Lightened run() {
        listener.stage("a first design");
        Design first = new Reach(this).first();
        int[] designed = problem.asDesigned();
        if (best.isEmpty() || problem.mass(designed) < best.get().mass - 1e-9) {
            solve(designed);
        }
        if (best.isEmpty()) {
            throw new OutOfReach("the stiffness targets can be met, but not with " + failed);
        }
        descent.from(best.orElseThrow());
        listener.stage("ply after ply on the reduced model");
        for (int[] start : List.of(first.choice, best.orElseThrow().choice)) {
            new Greedy(this).from(start).ifPresent(descent::from);
        }
        listener.stage("the lightest mixture");
        Harvest harvest = new Harvest(this);
        harvest.run(Optional.empty(), until(TO_RELAX, LEAST_TO_RELAX));
        listener.stage("around the best design");
        descent.improve(first.choice, TO_IMPROVE);
        listener.stage("what mixtures hide");
        sharpen(harvest);
        listener.stage("branch and bound");
        prove();
        return answer();
    }

    private void sharpen(Harvest harvest) {
        double end = until(TO_SHARPEN, LEAST_TO_SHARPEN);
        double making = 0;
        for (int i = 0; i < MOST_BODIES && Sharpening.serves(problem); i++) {
            harvest.strike();
            double[] mixture = harvest.lightest();
            double now = gone();
            if (mixture.length == 0 || over() || !Sharpening.fits(now, making, end)) {
                return;
            }
            double before = bound;
            try (Sharpening bodies = new Sharpening(this, mixture)) {
                double ready = gone();
                making = ready - now;
                harvest.run(Optional.of(bodies), Sharpening.leave(ready, making, MOST_BODIES - i, end));
                sharp = bodies.bounds();
            }
            if (bound - before < SHARPER * bound) {
                return;
            }
        }
    }

    /** Candidates that a design lighter than the best may have; the others are proved too dear. */
    boolean[] worthy() {
        return worthy;
    }

    /**
     * Strikes out candidates that no design lighter than the best can have.
     *
     * @param proved cost below which there is nothing, kg
     * @param reduced reduced costs that go with it
     */
    void strike(double proved, double[] reduced) {
        double room = best().mass - problem.base - proved;
        for (int j = 0; j < reduced.length; j++) {
            worthy[j] &= !(reduced[j] > room * (1 + 1e-9));
        }
    }

    private Lightened answer() {
        Design found = best.orElseThrow();
        List<Interval> reached = new ArrayList<>();
        for (Lighten.Target target : targets) {
            Interval c = found.solved[problem.tubs.indexOf(target.tub())]
                    .compliance()
                    .outward(ROUNDING);
            reached.add(
                    new Interval(target.tub().stiffness(c.high()), target.tub().stiffness(c.low())));
        }
        double nominal = problem.tubs.getFirst().mass(problem.nominal);
        return new Lightened(
                problem.layup(found.choice),
                found.mass,
                reached,
                Math.min(bound, found.mass),
                nominal - problem.lightestMass(),
                solves,
                harvests,
                nodes,
                ended(),
                verified,
                history);
    }

    private Lightened.End ended() {
        if (closed()) {
            return Lightened.End.PROVED;
        }
        if (listener.stop()) {
            return Lightened.End.STOPPED;
        }
        if (late()) {
            return Lightened.End.TIME;
        }
        return enough() ? Lightened.End.GAP : Lightened.End.BUDGET;
    }

    private double seconds() {
        return (System.nanoTime() - start) * 1e-9;
    }

    private boolean late() {
        return seconds() > budget.seconds();
    }

    private boolean closed() {
        return best.isPresent() && bound >= best.get().mass * (1 - Search.SAME);
    }

    private boolean enough() {
        return best.isPresent() && (best.get().mass - bound) / best.get().mass <= budget.gap();
    }

    double bound() {
        return bound;
    }

    /** Solutions to a ten-thousandth so far. */
    int harvests() {
        return harvests;
    }

    /** The best design; there is one from the first on. */
    Design best() {
        return best.orElseThrow();
    }

    /** Whether to end: all is known, or what may be spent is spent, or somebody says so. */
    boolean over() {
        return best.isPresent() && (closed() || enough() || late() || listener.stop());
    }

    /** Nothing more is to be solved on the way down: what is left belongs to the proof. */
    boolean spent() {
        return over() || solves >= budget.solves() - FOR_THE_PROOF;
    }

    /** The part of the time that has gone by. */
    private double gone() {
        return seconds() / budget.seconds();
    }

    /** The part of the time to go on to: a share of the whole, but no less from now on than the least. */
    private double until(double share, double least) {
        return Math.max(share, gone() + least);
    }

    /** The part of the time from the beginning is used up. */
    boolean past(double share) {
        return gone() > share;
    }

    /** Solves a choice whole, keeps what it teaches, and the design where it is the best so far. */
    Design solve(int[] choice) {
        double[][] stiffness = problem.stiffness(problem.whole(choice));
        Change change = problem.change(stiffness);
        Resolve.Solved[] solved = anew.solve(active, stiffness, change, EXACT);
        double[][][] gramians = new double[most.length][][];
        boolean met = allowed(choice);
        for (int t : active) {
            gramians[t] = learn(t, change, solved[t], choice);
            met &= solved[t].compliance().high() <= most[t];
        }
        solves++;
        double mass = problem.mass(choice);
        if (met && (best.isEmpty() || mass < best.get().mass - 1e-9)) {
            for (int t : active) {
                solved[t] = anew.certified(t, change, solved[t], EXACT);
                met &= solved[t].compliance().high() <= most[t];
            }
            Design design = new Design(choice, mass, solved, gramians, met);
            if (met && passes(design)) {
                best = Optional.of(design);
                note();
            }
            return design;
        }
        return new Design(choice, mass, solved, gramians, met);
    }

    private double[][] learn(int t, Change change, Resolve.Solved solved, int[] about) {
        double[] u = solved.displacements();
        double[] nominal = problem.tubs.get(t).nominalForces(change, solved);
        if (problem.bases.get(t).size() < MOST_FIELDS) {
            problem.bases.get(t).add(u, nominal);
        }
        answers.forget();
        double[][] gramians = maker.gramians(t, u);
        cuts.add(maker.cut(
                t,
                gramians,
                LoadedTub.dot(u, nominal),
                LoadedTub.dot(problem.tubs.get(t).loads(), u),
                about));
        return gramians;
    }

    /** Whether a choice keeps the rules and has not failed a check. */
    boolean allowed(int[] choice) {
        Set<Integer> stacks = new HashSet<>();
        for (int s = 0; s < choice.length; s++) {
            stacks.add(problem.stacks[problem.offset[s] + choice[s]]);
        }
        stacks.remove(-1);
        return !refused.contains(Arrays.stream(choice).boxed().toList())
                && problem.neighbours.kept(choice)
                && stacks.size() <= problem.neighbours.mostStacks();
    }

    /** Asks the check; where it fails, the candidates to blame and lighter ones beside them are passed over from now on. */
    private boolean passes(Design design) {
        List<LayupCheck.Finding> findings = check.check(problem.layup(design.choice));
        boolean passed = true;
        for (LayupCheck.Finding finding : findings) {
            if (!finding.met()) {
                passed = false;
                failed = finding.words();
                ban(design.choice, finding.owners());
            }
        }
        if (passed) {
            verified = findings;
        } else {
            refused.add(Arrays.stream(design.choice).boxed().toList());
        }
        return passed;
    }

    private void ban(int[] choice, List<Owner> owners) {
        for (int s = 0; s < choice.length; s++) {
            if (owners.contains(problem.sites.get(s).owner())) {
                double own = problem.masses[problem.offset[s] + choice[s]];
                double heaviest = Arrays.stream(problem.masses, problem.offset[s], problem.offset[s + 1])
                        .max()
                        .orElseThrow();
                for (int j = problem.offset[s]; j < problem.offset[s + 1]; j++) {
                    banned[j] |= problem.masses[j] <= own && own < heaviest;
                }
            }
        }
    }

    private void note() {
        if (best.isPresent()) {
            Lightened.Step step =
                    new Lightened.Step(seconds(), solves, best.get().mass, Math.min(bound, best.get().mass));
            history.add(step);
            listener.step(step);
        }
    }

    void raise(double proved) {
        if (proved > bound) {
            boolean worthTelling = proved - bound > 1e-4 * bound;
            bound = proved;
            if (worthTelling || closed()) {
                note();
            }
        }
    }

    Search search(double[] cost, Search.Judge judge) {
        return new Search(cost, problem.offset, problem.neighbours, problem.stacks, judge);
    }

    /** Candidates that the way down may use: neither banned nor proved too dear. */
    boolean[] open() {
        boolean[] open = worthy.clone();
        for (int j = 0; j < open.length; j++) {
            open[j] &= !banned[j];
        }
        return open;
    }

    /** Solves a mixture to a ten-thousandth; says whether it seems to meet the targets. */
    boolean seemsToMeet(double[] mixture) {
        double[][] stiffness = problem.stiffness(mixture);
        Change change = problem.change(stiffness);
        boolean met = true;
        Resolve.Solved[] solved = anew.solve(active, stiffness, change, HARVEST);
        for (int t : active) {
            met &= solved[t].compliance().low() <= most[t] * (1 + RELAXED);
            learn(t, change, solved[t], problem.rounded(mixture));
        }
        harvests++;
        return met;
    }

    /** Branch and bound over all candidates. */
    private void prove() {
        Search search = search(problem.masses, this);
        cuts.forEach(search::add);
        search.start(worthy);
        while (!over() && nodes < budget.nodes() && !search.done()) {
            search.below(best.orElseThrow().mass - problem.base);
            int before = search.nodes();
            search.run(Math.min(AT_ONCE, budget.nodes() - nodes), false, this::over);
            nodes += search.nodes() - before;
            raise(problem.base + search.bound());
        }
        if (search.done()) {
            raise(problem.base + search.bound());
        }
    }

    @Override
    public List<Row> rows(double[] mixture) {
        List<Row> rows = new ArrayList<>();
        double most = 0;
        for (Sharpening.Bound each : sharp) {
            Row row = each.of().row(mixture, this.most[each.target()]).scaled();
            rows.add(row);
            most = Math.max(most, row.missedBy(mixture));
        }
        if (most < PLENTY) {
            rows.addAll(fieldRows(mixture));
        }
        return rows;
    }

    /** Rows of the reduced model that a mixture misses. */
    private List<Row> fieldRows(double[] mixture) {
        FieldBasis.Reduced[] reduced = reduce(mixture);
        List<Row> rows = new ArrayList<>();
        for (int t : active) {
            if (reduced[t].compliance() > most[t] * (1 + 1e-7)) {
                rows.add(maker.cut(
                        t,
                        reduced[t].gramians(),
                        reduced[t].nominal(),
                        reduced[t].compliance(),
                        problem.rounded(mixture)));
            }
        }
        return rows;
    }

    FieldBasis.Reduced[] reduce(double[] mixture) {
        return answers.of(mixture);
    }

    @Override
    public Search.Verdict judge(int[] choice) {
        if (refused.contains(Arrays.stream(choice).boxed().toList())) {
            return new Search.Verdict(false, List.of(), false);
        }
        double[] whole = problem.whole(choice);
        int before = cuts.size();
        if (!seemsToMeet(whole)) {
            // Solved well enough to be refused.
            List<Row> rows = missed(before, whole);
            if (!rows.isEmpty()) {
                return new Search.Verdict(false, rows, false);
            }
        }
        if (solves >= budget.solves()) {
            return new Search.Verdict(false, List.of(), true);
        }
        Design design = solve(choice);
        if (design.met) {
            boolean taken = best.isPresent() && best.get() == design;
            return new Search.Verdict(taken, List.of(), false);
        }
        return new Search.Verdict(false, missed(before, whole), false);
    }

    /** The cuts learnt since then that a choice misses. */
    private List<Row> missed(int since, double[] whole) {
        return cuts.subList(since, cuts.size()).stream()
                .filter(r -> r.scaled().missedBy(whole) > 1e-6)
                .toList();
    }

    @Override
    public Search.Blur blur(double[] mixture) {
        FieldBasis.Reduced[] reduced = reduce(mixture);
        double[] key = new double[mixture.length];
        double[] ofSite = new double[problem.sites.size()];
        for (int t : active) {
            maker.blur(reduced[t].gramians(), mixture, 1 / most[t], key, ofSite);
        }
        return new Search.Blur(ofSite, key);
    }
}
