// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts for what mixtures hide, from comparison bodies: a mixture of two stacks carries a load with less strain than either
 * would on the average, and cuts of fields believe it. One body for each target, made about a light mixture; made again
 * when the lightest has moved and candidates have been struck out.
 */
final class Sharpening implements AutoCloseable {
    /** Polarisations of a site. */
    private static final int MOST = 7;

    private static final int LEAST = 2;
    /** Numbers kept for them in all; with more unknowns there are fewer. */
    private static final double ROOM = 6e7;
    /** How much candidates that the mixture lacks count when deviations are weighed. */
    private static final double OTHERS = 0.5;
    /** Candidates this share of what is left to the best mass too dear count a third as much. */
    private static final double NEAR = 0.1;

    private static final double MISSED = 1e-5;
    /** A row that cuts so deep, as a share of the compliance, is good enough as it is. */
    private static final double DEEP = 0.004;

    private final LightenRun run;
    private final LightenProblem problem;
    private final ComparisonBody[] bodies;

    /** Bodies about a mixture. */
    Sharpening(LightenRun run, double[] mixture) {
        this.run = run;
        problem = run.problem;
        bodies = new ComparisonBody[run.most.length];
        FieldBasis.Reduced[] fields = run.reduce(mixture);
        int unknowns = problem.tubs.getFirst().loads().length;
        int most = (int) Math.clamp(ROOM / ((double) unknowns * problem.sites.size()), LEAST, MOST);
        for (int t : run.active) {
            bodies[t] = new ComparisonBody(problem, t, run.worthy(), mixture, fields[t], most);
        }
    }

    /**
     * What a body knows of a target; it outlives the body.
     *
     * @param target index of the tub
     */
    record Bound(int target, ChoiceBound of) {}

    /** What the bodies know, tuned as it was last. */
    List<Bound> bounds() {
        return java.util.Arrays.stream(run.active)
                .mapToObj(t -> new Bound(t, bodies[t].bound()))
                .toList();
    }

    /** Whether bodies can be made: a joint stiffer than designed is in none of them. */
    static boolean serves(LightenProblem problem) {
        return problem.pieces.stream()
                .filter(p -> p.block() < 0)
                .allMatch(p -> java.util.Arrays.stream(p.stiffness()).allMatch(s -> s[0] <= 1));
    }

    /**
     * Whether there is time for more bodies. None are made to be left before they have worked as long as it took to make
     * them. Times are parts of the whole.
     *
     * @param now what has gone by
     * @param making what the last ones took to make; 0 for the first
     * @param end when sharpening ends
     */
    static boolean fits(double now, double making, double end) {
        return now + 2 * making <= end;
    }

    /**
     * When bodies that have been made are to be left. Each have their part of the time: others about a better mixture say
     * more than the last cuts of these. Where there is no time for others these have what is left.
     *
     * @param ready when they were ready
     * @param left how many may still be made, these ones counted
     */
    static double leave(double ready, double making, int left, double end) {
        double part = ready + Math.max((end - ready) / left, making);
        return fits(part, making, end) ? part : Math.max(end, ready + making);
    }

    /**
     * Rows that a mixture misses.
     *
     * @param costs reduced costs of the candidates, kg
     */
    List<Row> rows(double[] mixture, double[] costs) {
        List<Row> rows = new ArrayList<>();
        double[] plausible = plausible(mixture, costs);
        FieldBasis.Reduced[] fields = run.reduce(mixture);
        for (int t : run.active) {
            ChoiceBound bound = bodies[t].bound();
            Row row = bound.row(mixture, run.most[t]);
            if (row.missedBy(mixture) < DEEP * run.most[t]) {
                double[] u = problem.bases.get(t).displacements(fields[t].coefficients());
                bodies[t].about(mixture, fields[t], u);
                bound.tune(mixture, plausible);
                row = bound.row(mixture, run.most[t]);
            }
            if (row.scaled().missedBy(mixture) > MISSED) {
                rows.add(row);
            }
        }
        return rows;
    }

    /** The mixture, and beside it the candidates that would cost little more. */
    private double[] plausible(double[] mixture, double[] costs) {
        double near = NEAR
                * Math.max(run.best().mass() - run.bound(), 1e-6 * run.best().mass());
        boolean[] worthy = run.worthy();
        double[] plausible = mixture.clone();
        for (int s = 0; s + 1 < problem.offset.length; s++) {
            double sum = 0;
            for (int j = problem.offset[s]; j < problem.offset[s + 1]; j++) {
                sum += worthy[j] ? Math.exp(-Math.max(0, costs[j]) / near) : 0;
            }
            for (int j = problem.offset[s]; j < problem.offset[s + 1]; j++) {
                double other = worthy[j] ? Math.exp(-Math.max(0, costs[j]) / near) / sum : 0;
                plausible[j] = (1 - OTHERS) * mixture[j] + OTHERS * other;
            }
        }
        return plausible;
    }

    @Override
    public void close() {
        for (int t : run.active) {
            bodies[t].close();
        }
    }
}
