// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A first design that meets the targets; where there is none to be found, what is reachable and what stands in the way. */
final class Reach {
    private static final int MOST_STEPS = 5;
    private static final int NODES = 300;

    private final LightenRun run;
    private final LightenProblem problem;

    Reach(LightenRun run) {
        this.run = run;
        problem = run.problem;
    }

    /**
     * A design to begin with.
     *
     * @throws OutOfReach if none is found
     */
    LightenRun.Design first() {
        int[] heaviest = least(Arrays.stream(problem.masses).map(m -> -m).toArray());
        LightenRun.Design design = run.solve(heaviest);
        if (design.met()) {
            return design;
        }
        List<String> words = new ArrayList<>();
        boolean each = true;
        for (int t : run.active) {
            LightenRun.Design stiffest = stiffest(design, t);
            if (stiffest.met()) {
                return stiffest;
            }
            each &= stiffest.compliance(t) <= run.most[t];
            words.add(words(t, stiffest));
        }
        if (run.active.length > 1) {
            LightenRun.Design both = together(design);
            if (both.met()) {
                return both;
            }
            if (each) {
                words.clear();
                for (int t : run.active) {
                    words.add(String.format(
                            Locale.ROOT,
                            "'%s' reaches %.1f %% of its target",
                            name(t),
                            100 * run.most[t] / both.compliance(t)));
                }
                throw new OutOfReach(
                        "each target alone is within reach, but no choice found meets all of them: at best "
                                + String.join(", ", words));
            }
        }
        throw new OutOfReach("with the stiffest candidates " + String.join("; ", words));
    }

    private String name(int t) {
        return problem.tubs.get(t).loading().name();
    }

    private String words(int t, LightenRun.Design stiffest) {
        double c = stiffest.compliance(t);
        double least = leastCompliance(t, stiffest);
        double chosen = 0;
        double most = 0;
        String where = "";
        for (int p = 0; p < problem.pieces.size(); p++) {
            Piece piece = problem.pieces.get(p);
            double part =
                    piece.trace(piece.stiffness()[piece.combination(stiffest.choice())], stiffest.gramians()[t][p]);
            chosen += part;
            if (part > most) {
                most = part;
                where = problem.sites.get(piece.sites()[0]).owner().name();
            }
        }
        return String.format(
                Locale.ROOT,
                "'%s' reaches %.1f %% of its target, and no choice more than %.1f %%; %.0f %% of what gives lies in what may"
                        + " not be chosen (inserts, joints, bars and zones left alone), most of the rest in '%s'",
                name(t),
                100 * run.most[t] / c,
                100 * run.most[t] / least,
                100 * (1 - chosen / c),
                where);
    }

    /** c ≥ 2fᵀv − vᵀK(λ)v at its least over all choices, neighbours left out of account. */
    private double leastCompliance(int t, LightenRun.Design design) {
        double[] u = design.solved()[t].displacements();
        double load = LoadedTub.dot(problem.tubs.get(t).loads(), u);
        Row row = run.maker.cut(
                t,
                design.gramians()[t],
                LoadedTub.dot(
                        u,
                        problem.tubs
                                .get(t)
                                .nominalForces(
                                        problem.change(problem.stiffness(problem.whole(design.choice()))),
                                        design.solved()[t])),
                load,
                design.choice());
        // The row says Σ ≥ load²/c_t − fixed; vᵀKv of a choice is Σ + fixed.
        double stiffest = load * load / run.most[t] - row.least();
        for (int s = 0; s < problem.sites.size(); s++) {
            stiffest += Arrays.stream(row.coefficients(), problem.offset[s], problem.offset[s + 1])
                    .max()
                    .orElseThrow();
        }
        return load * load / stiffest;
    }

    private LightenRun.Design stiffest(LightenRun.Design from, int t) {
        LightenRun.Design design = from;
        for (int step = 0; step < MOST_STEPS; step++) {
            LightenRun.Design next = run.solve(least(flexibility(design, t)));
            if (next.met()) {
                return next;
            }
            double was = design.compliance(t);
            if (!(next.compliance(t) < was * (1 - 1e-6))) {
                return design;
            }
            design = next;
        }
        return design;
    }

    /** Steps towards what is missed most. */
    private LightenRun.Design together(LightenRun.Design from) {
        LightenRun.Design best = from;
        LightenRun.Design design = from;
        double[] weight = new double[run.most.length];
        for (int step = 0; step < 3 * MOST_STEPS && !best.met(); step++) {
            double[] cost = new double[problem.masses.length];
            for (int t : run.active) {
                double missed = design.compliance(t) / run.most[t];
                weight[t] += Math.pow(missed, 8);
                double[] each = flexibility(design, t);
                for (int j = 0; j < cost.length; j++) {
                    cost[j] += weight[t] * each[j] / run.most[t];
                }
            }
            design = run.solve(least(cost));
            best = design.met() || worst(design) < worst(best) ? design : best;
        }
        return best;
    }

    private double worst(LightenRun.Design design) {
        double worst = 0;
        for (int t : run.active) {
            worst = Math.max(worst, design.compliance(t) / run.most[t]);
        }
        return worst;
    }

    private double[] flexibility(LightenRun.Design design, int t) {
        Row row = run.maker.flexibility(t, design.gramians()[t], design.compliance(t), design.choice(), 0);
        return Arrays.stream(row.coefficients()).map(c -> -c).toArray();
    }

    /** The choice of least cost that keeps to the rules between neighbours. */
    private int[] least(double[] cost) {
        Search search = run.search(cost, new Taken(problem));
        search.start(run.open());
        search.run(NODES, true, () -> false);
        return search.best()
                .orElseThrow(
                        () -> new OutOfReach(
                                "no choice was found that keeps to the rules between neighbours; they may contradict each other"));
    }
}
