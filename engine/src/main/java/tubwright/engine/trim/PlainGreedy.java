// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;

/**
 * Weight back as it is done by hand, for comparison: from the heaviest candidates one step down at a time, the one that
 * gives back most mass for its share of what the targets leave, every step solved whole.
 */
public final class PlainGreedy {
    private PlainGreedy() {}

    /**
     * Where it ends.
     *
     * @param mass kg
     * @param solves exact solutions it took
     */
    public record Result(double mass, int solves) {}

    /** Takes out until nothing more can go. */
    public static Result run(LightenProblem problem, List<Lighten.Target> targets) {
        Lighten.Budget endless = new Lighten.Budget(Integer.MAX_VALUE, 0, Double.POSITIVE_INFINITY, 0);
        LightenRun run = new LightenRun(problem, targets, _ -> List.of(), endless, Lighten.Listener.NONE);
        LightenRun.Design design = new Reach(run).first();
        Greedy greedy = new Greedy(run);
        int solves = 1;
        boolean[] tried = new boolean[problem.masses.length];
        while (true) {
            List<double[][]> gramians = new ArrayList<>();
            double[] compliance = new double[run.most.length];
            for (int t = 0; t < run.most.length; t++) {
                gramians.add(design.gramians()[t]);
                compliance[t] = design.solved()[t] == null
                        ? 0
                        : design.solved()[t].compliance().middle();
            }
            int next = greedy.next(design.choice(), gramians, compliance, run.most, tried);
            if (next < 0) {
                return new Result(design.mass(), solves);
            }
            int site = new Effects(problem).site(next);
            int[] choice = design.choice().clone();
            choice[site] = next - problem.offset[site];
            LightenRun.Design lighter = run.solve(choice);
            solves++;
            if (lighter.met()) {
                design = lighter;
            } else {
                tried[next] = true;
            }
        }
    }
}
