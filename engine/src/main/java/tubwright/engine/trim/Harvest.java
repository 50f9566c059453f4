// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The lightest mixture, by cuts: what it weighs is the first bound, and the cuts are what branch and bound begins with. */
final class Harvest {
    private static final int MOST_HARVESTS = 40;
    private static final int MOST_ROUNDS = 400;
    private final LightenRun run;
    private double[] lightest = new double[0];
    private double[] costs = new double[0];
    private double proved;

    Harvest(LightenRun run) {
        this.run = run;
    }

    /** The lightest mixture under the cuts there were last; empty if there was none. */
    double[] lightest() {
        return lightest;
    }

    /** Strikes out, for good, the candidates that the last multipliers prove too dear for a design lighter than the best. */
    void strike() {
        if (costs.length > 0) {
            run.strike(proved, costs);
        }
    }

    /**
     * Solves the relaxation: cuts of the reduced model while it knows any, else of a mixture solved for the purpose.
     *
     * @param sharpening with cuts of comparison bodies
     * @param share of the time, from the beginning, after which to end
     */
    void run(Optional<Sharpening> sharpening, double share) {
        LightenProblem problem = run.problem;
        Relaxation relaxation = new Relaxation(problem.masses, problem.offset);
        boolean[] worthy = run.worthy();
        double[] reduced = new double[worthy.length];
        List<Row> rows = new ArrayList<>();
        run.cuts.forEach(c -> rows.add(c.scaled()));
        double before = 0;
        for (int round = 0; round < MOST_ROUNDS && !run.over() && !run.past(share); round++) {
            Relaxation.Answer answer = relaxation.solve(worthy, rows);
            double proved = relaxation.bound(answer.multipliers(), worthy, rows, reduced);
            run.raise(problem.base + proved);
            if (!answer.feasible()) {
                return;
            }
            double[] mixture = answer.mixture();
            lightest = mixture;
            costs = reduced;
            this.proved = proved;
            for (int i = rows.size() - 1; i >= 0 && round % 10 == 9; i--) {
                if (!(answer.multipliers()[i] > 0)) {
                    rows.remove(i);
                }
            }
            List<Row> more = problem.neighbours.missed(mixture, problem.offset, 1e-6);
            boolean stalled = round % 20 == 19 && run.bound() - before < 2e-5 * run.bound();
            before = round % 20 == 19 ? run.bound() : before;
            if (more.isEmpty() && !stalled) {
                more = inOut(mixture);
                if (sharpening.isPresent()) {
                    List<Row> between = sharpening.get().rows(mixture, reduced);
                    run.cuts.addAll(between);
                    more.addAll(between);
                }
            }
            if (more.isEmpty()) {
                if (run.harvests() >= MOST_HARVESTS || run.seemsToMeet(mixture)) {
                    return;
                }
                more = run.cuts.subList(run.cuts.size() - run.active.length, run.cuts.size());
            }
            more.forEach(r -> rows.add(r.scaled()));
        }
    }

    /** Cuts of the reduced model half way to the best design if they part with the mixture, else at the mixture. */
    private List<Row> inOut(double[] mixture) {
        double[] centre = run.problem.whole(run.best().choice());
        for (double inward : new double[] {0.5, 0.2, 0}) {
            double[] point = new double[mixture.length];
            for (int j = 0; j < point.length; j++) {
                point[j] = inward * centre[j] + (1 - inward) * mixture[j];
            }
            List<Row> more = new ArrayList<>();
            for (Row row : run.rows(point)) {
                if (row.scaled().missedBy(mixture) > 1e-5) {
                    more.add(row);
                }
            }
            if (!more.isEmpty()) {
                return more;
            }
        }
        return new ArrayList<>();
    }
}
