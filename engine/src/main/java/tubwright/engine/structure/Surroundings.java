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
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;

/**
 * What a structure does to a part of its shells and joints that is looked at by itself: all the rest condensed onto the nodes
 * it shares with that part (Guyan 1965; exact in statics). With I the unknowns of the rest alone and B the shared ones,
 * S = K_BB − K_BI K_II⁻¹ K_IB and the load f_B − K_BI K_II⁻¹ f_I.
 *
 * @param nodes of the part that the rest, a load or a support touches, rising
 * @param stiffness S, (6 m)² row-major
 * @param load per unknown of these nodes, N and N·m
 * @param give f_Iᵀ K_II⁻¹ f_I: twice the work of a unit of the load with the shared nodes held, J
 * @param fixed per unknown of these nodes: held by the case
 */
public record Surroundings(int[] nodes, double[] stiffness, double[] load, double give, boolean[] fixed) {
    private static final int AT_ONCE = 64;

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
        boolean[] held = CaseLoads.fixed(structure, wanted);
        double[] load = CaseLoads.loads(structure, wanted);
        TreeSet<Integer> shared = new TreeSet<>();
        TreeSet<String> lost = new TreeSet<>();
        boolean[] fixed = new boolean[structure.unknowns()];
        for (int n = 0; n < structure.nodeCount(); n++) {
            boolean touched = ofRest.get(n);
            for (int d = 0; d < 6; d++) {
                int i = 6 * n + d;
                touched |= held[i] || load[i] != 0;
                if (load[i] != 0 && !ofRest.get(n) && !ofPart.get(n)) {
                    lost.add(structure.nameAt(n).isEmpty() ? "a spot of skin" : structure.nameAt(n));
                }
                fixed[i] = held[i] || ofPart.get(n) || !ofRest.get(n);
            }
            if (touched && ofPart.get(n)) {
                shared.add(n);
            }
        }
        if (!lost.isEmpty()) {
            throw new StructureException(
                    "no path is left for the load at " + String.join(", ", lost) + " in case '" + wanted.name()
                            + "': it goes with what is torn out",
                    "take a case that does not load it, or tear out less");
        }
        int[] nodes = shared.stream().mapToInt(n -> n).toArray();
        ConstrainedSystem system = ConstrainedSystem.constrainInPlace(assemble(structure, all, rest), fixed);
        try (Factorisation factor = solver.factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
            return condense(system, factor, nodes, load, held);
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

    private static Surroundings condense(
            ConstrainedSystem system, Factorisation factor, int[] nodes, double[] load, boolean[] held) {
        int n = 6 * nodes.length;
        double[] u = system.solve(factor, load);
        double[] reactions = system.reactions(u, load);
        double[] reduced = new double[n];
        boolean[] fixed = new boolean[n];
        double give = 0;
        for (int i = 0; i < u.length; i++) {
            give += load[i] * u[i];
        }
        double[] stiffness = new double[n * n];
        for (int i = 0; i < n; i++) {
            reduced[i] = -reactions[at(nodes, i)];
            fixed[i] = held[at(nodes, i)];
        }
        ConstrainedSystem.Couplings couplings =
                system.couplings(IntStream.range(0, n).map(i -> at(nodes, i)).toArray());
        double[][] fields = new double[Math.min(n, AT_ONCE)][load.length];
        for (int from = 0; from < n; from += AT_ONCE) {
            int first = from;
            int count = Math.min(n - from, AT_ONCE);
            double[][] some = count == fields.length ? fields : Arrays.copyOf(fields, count);
            for (int j = 0; j < count; j++) {
                Arrays.fill(some[j], 0);
                couplings.subtract(from + j, some[j]);
            }
            factor.solveInPlace(some);
            IntStream.range(0, count).parallel().forEach(j -> {
                some[j][at(nodes, first + j)] = 1;
                for (int i = 0; i < n; i++) {
                    stiffness[i * n + first + j] = couplings.reaction(i, some[j]);
                }
            });
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double mean = 0.5 * (stiffness[i * n + j] + stiffness[j * n + i]);
                stiffness[i * n + j] = mean;
                stiffness[j * n + i] = mean;
            }
        }
        return new Surroundings(nodes, stiffness, reduced, give, fixed);
    }

    private static int at(int[] nodes, int i) {
        return 6 * nodes[i / 6] + i % 6;
    }
}
