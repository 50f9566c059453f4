// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.numerics.Analysis;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/** Solves cases: one assembly and one elimination order, one factorisation for each different set of supports. */
public final class StaticSolver {
    private StaticSolver() {}

    /** Seconds spent, for the benchmark and the progress line. */
    public static final class Times {
        public double assembly;
        public double ordering;
        public double factorisation;
        public double solve;
        public long factorEntries;
    }

    /**
     * Solves.
     *
     * @param structure what carries
     * @param cases what is applied
     * @param solver which backend
     * @param times added to
     * @return one solution per case, in their order
     * @throws StructureException where supports leave a motion free or a part is not connected
     */
    public static List<Solution> solve(Structure structure, List<Case> cases, DirectSolver solver, Times times) {
        Map<Flags, List<Case>> groups = new LinkedHashMap<>();
        for (Case c : cases) {
            groups.computeIfAbsent(new Flags(CaseLoads.fixed(structure, c)), k -> new ArrayList<>())
                    .add(c);
        }
        for (Map.Entry<Flags, List<Case>> group : groups.entrySet()) {
            checkHeld(structure, group.getKey().fixed, group.getValue().getFirst());
        }
        long start = System.nanoTime();
        SymmetricMatrix stiffness = structure.assemble();
        times.assembly += since(start);
        start = System.nanoTime();
        Map<Case, Solution> solutions = new LinkedHashMap<>();
        try (Analysis analysis = solver.analyse(stiffness.pattern(), Definiteness.POSITIVE_DEFINITE)) {
            times.ordering += since(start);
            for (Map.Entry<Flags, List<Case>> group : groups.entrySet()) {
                boolean last = solutions.size() + group.getValue().size() == cases.size();
                boolean[] fixed = group.getKey().fixed;
                ConstrainedSystem system = last
                        ? ConstrainedSystem.constrainInPlace(stiffness, fixed)
                        : ConstrainedSystem.constrain(stiffness, fixed);
                start = System.nanoTime();
                try (Factorisation factor = analysis.factorise(system.matrix())) {
                    times.factorisation += since(start);
                    times.factorEntries = factor.factorEntries();
                    start = System.nanoTime();
                    for (Case c : group.getValue()) {
                        solutions.put(c, solve(structure, c, system, factor));
                    }
                    times.solve += since(start);
                } catch (SingularMatrixException e) {
                    throw singular(structure, e);
                }
            }
        }
        return cases.stream().map(solutions::get).toList();
    }

    private static Solution solve(Structure structure, Case c, ConstrainedSystem system, Factorisation factor) {
        double[] loads = CaseLoads.loads(structure, c);
        double[] u = system.solve(factor, loads);
        double work = 0;
        for (int i = 0; i < u.length; i++) {
            work += 0.5 * loads[i] * u[i];
        }
        double[] b = system.rightHandSide(loads, new double[loads.length]);
        return new Solution(c, u, system.reactions(u, loads), work, Factorisation.residual(system.matrix(), u, b));
    }

    private static void checkHeld(Structure structure, boolean[] fixed, Case c) {
        FreeMotion motion = new FreeMotion(structure.positions(), structure.groups());
        int main = motion.root(0);
        for (int n = 0; n < structure.nodeCount(); n++) {
            if (motion.root(n) == n) {
                List<String> free = motion.of(n, fixed);
                if (free.isEmpty()) {
                    continue;
                }
                if (n != main && free.size() == 6) {
                    throw new StructureException(
                            "nothing joins " + partAt(structure, n) + " to the rest of the tub",
                            "give the joint between them, or let it touch what it should be joined to");
                }
                throw new StructureException(
                        "case '" + c.name() + "' leaves a motion free: " + String.join("; ", free),
                        "hold more directions, or more hardpoints, in that case");
            }
        }
    }

    private static String partAt(Structure structure, int node) {
        if (node >= structure.mesh().nodeCount()) {
            return "hardpoint '"
                    + structure.hardpoints().get(node - structure.mesh().nodeCount()).name() + "'";
        }
        int[] nodes = structure.mesh().elementNodes();
        for (int i = 0; i < nodes.length; i++) {
            if (nodes[i] == node) {
                return "piece '" + structure.mesh().region(i / 4).piece() + "'";
            }
        }
        return "a loose node";
    }

    private static StructureException singular(Structure structure, SingularMatrixException e) {
        return new StructureException(
                "the structure has no stiffness at " + partAt(structure, e.unknown() / 6),
                "look for a laminate without stiffness, or a joint with none, at that place");
    }

    private static double since(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }

    /** A flag array compared by content. */
    private record Flags(boolean[] fixed) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Flags flags && Arrays.equals(fixed, flags.fixed);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(fixed);
        }
    }
}
