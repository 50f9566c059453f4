// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * Branch and bound over choices (Land & Doig 1960): the least cost of one candidate at every site under rows, rules
 * between neighbours and what a judge adds on the way. A node is a set of candidates still allowed; its bound comes from
 * multipliers of rows that every choice worth having keeps to. Candidates that multipliers prove too dear are struck
 * out. Nodes are taken lightest bound first, so that the least bound of all open nodes holds for everything left.
 */
final class Search {
    /** Two costs nearer than this share of the larger are the same. */
    static final double SAME = 1e-10;

    private static final double MISSED = 1e-6;
    private static final int MOST_ROUNDS = 40;
    private static final double STALLED = 0.03;
    /** With more rows at a node those that do nothing are left out. */
    private static final int MOST_ROWS = 150;

    /** Who knows more than the rows. */
    interface Judge {
        /** Rows that a mixture misses; none where it seems to do. */
        List<Row> rows(double[] mixture);

        /**
         * Judges a choice that keeps to all rows. If it is accepted, later nodes must be lighter than it.
         *
         * @return whether it is accepted; rows it misses; or neither, and then this choice alone is ruled out
         */
        Verdict judge(int[] choice);

        /** Whether every choice that keeps to the rows will be accepted, so that mixtures may be rounded. */
        default boolean takesAll() {
            return false;
        }

        /** By how much each site's mixture blurs what its candidates are worth, and a key to part them by. */
        Blur blur(double[] mixture);
    }

    /** A judgement; {@code unknown} keeps the node open for ever, because nothing is known about the choice. */
    record Verdict(boolean accepted, List<Row> rows, boolean unknown) {}

    /** See {@link Judge#blur}. */
    record Blur(double[] ofSite, double[] key) {}

    private record Node(double bound, int id, boolean[] allowed, List<Row> rows) {}

    private final double[] cost;
    private final int[] offset;
    private final Neighbours neighbours;
    /** A number for the stack of each candidate; -1 where stacks are not counted. */
    private final int[] stacks;

    private final Relaxation relaxation;
    private final Judge judge;
    private final RowPool pool = new RowPool();
    private final PriorityQueue<Node> open =
            new PriorityQueue<>(Comparator.comparingDouble(Node::bound).thenComparingInt(Node::id));
    private double shelved = Double.POSITIVE_INFINITY;
    private double cutoff = Double.POSITIVE_INFINITY;
    private Optional<int[]> best = Optional.empty();
    private int nodes;
    private int ids;

    /**
     * @param cost of each candidate
     * @param stacks number of the stack of each candidate; -1 for patches and joints
     */
    Search(double[] cost, int[] offset, Neighbours neighbours, int[] stacks, Judge judge) {
        this.cost = cost;
        this.offset = offset;
        this.neighbours = neighbours;
        this.stacks = stacks;
        this.judge = judge;
        relaxation = new Relaxation(cost, offset);
    }

    /** A row every choice worth having keeps to. */
    void add(Row row) {
        pool.give(row.scaled());
    }

    /** Choices of this cost or dearer are of no use. */
    void below(double limit) {
        cutoff = Math.min(cutoff, limit);
    }

    /** Where to begin: all candidates allowed, or those given. */
    void start(boolean[] allowed) {
        open.add(new Node(Double.NEGATIVE_INFINITY, ids++, allowed.clone(), List.of()));
    }

    int nodes() {
        return nodes;
    }

    /** The cheapest accepted choice. */
    Optional<int[]> best() {
        return best;
    }

    /** Nothing that is left is cheaper. */
    double bound() {
        double least = Math.min(shelved, cutoff);
        return open.isEmpty() ? least : Math.min(least, open.peek().bound);
    }

    /** Whether all is known. */
    boolean done() {
        return open.isEmpty() || bound() >= worthwhile();
    }

    private double worthwhile() {
        return cutoff - SAME * Math.abs(cutoff);
    }

    /**
     * Goes on until all is known, nodes have run out or somebody says stop.
     *
     * @param plunging whether to follow the likelier half of a node at once, to come by choices, instead of taking the
     *     node with the least bound, to raise the bound
     */
    void run(int mostNodes, boolean plunging, BooleanSupplier stop) {
        Optional<Node> next = Optional.empty();
        for (int n = 0; n < mostNodes && !stop.getAsBoolean() && (next.isPresent() || !done()); n++) {
            next = work(next.orElseGet(open::poll));
            if (!plunging) {
                next.ifPresent(open::add);
                next = Optional.empty();
            }
        }
        next.ifPresent(open::add);
    }

