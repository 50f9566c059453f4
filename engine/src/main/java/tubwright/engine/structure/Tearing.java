// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.IntFunction;
import tubwright.engine.mesh.Mesh;

/**
 * Takes shells out of a structure, and with them what is fixed to them: ties of joints and inserts go with the element they
 * ride on, or whose edge they hold; bars, and ties to nodes, with the last shell at one of their nodes. Safe to use from
 * several threads.
 */
public final class Tearing {
    /** Of an unknown's stiffness, what is left by rounding when all that held it is taken away. */
    private static final double ROUNDING = 1e-11;

    private final Structure structure;
    private final double[] diagonal;
    private final Mesh mesh;
    private final int[][] elementsAt;
    private final List<List<Integer>> membersAt = new ArrayList<>();
    /** Elements each member rides on; none where it holds nodes. */
    private final int[][] ridesOn;

    private final double[] membersOf;

    /** @param diagonal of the structure's stiffness, nothing fixed */
    public Tearing(Structure structure, double[] diagonal) {
        this.structure = structure;
        this.diagonal = diagonal;
        mesh = structure.mesh();
        List<List<Integer>> at = new ArrayList<>();
        for (int n = 0; n < structure.nodeCount(); n++) {
            at.add(new ArrayList<>());
            membersAt.add(new ArrayList<>());
        }
        for (int e = 0; e < mesh.elementCount(); e++) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                at.get(mesh.elementNodes()[4 * e + c]).add(e);
            }
        }
        elementsAt = at.stream().map(l -> l.stream().mapToInt(e -> e).toArray()).toArray(int[][]::new);
        List<Member> members = structure.members();
        membersOf = new double[structure.parts().size()];
        Map<ElasticTie, JointPoint> points = new IdentityHashMap<>();
        structure.jointRuns().forEach(run -> run.points().forEach(p -> points.put(p.tie(), p)));
        ridesOn = new int[members.size()][];
        for (int m = 0; m < ridesOn.length; m++) {
            Member member = members.get(m);
            membersOf[member.owner()]++;
            for (int n : member.nodes()) {
                membersAt.get(n).add(m);
            }
            JointPoint point = member instanceof ElasticTie tie ? points.get(tie) : null;
            ridesOn[m] = point == null ? shellOf(member) : shellsOf(point);
        }
    }

    private int[] shellsOf(JointPoint point) {
        TreeSet<Integer> shells = new TreeSet<>(List.of(point.onto()));
        int[] edge = point.edge();
        for (int e : elementsAt[edge[0]]) {
            if (Arrays.stream(elementsAt[edge[1]]).anyMatch(other -> other == e)) {
                shells.add(e);
            }
        }
        return shells.stream().mapToInt(e -> e).toArray();
    }

    /** The element whose corners, in their order, a tie's first nodes are. */
    private int[] shellOf(Member member) {
        int[] nodes = member.nodes();
        if (!(member instanceof ElasticTie) || nodes.length < 4 || nodes[0] >= mesh.nodeCount()) {
            return new int[0];
        }
        for (int e : elementsAt[nodes[0]]) {
            int corners = mesh.cornerCount(e);
            if (nodes.length == corners + 1
                    && Arrays.equals(nodes, 0, corners, mesh.elementNodes(), 4 * e, 4 * e + corners)) {
                return new int[] {e};
            }
        }
        return new int[0];
    }

    /** Places in the structure's list of members of those that go with torn elements. */
    List<Integer> goesWith(int[] elements) {
        BitSet torn = new BitSet();
        Arrays.stream(elements).forEach(torn::set);
        return members(torn);
    }

    /** Elements that share a node with any of these and are none of them, rising. */
    public int[] beside(int[] elements) {
        BitSet own = new BitSet();
        BitSet beside = new BitSet();
        Arrays.stream(elements).forEach(own::set);
        for (int e : elements) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                Arrays.stream(elementsAt[mesh.elementNodes()[4 * e + c]]).forEach(beside::set);
            }
        }
        beside.andNot(own);
        return beside.stream().toArray();
    }

    /** Nodes of elements, rising. */
    public int[] nodesOf(int[] elements) {
        BitSet nodes = new BitSet();
        for (int e : elements) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                nodes.set(mesh.elementNodes()[4 * e + c]);
            }
        }
        return nodes.stream().toArray();
    }

    /** These nodes and all that something joins to one of them, rising. */
    public int[] joined(int[] nodes) {
        BitSet joined = new BitSet();
        for (int n : nodes) {
            joined.set(n);
            for (int e : elementsAt[n]) {
                for (int c = 0; c < mesh.cornerCount(e); c++) {
                    joined.set(mesh.elementNodes()[4 * e + c]);
                }
            }
            for (int m : membersAt.get(n)) {
                Arrays.stream(structure.members().get(m).nodes()).forEach(joined::set);
            }
        }
        return joined.stream().toArray();
    }

    /** Tears elements out. */
    public Torn tear(int[] elements) {
        return take(elements, _ -> new double[64], true);
    }

    /** Geometric stiffness of elements, and of the bars that go with them, between the unknowns of some nodes. */
    double[][] geometric(int[] elements, int[] nodes, double[] u) {
        Map<Integer, Integer> local = new HashMap<>();
        for (int i = 0; i < nodes.length; i++) {
            local.put(nodes[i], i);
        }
        double[][] sum = new double[6 * nodes.length][6 * nodes.length];
        double[] one = new double[24 * 24];
        ShellKernel kernel = new ShellKernel(structure);
        for (int e : elements) {
            kernel.geometricStiffness(e, u, one, 0);
            add(one, Arrays.copyOfRange(mesh.elementNodes(), 4 * e, 4 * e + mesh.cornerCount(e)), local, sum);
        }
        for (int m : goesWith(elements)) {
            double[] matrix = structure.members().get(m).geometricStiffness(u);
            if (matrix.length > 0) {
                add(matrix, structure.members().get(m).nodes(), local, sum);
            }
        }
        return sum;
    }

    /**
     * Softens elements; what is fixed to them stays.
     *
     * @param left 8 × 8 stiffness that is left, by region
     */
    public Torn soften(int[] elements, IntFunction<double[]> left) {
        return take(elements, left, false);
    }

    private Torn take(int[] damaged, IntFunction<double[]> left, boolean all) {
        int[] elements = Arrays.stream(damaged).sorted().distinct().toArray();
        BitSet torn = new BitSet();
        Arrays.stream(elements).forEach(torn::set);
        List<Integer> members = all ? members(torn) : List.of();
        TreeSet<Integer> touched = new TreeSet<>();
        for (int n : nodesOf(elements)) {
            touched.add(n);
        }
        for (int m : members) {
            for (int n : structure.members().get(m).nodes()) {
                touched.add(n);
            }
        }
        int[] nodes = touched.stream().mapToInt(n -> n).toArray();
        Map<Integer, Integer> local = new HashMap<>();
        for (int i = 0; i < nodes.length; i++) {
            local.put(nodes[i], i);
        }
        double[][] stiffness = new double[6 * nodes.length][6 * nodes.length];
        shells(elements, left, local, stiffness);
        Map<Part, Double> parts = new LinkedHashMap<>();
        for (int m : members) {
            Member member = structure.members().get(m);
            add(member.matrix(), member.nodes(), local, stiffness);
            parts.merge(structure.parts().get(member.owner()), 1 / membersOf[member.owner()], Double::sum);
        }
        boolean[] dead = new boolean[6 * nodes.length];
        for (int i = 0; i < dead.length; i++) {
            double was = diagonal[6 * nodes[i / 6] + i % 6];
            dead[i] = all && was - stiffness[i][i] <= ROUNDING * was;
        }
        return new Torn(elements, nodes, stiffness, dead, parts);
    }

    private void shells(int[] elements, IntFunction<double[]> left, Map<Integer, Integer> local, double[][] stiffness) {
        double[] whole = new double[24 * 24];
        ShellKernel kernel = new ShellKernel(structure);
        for (int e : elements) {
            kernel.taken(e, left.apply(mesh.elementRegions()[e]), whole);
            add(whole, Arrays.copyOfRange(mesh.elementNodes(), 4 * e, 4 * e + mesh.cornerCount(e)), local, stiffness);
        }
    }

    private static void add(double[] matrix, int[] nodes, Map<Integer, Integer> local, double[][] to) {
        int n = 6 * nodes.length;
        int[] at = new int[n];
        for (int i = 0; i < n; i++) {
            at[i] = 6 * local.get(nodes[i / 6]) + i % 6;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                to[at[i]][at[j]] += matrix[i * n + j];
            }
        }
    }

    private List<Integer> members(BitSet torn) {
        TreeSet<Integer> near = new TreeSet<>();
        torn.stream().forEach(e -> {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                near.addAll(membersAt.get(mesh.elementNodes()[4 * e + c]));
            }
        });
        return near.stream().filter(m -> goes(m, torn)).toList();
    }

    private boolean goes(int m, BitSet torn) {
        if (ridesOn[m].length > 0) {
            return Arrays.stream(ridesOn[m]).anyMatch(torn::get);
        }
        for (int n : structure.members().get(m).nodes()) {
            if (n < mesh.nodeCount() && Arrays.stream(elementsAt[n]).allMatch(torn::get)) {
                return true;
            }
        }
        return false;
    }
}
