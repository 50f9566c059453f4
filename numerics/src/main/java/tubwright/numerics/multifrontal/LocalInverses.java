// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Iterator;
import java.util.List;
import java.util.TreeSet;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Parallel;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/**
 * Blocks of the inverse of a sparse positive definite matrix, each on a few nodes near one another, and many of them: what
 * low-rank changes at many places of one matrix ask for. Each block costs what its surroundings cost; nothing is solved
 * over the whole. The inverse is carried down the elimination tree once ({@link TopInverse}).
 */
public final class LocalInverses {
    private static final int BELONGS = 8;

    /** A place joins a batch if it has this share of its loaded nodes in common with it, until the batch has so many. */
    private static final double SHARED = 0.3;

    private static final int ENOUGH = 150;

    final Symbolic symbolic;
    final double[][] factors;
    final double[] pivots;
    private final double[] scale;
    private final TopInverse tops;
    private final int[] supernodeOf;
    /** First position of each supernode's subtree. */
    final int[] firstBelow;

    /**
     * Nodes that may be loaded and nodes at which the outcome is read.
     *
     * @param loaded nodes, each once
     * @param read nodes, each once; may be among the loaded
     */
    public record Place(int[] loaded, int[] read) {}

    /** Hears of each place, from several threads at once and in any order. */
    @FunctionalInterface
    public interface Visitor {
        /**
         * @param place index into the list of places
         * @param inverse the blocks there
         */
        void visit(int place, LocalInverse inverse);
    }

    private LocalInverses(Symbolic symbolic, double[][] factors, double[] pivots, double[] scale) {
        this.symbolic = symbolic;
        this.factors = factors;
        this.pivots = pivots;
        this.scale = scale;
        tops = new TopInverse(symbolic, factors, pivots);
        int count = symbolic.rows.length;
        supernodeOf = new int[symbolic.nodeAt.length];
        firstBelow = new int[count];
        for (int s = 0; s < count; s++) {
            Arrays.fill(supernodeOf, symbolic.first[s], symbolic.first[s + 1], s);
            firstBelow[s] = symbolic.children[s].length == 0 ? symbolic.first[s] : firstBelow[symbolic.children[s][0]];
        }
    }

    /**
     * Factorises.
     *
     * @throws SingularMatrixException where a pivot is not positive
     */
    public static LocalInverses of(SymmetricMatrix matrix) {
        return new Numeric(Symbolic.of(matrix.pattern()), matrix, Definiteness.POSITIVE_DEFINITE)
                .factorise()
                .localInverses();
    }

    static LocalInverses of(Symbolic symbolic, double[][] factors, double[] pivots, double[] scale) {
        return new LocalInverses(symbolic, factors, pivots, scale);
    }

    /**
     * Visits the places.
     *
     * @throws IllegalArgumentException where the nodes of a place have nothing to do with one another
     */
    public void visit(List<Place> places, Visitor visitor) {
        int count = symbolic.rows.length;
        List<List<Integer>> at = new ArrayList<>();
        for (int s = 0; s < count; s++) {
            at.add(List.of());
        }
        boolean[] needed = new boolean[count];
        for (int p = 0; p < places.size(); p++) {
            int top = top(places.get(p));
            if (at.get(top).isEmpty()) {
                at.set(top, new ArrayList<>());
            }
            at.get(top).add(p);
            for (int s = top; s >= 0 && !needed[s]; s = symbolic.parent[s]) {
                needed[s] = true;
            }
        }
        double[] work = new double[count];
        for (int s = 0; s < count; s++) {
            double m = symbolic.height(s);
            work[s] +=
                    needed[s] ? m * m * (symbolic.width(s) + BELONGS * at.get(s).size()) : 0;
            if (symbolic.parent[s] >= 0) {
                work[symbolic.parent[s]] += work[s];
            }
        }
        double whole = 0;
        for (int s = 0; s < count; s++) {
            whole += symbolic.parent[s] < 0 ? work[s] : 0;
        }
        double limit = whole / (8.0 * Parallel.threads());
        Tour tour = new Tour(places, at, needed, visitor);
        List<Runnable> subtrees = new ArrayList<>();
        double[][][] known = new double[count][][];
        for (int s = count - 1; s >= 0; s--) {
            int up = symbolic.parent[s];
            if (!needed[s] || (work[s] <= limit && up >= 0 && known[up] == null)) {
                continue;
            }
            double[][] parent = up < 0 ? new double[0][] : known[up];
            int root = s;
            if (work[s] <= limit) {
                subtrees.add(() -> tour.subtree(root, parent));
            } else {
                known[s] = tops.of(s, parent);
                List<List<Integer>> batches = tour.batches(root);
                Parallel.run(batches.size(), k -> tour.visit(batches.get(k), root, known[root]));
            }
        }
        Parallel.run(subtrees.size(), k -> subtrees.get(k).run());
    }