    /** Works on a node; its likelier half, if it has to be parted, is given back, the other queued. */
    private Optional<Node> work(Node node) {
        nodes++;
        boolean[] allowed = node.allowed.clone();
        if (!few(allowed)) {
            return Optional.empty();
        }
        List<Row> rows = new ArrayList<>(node.rows);
        double bound = node.bound;
        double[] reduced = new double[cost.length];
        Relaxation.Session session = relaxation.begin(allowed, rows);
        Relaxation.Answer answer = null;
        double before = Double.NEGATIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            answer = session.answer();
            double[] y = answer.multipliers();
            if (!answer.feasible()) {
                y = enough(answer, allowed, rows, reduced);
            }
            double proved = relaxation.bound(y, allowed, rows, reduced);
            bound = Math.max(bound, proved);
            if (bound >= worthwhile()) {
                return Optional.empty();
            }
            if (!answer.feasible()) {
                // Infeasible to the solver, but not proved so with a margin: go by branching.
                break;
            }
            strike(proved, reduced, allowed);
            double[] mixture = answer.mixture();
            List<Row> more = pool.missed(mixture, MISSED, rows, nodes);
            if (more.isEmpty()) {
                more = neighbours.missed(mixture, offset, MISSED);
            }
            if (more.isEmpty() && judge.takesAll()) {
                round(mixture);
            }
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
                if (!whole(mixture)) {
                    break;
                }
                if (count(choice(mixture)) > neighbours.mostStacks()) {
                    break;
                }
                Verdict verdict = judge.judge(choice(mixture));
                if (verdict.rows.isEmpty()) {
                    settle(verdict, choice(mixture), allowed, bound, rows);
                    return Optional.empty();
                }
                more = new ArrayList<>();
                for (Row row : verdict.rows) {
                    more.add(row.scaled());
                }
                more.forEach(r -> pool.find(r, nodes));
            }
            rows.addAll(more);
            if (rows.size() > MOST_ROWS) {
                rows = tight(rows, answer);
                session = relaxation.begin(allowed, rows);
            } else {
                session.add(more);
            }
        }
        return branch(allowed, answer.mixture(), bound, tight(rows, answer));
    }

    /** Multipliers with so much of the ray as to pass the cutoff, if any amount does. */
    private double[] enough(Relaxation.Answer answer, boolean[] allowed, List<Row> rows, double[] reduced) {
        double[] best = answer.multipliers();
        double most = relaxation.bound(best, allowed, rows, reduced);
        for (double t = 1e-2; t < 1e9; t *= 10) {
            double[] y = answer.multipliers().clone();
            for (int i = 0; i < y.length; i++) {
                y[i] += t * answer.ray()[i];
            }
            double bound = relaxation.bound(y, allowed, rows, reduced);
            if (bound > most) {
                most = bound;
                best = y;
            }
        }
        return best;
    }

    /** Strikes out candidates that no choice below the cutoff can use. */
    private void strike(double bound, double[] reduced, boolean[] allowed) {
        double room = worthwhile() - bound;
        for (int j = 0; j < reduced.length; j++) {
            allowed[j] &= !(reduced[j] > room * (1 + 1e-9));
        }
    }

    private List<Row> judged(double[] mixture) {
        List<Row> rows = new ArrayList<>();
        for (Row row : judge.rows(mixture)) {
            Row scaled = row.scaled();
            if (scaled.missedBy(mixture) > MISSED) {
                rows.add(scaled);
                pool.find(scaled, nodes);
            }
        }
        return rows;
    }

    /** Rows that hold the answer up. */
    private static List<Row> tight(List<Row> rows, Relaxation.Answer answer) {
        List<Row> result = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (i >= answer.multipliers().length || answer.multipliers()[i] > 0 || !answer.feasible()) {
                result.add(rows.get(i));
            }
        }
        return result;
    }

    private boolean whole(double[] mixture) {
        for (double share : mixture) {
            if (share > 1e-7 && share < 1 - 1e-7) {
                return false;
            }
        }
        return true;
    }

    private int[] choice(double[] mixture) {
        int[] choice = new int[offset.length - 1];
        for (int z = 0; z < choice.length; z++) {
            for (int j = offset[z]; j < offset[z + 1]; j++) {
                choice[z] = mixture[j] > 0.5 ? j - offset[z] : choice[z];
            }
        }
        return choice;
    }

    /** Where a site is mixed, the candidate that does most for the rows; kept if that does. */
    private void round(double[] mixture) {
        int[] choice = new int[offset.length - 1];
        double[] whole = new double[mixture.length];
        double sum = 0;
        for (int z = 0; z < choice.length; z++) {
            int taken = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int j = offset[z]; j < offset[z + 1]; j++) {
                double worth = 0;
                for (Row row : pool.given()) {
                    worth += row.coefficients()[j];
                }
                if (mixture[j] > 0 && worth > most) {
                    most = worth;
                    taken = j;
                }
            }
            choice[z] = taken - offset[z];
            whole[taken] = 1;
            sum += cost[taken];
        }
        if (sum < worthwhile()
                && pool.given().stream().allMatch(r -> r.missedBy(whole) <= 0)
                && neighbours.kept(choice)
                && count(choice) <= neighbours.mostStacks()) {
            cutoff = sum;
            best = Optional.of(choice);
        }
    }

    private int count(int[] choice) {
        Set<Integer> seen = new HashSet<>();
        for (int z = 0; z < choice.length; z++) {
            int stack = stacks[offset[z] + choice[z]];
            if (stack >= 0) {
                seen.add(stack);
            }
        }
        return seen.size();
    }

    /** Where sites that are settled use up the stacks there may be, the others are held to these. */
    private boolean few(boolean[] allowed) {
        if (neighbours.mostStacks() >= stacks.length) {
            return true;
        }
        Set<Integer> settled = new HashSet<>();
        int before;
        do {
            before = settled.size();
            for (int z = 0; z + 1 < offset.length; z++) {
                Set<Integer> here = new HashSet<>();
                boolean counted = true;
                for (int j = offset[z]; j < offset[z + 1]; j++) {
                    if (allowed[j]) {
                        counted &= stacks[j] >= 0;
                        here.add(stacks[j]);
                    }
                }
                if (here.isEmpty()) {
                    return false;
                }
                if (counted && here.size() == 1) {
                    settled.addAll(here);
                }
            }
            if (settled.size() > neighbours.mostStacks()) {
                return false;
            }
            if (settled.size() == neighbours.mostStacks()) {
                for (int j = 0; j < allowed.length; j++) {
                    allowed[j] &= stacks[j] < 0 || settled.contains(stacks[j]);
                }
            }
        } while (settled.size() > before);
        return true;
    }

    /** A whole choice at a node's optimum: the node is done with if it was accepted; else all but the choice goes on. */
    private void settle(Verdict verdict, int[] choice, boolean[] allowed, double bound, List<Row> rows) {
        double sum = 0;
        for (int z = 0; z < choice.length; z++) {
            sum += cost[offset[z] + choice[z]];
        }
        if (verdict.accepted && sum < cutoff) {
            cutoff = sum;
            best = Optional.of(choice);
        }
        if (verdict.unknown) {
            shelved = Math.min(shelved, Math.max(bound, sum));
        }
        // Every other choice of the node differs first at some site.
        boolean[] rest = allowed.clone();
        for (int z = 0; z < choice.length; z++) {
            int own = offset[z] + choice[z];
            boolean[] child = rest.clone();
            child[own] = false;
            if (any(child, z)) {
                open.add(new Node(bound, ids++, child, rows));
            }
            for (int j = offset[z]; j < offset[z + 1]; j++) {
                rest[j] = j == own;
            }
        }
    }

    private boolean any(boolean[] allowed, int z) {
        for (int j = offset[z]; j < offset[z + 1]; j++) {
            if (allowed[j]) {
                return true;
            }
        }
        return false;
    }

    private Optional<Node> branch(boolean[] allowed, double[] mixture, double bound, List<Row> rows) {
        Blur blur = judge.blur(mixture);
        int site = -1;
        double most = -1;
        for (int z = 0; z + 1 < offset.length; z++) {
            int left = 0;
            double split = 0;
            for (int j = offset[z]; j < offset[z + 1]; j++) {
                left += allowed[j] ? 1 : 0;
                split = Math.max(split, Math.min(mixture[j], 1 - mixture[j]));
            }
            // Sites that are not mixed come last, but they come: the mixture may only look whole.
            double weight = split > 1e-7 ? 1 + Math.max(0, blur.ofSite[z]) : 1e-3;
            if (left > 1 && weight > most) {
                most = weight;
                site = z;
            }
        }
        if (site < 0) {
            shelved = Math.min(shelved, bound);
            return Optional.empty();
        }
        double mean = 0;
        List<Integer> order = new ArrayList<>();
        for (int j = offset[site]; j < offset[site + 1]; j++) {
            if (allowed[j]) {
                order.add(j);
                mean += mixture[j] * blur.key[j];
            }
        }
        order.sort(Comparator.comparingDouble((Integer j) -> blur.key[j]).thenComparingInt(j -> j));
        int cut = 0;
        while (cut < order.size() && blur.key[order.get(cut)] < mean) {
            cut++;
        }
        cut = Math.clamp(cut, 1, order.size() - 1);
        Node[] halves = new Node[2];
        double[] share = new double[2];
        for (int half = 0; half < 2; half++) {
            boolean[] child = allowed.clone();
            for (int i = 0; i < order.size(); i++) {
                child[order.get(i)] = i < cut == (half == 0);
                share[half] += child[order.get(i)] ? mixture[order.get(i)] : 0;
            }
            halves[half] = new Node(bound, ids++, child, rows);
        }
        int likelier = share[0] > share[1] ? 0 : 1;
        open.add(halves[1 - likelier]);
        return Optional.of(halves[likelier]);
    }
}
