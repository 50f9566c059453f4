// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Optional;
import java.util.Random;

/** The way down from a design that meets the targets to lighter ones, and the search around the lightest. */
final class Descent {
    private static final int MOST_STEPS = 8;
    private static final int SMALL_SEARCH = 300;
    /** Weight of a design's stresses in the rows that are searched around it; its strains have the rest. */
    private static final double[] STRESSES = {0.8, 0.65, 0.5};

    /** Weight of stresses, and nodes, of a search with candidates forbidden by lot. */
    private static final double KICKED = 0.6;

    private static final int KICK_NODES = 60;
    private static final int MOST_KICKS = 4;
    private static final long SEED = 17;

    private final LightenRun run;
    private final LightenProblem problem;
    private final Effects effects;
    private final Random random = new Random(SEED);

    Descent(LightenRun run) {
        this.run = run;
        problem = run.problem;
        effects = new Effects(problem);
    }

    /** Goes down by flexibility rows until nothing changes. */
    void from(LightenRun.Design start) {
        LightenRun.Design design = start;
        for (int step = 0; step < MOST_STEPS && design.met() && !run.over(); step++) {
            Optional<int[]> next = lightestUnderRows(design);
            if (next.isEmpty()) {
                return;
            }
            design = run.solve(next.get());
        }
    }

    /** The lightest choice the rows of a design allow, if it is lighter than the design. */
    private Optional<int[]> lightestUnderRows(LightenRun.Design design) {
        Search search = run.search(problem.masses, new Taken(problem));
        for (int t : run.active) {
            search.add(between(design, t, 1));
        }
        search.below(design.mass() - problem.base - 1e-9);
        search.start(run.open());
        search.run(SMALL_SEARCH, true, run::over);
        return search.best();
    }

    /** A row between what a design's stresses and its strains say; with stresses alone it is enough to meet the target. */
    private Row between(LightenRun.Design design, int t, double stresses) {
        double[] more = effects.between(design.choice(), design.gramians()[t], 1 - stresses, stresses);
        for (int j = 0; j < more.length; j++) {
            more[j] = -more[j];
        }
        return new Row(more, design.compliance(t) - run.most[t]);
    }

    /**
     * Searches around the best design; then goes down once more from where the search began, now that the reduced model
     * knows more, and from the best design with a few of its candidates forbidden by lot.
     *
     * @param first where the search began
     * @param share of the time, from the beginning, after which to end
     */
    void improve(int[] first, double share) {
        settle(share);
        if (!run.spent() && !run.past(share)) {
            new Greedy(run).from(first).ifPresent(this::from);
            settle(share);
        }
        for (int kick = 0; kick < MOST_KICKS && !run.spent() && !run.past(share); kick++) {
            LightenRun.Design design = run.best();
            around(KICKED, KICK_NODES, kicked(design), share);
            if (run.best() != design) {
                settle(share);
                kick = -1;
            }
        }
    }

    /** Searches with less and less trust in stresses until nothing lighter comes. */
    private void settle(double share) {
        for (int i = 0; i < STRESSES.length && !run.spent() && !run.past(share); i++) {
            LightenRun.Design design = run.best();
            around(STRESSES[i], SMALL_SEARCH, run.open(), share);
            i = run.best() == design ? i : -1;
        }
    }

    private void around(double stresses, int nodes, boolean[] open, double share) {
        LightenRun.Design design = run.best();
        Search search = run.search(problem.masses, run);
        run.cuts.forEach(search::add);
        for (int t : run.active) {
            search.add(between(design, t, stresses));
        }
        search.below(design.mass() - problem.base);
        search.start(open);
        search.run(nodes, true, () -> run.spent() || run.past(share));
    }

    /** Forbids the present candidates of a few sites drawn by lot. */
    private boolean[] kicked(LightenRun.Design design) {
        boolean[] open = run.open();
        int sites = problem.sites.size();
        for (int k = Math.min(sites, 2 + random.nextInt(3)); k > 0; k--) {
            int s = random.nextInt(sites);
            open[problem.offset[s] + design.choice()[s]] =
                    problem.sites.get(s).candidates().size() == 1;
        }
        return open;
    }
}