    /** One way over the tree. */
    private final class Tour {
        private final List<Place> places;
        private final List<List<Integer>> at;
        private final boolean[] needed;
        private final Visitor visitor;

        Tour(List<Place> places, List<List<Integer>> at, boolean[] needed, Visitor visitor) {
            this.places = places;
            this.at = at;
            this.needed = needed;
            this.visitor = visitor;
        }

        void subtree(int s, double[][] parent) {
            double[][] front = tops.of(s, parent);
            batches(s).forEach(batch -> visit(batch, s, front));
            for (int child : symbolic.children[s]) {
                if (needed[child]) {
                    subtree(child, front);
                }
            }
        }

        /** Places of one front in batches that share many of their columns. */
        List<List<Integer>> batches(int top) {
            List<Integer> left = new ArrayList<>(at.get(top));
            List<List<Integer>> batches = new ArrayList<>();
            while (!left.isEmpty()) {
                List<Integer> batch = new ArrayList<>(List.of(left.removeFirst()));
                BitSet nodes = loaded(batch.getFirst());
                for (Iterator<Integer> i = left.iterator(); i.hasNext() && nodes.cardinality() < ENOUGH; ) {
                    int p = i.next();
                    BitSet own = loaded(p);
                    BitSet both = (BitSet) own.clone();
                    both.and(nodes);
                    if (both.cardinality() >= SHARED * own.cardinality()) {
                        nodes.or(own);
                        batch.add(p);
                        i.remove();
                    }
                }
                batches.add(batch);
            }
            return batches;
        }

        private BitSet loaded(int p) {
            BitSet nodes = new BitSet();
            Arrays.stream(places.get(p).loaded()).forEach(nodes::set);
            return nodes;
        }

        void visit(List<Integer> batch, int top, double[][] front) {
            int[][] paths = new int[batch.size()][];
            int[][] positions = new int[batch.size()][];
            int[][] reached = new int[batch.size()][];
            for (int k = 0; k < paths.length; k++) {
                Place place = places.get(batch.get(k));
                paths[k] = path(place, top);
                positions[k] = Arrays.stream(place.loaded())
                        .map(n -> symbolic.positionOf[n])
                        .sorted()
                        .toArray();
                reached[k] = reached(place, paths[k]);
            }
            SharedColumns columns =
                    new SharedColumns(LocalInverses.this, union(paths), union(positions), union(reached), top, front);
            for (int k = 0; k < paths.length; k++) {
                Place place = places.get(batch.get(k));
                visitor.visit(
                        batch.get(k), new LocalInverse(columns, scale, place, paths[k], positions[k], reached[k]));
            }
        }
    }

    private int[] reached(Place place, int[] path) {
        BitSet rows = new BitSet();
        for (int s : path) {
            for (int p : symbolic.rows[s]) {
                rows.set(p);
            }
        }
        for (int p : positions(place)) {
            rows.set(p);
        }
        return rows.stream().toArray();
    }

    private static int[] union(int[][] lists) {
        BitSet all = new BitSet();
        for (int[] list : lists) {
            for (int i : list) {
                all.set(i);
            }
        }
        return all.stream().toArray();
    }

    private int[] positions(Place place) {
        int[] all = Arrays.copyOf(place.loaded(), place.loaded().length + place.read().length);
        System.arraycopy(place.read(), 0, all, place.loaded().length, place.read().length);
        return Arrays.stream(all)
                .map(n -> symbolic.positionOf[n])
                .sorted()
                .distinct()
                .toArray();
    }

    /** The lowest front that all nodes of a place lie in or below. */
    private int top(Place place) {
        int[] positions = positions(place);
        if (positions.length == 0) {
            throw new IllegalArgumentException("a place needs at least one node");
        }
        int top = supernodeOf[positions[0]];
        while (!holds(top, positions)) {
            top = symbolic.parent[top];
            if (top < 0) {
                throw new IllegalArgumentException("the nodes of a place lie in parts that nothing joins");
            }
        }
        return top;
    }

    /** Whether all positions lie in the subtree of a supernode or in its front. */
    private boolean holds(int s, int[] positions) {
        for (int p : positions) {
            boolean inside = p >= firstBelow[s] && p < symbolic.first[s + 1];
            if (!inside && Arrays.binarySearch(symbolic.rows[s], p) < 0) {
                return false;
            }
        }
        return true;
    }

    /** Supernodes below the top on the way up from the nodes of a place, children first. */
    private int[] path(Place place, int top) {
        TreeSet<Integer> path = new TreeSet<>();
        for (int p : positions(place)) {
            if (p >= firstBelow[top] && p < symbolic.first[top]) {
                for (int s = supernodeOf[p]; s != top && path.add(s); ) {
                    s = symbolic.parent[s];
                }
            }
        }
        return path.stream().mapToInt(s -> s).toArray();
    }
}
