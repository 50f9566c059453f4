// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.List;

/**
 * A line of nodes as a net takes it into the flat cloth. A net that comes round an opening from both sides does not meet itself
 * where the surface is doubly curved: neighbours on the surface then lie apart in the flat. A few nodes beside such a seam may be
 * taken for the other side's; they are left out, so that the line goes over once.
 */
final class TracedLine {
    /** Cloth in shear stretches along its bias by up to √2. */
    private static final double STRETCH = 1.5;
    /** A run of more nodes is a side of its own. */
    private static final int STRAY = 4;

    /** @param afterGap whether the net misses something between the node before and this one */
    private record Node(double[] flat, double[] place, boolean afterGap) {}

    private final boolean closed;
    private final double spacing;
    private final List<Node> nodes = new ArrayList<>();
    private double missing;
    private boolean gap;

    /**
     * @param closed whether the last node is followed by the first
     * @param spacing of the net, m
     */
    TracedLine(boolean closed, double spacing) {
        this.closed = closed;
        this.spacing = spacing;
    }

    /** The next node, where the net reaches it: 2 coordinates in the flat, 3 in space. */
    void add(double[] flat, double[] place) {
        nodes.add(new Node(flat, place, gap));
        gap = false;
    }

    /** Length that the net does not reach, m. */
    void miss(double length) {
        missing += length;
        gap = true;
    }

    double missing() {
        return missing;
    }

    /** Leaves out what was taken for the other side's. */
    void clean() {
        if (closed && gap && !nodes.isEmpty()) {
            Node first = nodes.getFirst();
            nodes.set(0, new Node(first.flat(), first.place(), true));
        }
        for (int before = nodes.size() + 1; nodes.size() < before; ) {
            before = nodes.size();
            List<Integer> torn = torn();
            for (int t = 0; t < torn.size() && nodes.size() == before; t++) {
                int from = torn.get(t) + 1;
                int to = torn.get((t + 1) % torn.size());
                int run = Math.floorMod(to - from, nodes.size()) + 1;
                boolean round = t + 1 == torn.size();
                if (torn.size() > 1 && run <= STRAY && (closed || !round) && !parted(torn.get(t), run + 1)) {
                    List<Node> strays = new ArrayList<>();
                    for (int k = 0; k < run; k++) {
                        strays.add(nodes.get((from + k) % nodes.size()));
                    }
                    nodes.removeAll(strays);
                }
            }
        }
    }

    /** Nodes from which the next one is torn away. */
    private List<Integer> torn() {
        List<Integer> torn = new ArrayList<>();
        for (int i = 0; i < (closed ? nodes.size() : nodes.size() - 1); i++) {
            if (parted(i, 1)) {
                torn.add(i);
            }
        }
        return torn;
    }

    /**
     * Whether a node and another some steps on lie further apart in the flat than the cloth between them is long; of cloth that
     * the net does not reach in between nothing is known.
     */
    private boolean parted(int i, int steps) {
        for (int k = 1; k <= steps; k++) {
            if (nodes.get((i + k) % nodes.size()).afterGap()) {
                return false;
            }
        }
        return apart(i, steps) > (STRETCH - 1) * along(i, steps) + spacing;
    }

    /** How much further they lie apart than along the face, m. */
    private double apart(int i, int steps) {
        double[] a = nodes.get(i).flat();
        double[] b = nodes.get((i + steps) % nodes.size()).flat();
        return Math.hypot(b[0] - a[0], b[1] - a[1]) - along(i, steps);
    }

    private double along(int i, int steps) {
        double sum = 0;
        for (int k = 0; k < steps; k++) {
            double[] a = nodes.get((i + k) % nodes.size()).place();
            double[] b = nodes.get((i + k + 1) % nodes.size()).place();
            sum += Math.hypot(Math.hypot(b[0] - a[0], b[1] - a[1]), b[2] - a[2]);
        }
        return sum;
    }

    /** 2 coordinates a node in the flat. */
    double[] points() {
        double[] points = new double[2 * nodes.size()];
        for (int i = 0; i < nodes.size(); i++) {
            System.arraycopy(nodes.get(i).flat(), 0, points, 2 * i, 2);
        }
        return points;
    }

    /**
     * Where the net misses itself.
     *
     * @param by how far its sides lie apart, m
     * @param place in space, m
     */
    record Tear(double by, double[] place) {}

    /** Where it does, if it does. */
    List<Tear> tears() {
        return torn().stream()
                .map(i -> new Tear(apart(i, 1), nodes.get(i).place()))
                .toList();
    }
}
