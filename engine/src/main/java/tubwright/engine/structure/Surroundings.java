// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.Assembler;
import tubwright.numerics.Condensed;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;

/**
 * What a structure does to a part of its shells and joints that is looked at by itself: all the rest condensed onto the nodes
 * it shares with that part (Guyan 1965; exact in statics). With I the unknowns of the rest alone and B the shared ones,
 * S = K_BB − K_BI K_II⁻¹ K_IB and the load f_B − K_BI K_II⁻¹ f_I.
 *
 * @param nodes of the part that the rest, a load or a support touches, rising
 * @param border those of them that the rest touches, rising
 * @param stiffness S, (6 m)² row-major, m the nodes of the border
 * @param load per unknown of the nodes, N and N·m
 * @param give f_Iᵀ K_II⁻¹ f_I: twice the work of a unit of the load with the shared nodes held, J
 * @param fixed per unknown of the nodes: held by the case
 */
public record Surroundings(int[] nodes, int[] border, double[] stiffness, double[] load, double give, boolean[] fixed) {
    /**
     * Condenses.
     *
     * @param elements shells of the part, rising
     * @param joints points of joints that belong to it
     * @param torn shells that are gone altogether, rising, with all that sits on them
     * @throws StructureException where the case is not held, or the rest has no stiffness somewhere
     */
    public static Surroundings of(
            Structure structure,
            int[] elements,
            List<JointPoint> joints,
            int[] torn,
            Case wanted,
            DirectSolver solver) {
        Mesh mesh = structure.mesh();
        Tearing tearing = new Tearing(structure, structure.assemble().diagonal());
        Set<Integer> gone = new HashSet<>(tearing.goesWith(torn));
        Map<ElasticTie, Boolean> own = new IdentityHashMap<>();
        joints.forEach(p -> own.put(p.tie(), true));
        BitSet inside = bits(elements);
        BitSet away = bits(torn);
        int count = mesh.elementCount();
        int[][] all = structure.connectivity();
        int[] rest = IntStream.range(0, all.length)
                .filter(i -> i < count
                        ? !inside.get(i) && !away.get(i)
                        : !gone.contains(i - count)
                                && !own.containsKey(structure.members().get(i - count)))
                .toArray();
        BitSet ofRest = new BitSet();
        for (int i : rest) {
            Arrays.stream(all[i]).forEach(ofRest::set);
        }
        BitSet ofPart = bits(tearing.nodesOf(elements));
        joints.forEach(p -> Arrays.stream(p.tie().nodes()).forEach(ofPart::set));
        boolean[] nowhere = new boolean[structure.unknowns()];
        for (int i = 0; i < nowhere.length; i++) {
            nowhere[i] = !ofRest.get(i / 6) && !ofPart.get(i / 6);
        }
        boolean[] held = CaseLoads.fixed(structure, wanted, nowhere);
        double[] applied = CaseLoads.applied(structure, wanted);
        OwnMass mass = new OwnMass(structure);
        double[] load = CaseLoads.loads(structure, wanted, mass);
        if (wanted instanceof Case.Loads l && l.free()) {
            mass.motions().balanceWithout(nowhere, load);
        }
        TreeSet<Integer> shared = new TreeSet<>();
        TreeSet<Integer> seen = new TreeSet<>();
        TreeSet<String> lost = new TreeSet<>();
        boolean[] fixed = new boolean[structure.unknowns()];
        for (int n = 0; n < structure.nodeCount(); n++) {
            boolean touched = ofRest.get(n);
            for (int d = 0; d < 6; d++) {
                int i = 6 * n + d;
                // What is torn out takes its own weight with it; what pushes on it would be left hanging.
                load[i] = nowhere[i] ? 0 : load[i];
                touched |= held[i] || load[i] != 0;
                if (applied[i] != 0 && nowhere[i]) {
                    lost.add(structure.nameAt(n).isEmpty() ? "a spot of skin" : structure.nameAt(n));
                }
                fixed[i] = held[i] || ofPart.get(n) || !ofRest.get(n);
            }
            if (ofRest.get(n) && ofPart.get(n)) {
                shared.add(n);
            }
            if (touched && ofPart.get(n)) {
                seen.add(n);
            }
        }
        if (!lost.isEmpty()) {
            throw new StructureException(
                    "no path is left for the load at " + String.join(", ", lost) + " in case '" + wanted.name()
                            + "': it goes with what is torn out",
                    "take a case that does not load it, or tear out less");
        }
        int[] border = shared.stream().mapToInt(n -> n).toArray();
        int[] kept =
                IntStream.range(0, 6 * border.length).map(i -> at(border, i)).toArray();
        for (int i : kept) {
            fixed[i] = false;
        }
        double[] pushed = load.clone();
        for (int i = 0; i < pushed.length; i++) {
            pushed[i] = fixed[i] ? 0 : pushed[i];
        }
        SymmetricMatrix matrix = ConstrainedSystem.constrainInPlace(assemble(structure, all, rest), fixed)
                .matrix();
        try {
            Condensed reduced = solver.condense(matrix, kept, pushed);
            int[] nodes = seen.stream().mapToInt(n -> n).toArray();
            double[] arriving = new double[6 * nodes.length];
            boolean[] heldHere = new boolean[arriving.length];
            for (int i = 0; i < arriving.length; i++) {
                arriving[i] = load[at(nodes, i)];
                heldHere[i] = held[at(nodes, i)];
            }
            for (int i = 0; i < kept.length; i++) {
                arriving[6 * Arrays.binarySearch(nodes, border[i / 6]) + i % 6] = reduced.load()[i];
            }
            return new Surroundings(nodes, border, reduced.matrix(), arriving, reduced.give(), heldHere);
        } catch (tubwright.numerics.SingularMatrixException e) {
            throw StaticSolver.singular(structure, e);
        }
    }

    private static BitSet bits(int[] members) {
        BitSet bits = new BitSet();
        Arrays.stream(members).forEach(bits::set);
        return bits;
    }

    private static SymmetricMatrix assemble(Structure structure, int[][] all, int[] rest) {
        int[] start = new int[rest.length + 1];
        for (int k = 0; k < rest.length; k++) {
            start[k + 1] = start[k] + all[rest[k]].length;
        }
        int[] nodes = Arrays.stream(rest)
                .mapToObj(i -> all[i])
                .flatMapToInt(Arrays::stream)
                .toArray();
        ThreadLocal<ShellKernel> kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        int count = structure.mesh().elementCount();
        return new Assembler(NodeGraph.of(structure.nodeCount(), start, nodes).pattern(6), start, nodes)
                .assemble((k, target, offset) -> {
                    if (rest[k] < count) {
                        kernels.get().stiffness(rest[k], target, offset);
                    } else {
                        double[] matrix =
                                structure.members().get(rest[k] - count).matrix();
                        System.arraycopy(matrix, 0, target, offset, matrix.length);
                    }
                });
    }

    private static int at(int[] nodes, int i) {
        return 6 * nodes[i / 6] + i % 6;
    }
}
