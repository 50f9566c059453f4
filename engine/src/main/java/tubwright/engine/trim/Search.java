// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
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

    /** Nodes worked on side by side; the same on every machine, so that the way through the tree is. */
    private static final int TOGETHER = 4;

    /** Who knows more than the rows. Rows and blurs are asked for by several at once, judgements by one alone. */
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

    /**
     * A set of candidates still allowed.
     *
     * @param rows that held up the mixture of the node it is a part of
     * @param standing where the relaxation stood there
     */
    record Node(double bound, int id, boolean[] allowed, List<Row> rows, int[] standing) {}

    private final NodeWork.Terms terms;
    private final RowPool pool;
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
        pool = new RowPool(cost.length);
        terms = new NodeWork.Terms(
                cost, offset, neighbours, new StackCount(offset, stacks, neighbours.mostStacks()), judge, pool);
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
        open.add(new Node(Double.NEGATIVE_INFINITY, ids++, allowed.clone(), List.of(), new int[0]));
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

    /** What a choice must be cheaper than. */
    static double worthwhile(double cutoff) {
        return cutoff - SAME * Math.abs(cutoff);
    }

    private double worthwhile() {
        return worthwhile(cutoff);
    }

    /**
     * Goes on until all is known, nodes have run out or somebody says stop.
     *
     * @param plunging whether to follow the likelier half of a node at once, to come by choices, instead of taking the
     *     node with the least bound, to raise the bound
     */
    void run(int mostNodes, boolean plunging, BooleanSupplier stop) {
        int last = nodes + mostNodes;
        Optional<Node> next = Optional.empty();
        while (nodes < last && !stop.getAsBoolean() && (next.isPresent() || !done())) {
            if (plunging) {
                next = take(work(next.orElseGet(open::poll), true));
            } else {
                together(Math.min(TOGETHER, last - nodes));
            }
        }
        next.ifPresent(open::add);
    }

    /** Works on the nodes of least bound side by side, each knowing what was known before; then takes in what came of them. */
    private void together(int most) {
        List<Node> taken = new ArrayList<>();
        while (taken.size() < most && !done()) {
            taken.add(open.poll());
        }
        List<NodeWork> worked =
                taken.parallelStream().map(node -> work(node, false)).toList();
        for (int i = 0; i < worked.size(); i++) {
            NodeWork each = worked.get(i);
            // A choice to be judged comes up seldom: the node is gone through again, alone.
            take(each.undecided() ? work(taken.get(i), true) : each).ifPresent(open::add);
        }
    }

    private NodeWork work(Node node, boolean alone) {
        NodeWork work = new NodeWork(terms, node, cutoff, alone);
        work.run();
        return work;
    }

    /** Takes in what came of a node; its likelier half, if it was parted, is given back. */
    private Optional<Node> take(NodeWork work) {
        int number = nodes++;
        work.met().forEach(row -> pool.find(row, number));
        if (work.accepted().isPresent() && terms.cost(work.accepted().get()) < cutoff) {
            best = work.accepted();
            cutoff = terms.cost(best.get());
        }
        shelved = Math.min(shelved, work.shelved());
        List<Node> parts = work.parts().stream()
                .map(n -> new Node(n.bound, ids++, n.allowed, n.rows, n.standing))
                .toList();
        int likelier = work.likelier();
        for (int i = 0; i < parts.size(); i++) {
            if (i != likelier) {
                open.add(parts.get(i));
            }
        }
        return likelier < 0 ? Optional.empty() : Optional.of(parts.get(likelier));
    }
}
