// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What is done with one node of a {@link Search}: its lightest mixture under more and more rows, then parted where mixing
 * hides most. What others share is only read, so that several nodes can be worked on at once; what came of it is for the
 * search to take in.
 */
final class NodeWork {
    private static final double MISSED = 1e-6;
    private static final int MOST_ROUNDS = 40;
    private static final double STALLED = 0.03;
    /** With more rows at a node those that do nothing are left out. */
    private static final int MOST_ROWS = 150;

    private final Terms terms;
    private final Search.Node node;
    private final boolean alone;
    private final boolean[] allowed;
    private final double[] reduced;
    private double cutoff;
    private double bound;

    private final List<Row> met = new ArrayList<>();
    private final List<Search.Node> parts = new ArrayList<>();
    private int likelier = -1;
    private double shelved = Double.POSITIVE_INFINITY;
    private Optional<int[]> accepted = Optional.empty();
    private boolean undecided;

    /** What all nodes of a search share. */
    record Terms(
            double[] cost, int[] offset, Neighbours neighbours, StackCount stacks, Search.Judge judge, RowPool pool) {
        double cost(int[] choice) {
            double sum = 0;
            for (int z = 0; z < choice.length; z++) {
                sum += cost[offset[z] + choice[z]];
            }
            return sum;
        }
    }

    /**
     * @param cutoff choices of this cost or dearer are of no use
     * @param alone whether the judge may be asked about choices
     */
    NodeWork(Terms terms, Search.Node node, double cutoff, boolean alone) {
        this.terms = terms;
        this.node = node;
        this.cutoff = cutoff;
        this.alone = alone;
        allowed = node.allowed().clone();
        reduced = new double[terms.cost.length];
        bound = node.bound();
    }

    /** Rows made on the way, and those found before that were missed again. */
    List<Row> met() {
        return met;
    }

    /** What is left of the node, parted; their numbers mean nothing. */
    List<Search.Node> parts() {
        return parts;
    }

    /** Which part the mixture is nearer to; -1 where there is none such. */
    int likelier() {
        return likelier;
    }

    /** Cost of what can neither be accepted nor ruled out. */
    double shelved() {
        return shelved;
    }

    /** The cheapest choice accepted. */
    Optional<int[]> accepted() {
        return accepted;
    }

    /** Whether all hangs on a judgement that was not to be asked for. */
    boolean undecided() {
        return undecided;
    }

