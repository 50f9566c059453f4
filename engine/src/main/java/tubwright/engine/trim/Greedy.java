// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Takes out, one after another, what gives back most mass for its share of what the targets leave, as anybody would; but
 * judged on the reduced model, so that only the end is solved. The effect of a change is taken half way between what its
 * strains and what its stresses say.
 */
final class Greedy {
    private static final int TRIES = 5;

    private final LightenRun run;
    private final LightenProblem problem;
    private final Effects effects;

    Greedy(LightenRun run) {
        this.run = run;
        problem = run.problem;
        effects = new Effects(problem);
    }

    /**
     * Goes down from a choice, again and again with the reduced model's error at the last end taken off the targets; the
     * lightest design found that meets them.
     */
    Optional<LightenRun.Design> from(int[] start) {
        double[] most = run.most.clone();
        int[] from = start;
        Optional<LightenRun.Design> found = Optional.empty();
        for (int i = 0; i < TRIES && !run.over(); i++) {
            int[] end = down(from, most);
            if (Arrays.equals(end, from)) {
                break;
            }
            FieldBasis.Reduced[] thought = run.reduce(problem.whole(end));
            LightenRun.Design design = run.solve(end);
            if (design.met()) {
                found = Optional.of(design);
                from = end;
            }
            for (int t : run.active) {
                double error = thought[t].compliance()
                        / design.solved()[t].compliance().high();
                most[t] = Math.min(1, error) * (design.met() ? run.most[t] : most[t]);
            }
        }
        return found;
    }

    private int[] down(int[] start, double[] most) {
        int[] choice = start.clone();
        boolean[] tried = new boolean[problem.masses.length];
        while (!run.over()) {
            FieldBasis.Reduced[] now = run.reduce(problem.whole(choice));
            List<double[][]> gramians = new ArrayList<>();
            double[] compliance = new double[most.length];
            for (int t = 0; t < most.length; t++) {
                gramians.add(now[t] == null ? new double[0][] : now[t].gramians());
                compliance[t] = now[t] == null ? 0 : now[t].compliance();
            }
            int best = next(choice, gramians, compliance, most, tried);
            if (best < 0) {
                return choice;
            }
            int s = effects.site(best);
            int was = choice[s];
            choice[s] = best - problem.offset[s];
            FieldBasis.Reduced[] then = run.reduce(problem.whole(choice));
            for (int t : run.active) {
                if (then[t].compliance() > most[t]) {
                    tried[best] = true;
                }
            }
            if (tried[best]) {
                choice[s] = was;
            }
        }
        return choice;
    }

    /**
     * The candidate to take next; -1 if none seems to fit.
     *
     * @param gramians of the present strains by target and piece
     * @param compliance at present, by target, J
     * @param most allowed, by target, J
     * @param tried candidates that have been found not to fit
     */
    int next(int[] choice, List<double[][]> gramians, double[] compliance, double[] most, boolean[] tried) {
        double[] use = use(choice, gramians, compliance, most);
        int best = -1;
        double bestScore = 0;
        for (int s = 0; s < choice.length; s++) {
            double own = problem.masses[problem.offset[s] + choice[s]];
            for (int j = problem.offset[s]; j < problem.offset[s + 1]; j++) {
                double back = own - problem.masses[j];
                double score = back / Math.max(use[j], 1e-6);
                if (back > 1e-9 && !tried[j] && use[j] <= 1 && score > bestScore && fits(choice, s, j)) {
                    best = j;
                    bestScore = score;
                }
            }
        }
        return best;
    }

    private boolean fits(int[] choice, int s, int j) {
        if (problem.neighbours == Neighbours.FREE) {
            return true;
        }
        int[] next = choice.clone();
        next[s] = j - problem.offset[s];
        return problem.neighbours.kept(next) && problem.neighbours.mostStacks() >= problem.masses.length;
    }

    /** The largest share, over the targets, of the compliance left that each candidate would use up. */
    private double[] use(int[] choice, List<double[][]> gramians, double[] compliance, double[] most) {
        double[] use = new double[problem.masses.length];
        for (int t : run.active) {
            double[] more = effects.of(choice, gramians.get(t));
            double left = Math.max(most[t] - compliance[t], 1e-12 * most[t]);
            for (int j = 0; j < use.length; j++) {
                use[j] = Math.max(use[j], more[j] / left);
            }
        }
        return use;
    }
}