    void run() {
        if (!terms.stacks.few(allowed)) {
            return;
        }
        Relaxation relaxation = new Relaxation(terms.cost, terms.offset);
        List<Row> rows = new ArrayList<>(node.rows());
        RelaxationSession session = relaxation.begin(allowed, rows, node.standing());
        Relaxation.Answer answer = null;
        int answered = 0;
        double before = Double.NEGATIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            answer = session.answer();
            answered = rows.size();
            double[] y = answer.feasible() ? answer.multipliers() : enough(relaxation, answer, rows);
            double proved = relaxation.bound(y, allowed, rows, reduced);
            bound = Math.max(bound, proved);
            if (bound >= worthwhile()) {
                return;
            }
            if (!answer.feasible()) {
                // Infeasible to the solver, but not proved so with a margin: go by branching.
                branch(answer.mixture(), rows, new int[0]);
                return;
            }
            double[] mixture = answer.mixture();
            if (strike(proved, mixture)) {
                continue;
            }
            List<Row> more = known(mixture, rows);
            if (more.isEmpty()) {
                more = judged(mixture);
                // Where a round gains little of what is missing, parting the node gains more.
                boolean stalled = round > 2 && bound - before < STALLED * (worthwhile() - bound);
                if (stalled && !whole(mixture)) {
                    break;
                }
                before = bound;
            }
            if (more.isEmpty()) {
                if (!whole(mixture) || !terms.stacks.kept(choice(mixture))) {
                    break;
                }
                if (!alone) {
                    undecided = true;
                    return;
                }
                Search.Verdict verdict = terms.judge.judge(choice(mixture));
                if (verdict.rows().isEmpty()) {
                    settle(verdict, choice(mixture), rows);
                    return;
                }
                more = verdict.rows().stream().map(Row::scaled).toList();
                met.addAll(more);
            }
            rows.addAll(more);
            if (rows.size() > MOST_ROWS) {
                rows = needed(rows, session, answered);
                session = relaxation.begin(allowed, rows, session.standing());
            } else {
                session.add(more);
            }
        }
        branch(answer.mixture(), needed(rows, session, answered), session.standing());
    }

    /** Cost of the cheapest candidates that are left. */
    private double cheapest() {
        double sum = 0;
        for (int z = 0; z + 1 < terms.offset.length; z++) {
            double least = Double.POSITIVE_INFINITY;
            for (int j = terms.offset[z]; j < terms.offset[z + 1]; j++) {
                least = allowed[j] ? Math.min(least, terms.cost[j]) : least;
            }
            sum += least;
        }
        return sum;
    }

    private double worthwhile() {
        return Search.worthwhile(cutoff);
    }

    /** Rows that others have made. */
    private List<Row> known(double[] mixture, List<Row> present) {
        List<Row> more = terms.pool.missed(mixture, MISSED, present);
        for (Row row : more) {
            if (terms.pool.wasFound(row)) {
                met.add(row);
            }
        }
        if (more.isEmpty()) {
            more = terms.neighbours.missed(mixture, terms.offset, MISSED);
        }
        if (more.isEmpty() && terms.judge.takesAll()) {
            round(mixture);
        }
        return more;
    }

    /** Multipliers with so much of the ray as to pass the cutoff, if any amount does. */
    private double[] enough(Relaxation relaxation, Relaxation.Answer answer, List<Row> rows) {
        double[] best = answer.multipliers();
        double most = relaxation.bound(best, allowed, rows, reduced);
        for (double t = 1e-2; t < 1e9; t *= 10) {
            double[] y = answer.multipliers().clone();
            for (int i = 0; i < y.length; i++) {
                y[i] += t * answer.ray()[i];
            }
            double proved = relaxation.bound(y, allowed, rows, reduced);
            if (proved > most) {
                most = proved;
                best = y;
            }
        }
        return best;
    }

    /** Strikes out candidates that no choice below the cutoff can use; says whether the mixture had one of them. */
    private boolean strike(double proved, double[] mixture) {
        double room = worthwhile() - proved;
        boolean used = false;
        for (int j = 0; j < reduced.length; j++) {
            if (allowed[j] && reduced[j] > room * (1 + 1e-9)) {
                allowed[j] = false;
                used |= mixture[j] > 0;
            }
        }
        return used;
    }

    private List<Row> judged(double[] mixture) {
        List<Row> rows = new ArrayList<>();
        for (Row row : terms.judge.rows(mixture)) {
            Row scaled = row.scaled();
            if (scaled.missedBy(mixture) > MISSED) {
                rows.add(scaled);
                met.add(scaled);
            }
        }
        return rows;
    }

    /** Rows that hold the answer up, and behind them those that came after it. */
    private static List<Row> needed(List<Row> rows, RelaxationSession session, int answered) {
        boolean[] tight = session.tight();
        List<Row> result = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (i >= answered || tight[i]) {
                result.add(rows.get(i));
            }
        }
        return result;
    }

    private static boolean whole(double[] mixture) {
        for (double share : mixture) {
            if (share > 1e-7 && share < 1 - 1e-7) {
                return false;
            }
        }
        return true;
    }

    private int[] choice(double[] mixture) {
        int[] choice = new int[terms.offset.length - 1];
        for (int z = 0; z < choice.length; z++) {
            for (int j = terms.offset[z]; j < terms.offset[z + 1]; j++) {
                choice[z] = mixture[j] > 0.5 ? j - terms.offset[z] : choice[z];
            }
        }
        return choice;
    }

    /** Where a site is mixed, the candidate that does most for the rows; kept if that does. */
    private void round(double[] mixture) {
        int[] choice = new int[terms.offset.length - 1];
        double[] whole = new double[mixture.length];
        double sum = 0;
        for (int z = 0; z < choice.length; z++) {
            int taken = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int j = terms.offset[z]; j < terms.offset[z + 1]; j++) {
                double worth = 0;
                for (Row row : terms.pool.given()) {
                    worth += row.coefficients()[j];
                }
                if (mixture[j] > 0 && worth > most) {
                    most = worth;
                    taken = j;
                }
            }
            choice[z] = taken - terms.offset[z];
            whole[taken] = 1;
            sum += terms.cost[taken];
        }
        if (sum < worthwhile()
                && terms.pool.given().stream().allMatch(r -> r.missedBy(whole) <= 0)
                && terms.neighbours.kept(choice)
                && terms.stacks.kept(choice)) {
            cutoff = sum;
            accepted = Optional.of(choice);
        }
    }

    /** A whole choice at a node's optimum: the node is done with if it was accepted; else all but the choice goes on. */
    private void settle(Search.Verdict verdict, int[] choice, List<Row> rows) {
        double sum = terms.cost(choice);
        if (verdict.accepted() && sum < cutoff) {
            cutoff = sum;
            accepted = Optional.of(choice);
        }
        if (verdict.unknown()) {
            shelved = Math.min(shelved, Math.max(bound, sum));
        }
        // Every other choice of the node differs first at some site.
        boolean[] rest = allowed.clone();
        for (int z = 0; z < choice.length; z++) {
            int own = terms.offset[z] + choice[z];
            boolean[] child = rest.clone();
            child[own] = false;
            if (any(child, z)) {
                parts.add(new Search.Node(bound, 0, child, List.copyOf(rows), new int[0]));
            }
            for (int j = terms.offset[z]; j < terms.offset[z + 1]; j++) {
                rest[j] = j == own;
            }
        }
    }

    private boolean any(boolean[] allowed, int z) {
        for (int j = terms.offset[z]; j < terms.offset[z + 1]; j++) {
            if (allowed[j]) {
                return true;
            }
        }
        return false;
    }

    private void branch(double[] mixture, List<Row> rows, int[] standing) {
        Search.Blur blur = terms.judge.blur(mixture);
        int site = -1;
        double most = -1;
        for (int z = 0; z + 1 < terms.offset.length; z++) {
            int left = 0;
            double split = 0;
            for (int j = terms.offset[z]; j < terms.offset[z + 1]; j++) {
                left += allowed[j] ? 1 : 0;
                split = Math.max(split, Math.min(mixture[j], 1 - mixture[j]));
            }
            // Sites that are not mixed come last, but they come: the mixture may only look whole.
            double weight = split > 1e-7 ? 1 + Math.max(0, blur.ofSite()[z]) : 1e-3;
            if (left > 1 && weight > most) {
                most = weight;
                site = z;
            }
        }
        if (site < 0) {
            // One choice is left, and the rows say nothing against it.
            shelved = Math.min(shelved, Math.max(bound, cheapest()));
            return;
        }
        double mean = 0;
        List<Integer> order = new ArrayList<>();
        for (int j = terms.offset[site]; j < terms.offset[site + 1]; j++) {
            if (allowed[j]) {
                order.add(j);
                mean += mixture[j] * blur.key()[j];
            }
        }
        order.sort(Comparator.comparingDouble((Integer j) -> blur.key()[j]).thenComparingInt(j -> j));
        int cut = 0;
        while (cut < order.size() && blur.key()[order.get(cut)] < mean) {
            cut++;
        }
        cut = Math.clamp(cut, 1, order.size() - 1);
        double[] share = new double[2];
        for (int half = 0; half < 2; half++) {
            boolean[] child = allowed.clone();
            for (int i = 0; i < order.size(); i++) {
                child[order.get(i)] = i < cut == (half == 0);
                share[half] += child[order.get(i)] ? mixture[order.get(i)] : 0;
            }
            parts.add(new Search.Node(bound, 0, child, rows, standing));
        }
        likelier = share[0] > share[1] ? 0 : 1;
    }
}
