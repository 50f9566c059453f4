// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import tubwright.numerics.Analysis;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/**
 * Solves cases on one assembly, one elimination order and, where it can, one factorisation.
 *
 * <p>The directions that every case holds are fixed in the matrix. What a case holds beyond those is held by forces: with
 * E the unit loads on those unknowns, u = K⁻¹(f + E λ) and Eᵀu = 0 give λ from a small dense system (force method). Where
 * the common supports leave a motion free, each set of supports is factorised by itself.
 */
public final class StaticSolver {
    private static final int AT_ONCE = 16;

    private StaticSolver() {}

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
    public static List<Solution> solve(Structure structure, List<Case> cases, DirectSolver solver, StepTimes times) {
        FreeMotion motion = new FreeMotion(structure.positions(), structure.groups());
        Map<Case, boolean[]> held = held(structure, cases, motion);
        held.forEach((c, fixed) -> checkHeld(structure, motion, fixed, c));
        Map<Flags, List<Case>> groups = new LinkedHashMap<>();
        boolean[] common = common(held.values());
        boolean shared = holds(structure, motion, common);
        held.forEach((c, fixed) -> groups.computeIfAbsent(new Flags(shared ? common : fixed), k -> new ArrayList<>())
                .add(c));

        long start = System.nanoTime();
        SymmetricMatrix stiffness = structure.assemble();
        times.assembly += since(start);
        start = System.nanoTime();
        Map<Case, Solution> solutions = new LinkedHashMap<>();
        OwnMass mass = new OwnMass(structure);
        try (Analysis analysis = solver.analyse(stiffness.pattern(), Definiteness.POSITIVE_DEFINITE)) {
            times.ordering += since(start);
            int left = groups.size();
            for (Map.Entry<Flags, List<Case>> group : groups.entrySet()) {
                boolean[] fixed = group.getKey().fixed;
                left--;
                ConstrainedSystem system = left == 0
                        ? ConstrainedSystem.constrainInPlace(stiffness, fixed)
                        : ConstrainedSystem.constrain(stiffness, fixed);
                start = System.nanoTime();
                try (Factorisation factor = analysis.factorise(system.matrix())) {
                    times.factorisation += since(start);
                    times.factorisations++;
                    times.factorEntries = factor.factorEntries();
                    start = System.nanoTime();
                    solve(group.getValue(), structure, held, mass, system, factor, solutions);
                    times.solve += since(start);
                } catch (SingularMatrixException e) {
                    throw singular(structure, e);
                }
            }
        }
        return cases.stream().map(solutions::get).toList();
    }

    /**
     * What each case holds. A free body may be held anywhere, its reactions being nil: where other cases are held, six of
     * the directions they have in common serve, so that one factorisation does for all.
     */
    static Map<Case, boolean[]> held(Structure structure, List<Case> cases, FreeMotion motion) {
        Map<Case, boolean[]> held = new LinkedHashMap<>();
        cases.forEach(c -> held.put(c, CaseLoads.fixed(structure, c)));
        List<boolean[]> supported =
                cases.stream().filter(c -> !free(c)).map(held::get).toList();
        if (!supported.isEmpty() && supported.size() < cases.size()) {
            motion.justEnough(common(supported))
                    .ifPresent(few -> cases.stream().filter(StaticSolver::free).forEach(c -> held.put(c, few)));
        }
        return held;
    }

    private static boolean free(Case c) {
        return c instanceof Case.Loads loads && loads.free();
    }

    /**
     * The linear system of one case as it is handed to the solver, for those who want to solve it by other means.
     *
     * @return stiffness with the case's supports fixed, and its loads
     */
    public static LinearSystem system(Structure structure, Case c) {
        boolean[] fixed = CaseLoads.fixed(structure, c);
        return new LinearSystem(
                ConstrainedSystem.constrainInPlace(structure.assemble(), fixed), CaseLoads.loads(structure, c));
    }

    /**
     * K u = f of one case.
     *
     * @param stiffness K, supports fixed
     * @param loads f, N and N·m
     */
    public record LinearSystem(ConstrainedSystem stiffness, double[] loads) {}

    /** The cases of one factorisation, {@value #AT_ONCE} at a time so that memory does not grow with their number. */
    private static void solve(
            List<Case> cases,
            Structure structure,
            Map<Case, boolean[]> held,
            OwnMass mass,
            ConstrainedSystem system,
            Factorisation factor,
            Map<Case, Solution> solutions) {
        Map<Flags, Influence> influences = new HashMap<>();
        SymmetricMatrix magnitudes = Factorisation.magnitudes(system.matrix());
        double[] nothing = new double[structure.unknowns()];
        for (int from = 0; from < cases.size(); from += AT_ONCE) {
            List<Case> some = cases.subList(from, Math.min(cases.size(), from + AT_ONCE));
            double[][] loads = new double[some.size()][];
            double[][] b = new double[some.size()][];
            for (int k = 0; k < loads.length; k++) {
                loads[k] = CaseLoads.loads(structure, some.get(k), mass);
                b[k] = system.rightHandSide(loads[k], nothing);
            }
            double[][] u = factor.solve(b);
            double[][] forces = new double[some.size()][];
            for (int k = 0; k < loads.length; k++) {
                boolean[] fixed = held.get(some.get(k));
                for (int i = 0; i < fixed.length; i++) {
                    u[k][i] = system.isFixed(i) ? 0 : u[k][i];
                }
                Influence influence =
                        influences.computeIfAbsent(new Flags(fixed), flags -> influence(flags.fixed, system, factor));
                forces[k] = influence.hold(u[k], b[k]);
            }
            double[] residuals = Factorisation.residuals(system.matrix(), magnitudes, u, b);
            for (int k = 0; k < loads.length; k++) {
                double work = 0;
                for (int i = 0; i < u[k].length; i++) {
                    work += 0.5 * loads[k][i] * u[k][i];
                }
                double[] reactions = system.reactions(u[k], loads[k]);
                int[] extra = influences.get(new Flags(held.get(some.get(k)))).extra;
                for (int j = 0; j < extra.length; j++) {
                    reactions[extra[j]] = forces[k][j];
                }
                solutions.put(some.get(k), new Solution(some.get(k), u[k], reactions, work, residuals[k]));
            }
        }
    }

    /** What unit loads do on the unknowns that one set of supports holds beyond those fixed in the matrix. */
    private static Influence influence(boolean[] held, ConstrainedSystem system, Factorisation factor) {
        int[] extra = IntStream.range(0, held.length)
                .filter(i -> held[i] && !system.isFixed(i))
                .toArray();
        double[][] fields = new double[extra.length][held.length];
        for (int k = 0; k < extra.length; k++) {
            fields[k][extra[k]] = 1;
        }
        factor.solveInPlace(fields);
        return new Influence(extra, fields);
    }

    private record Influence(int[] extra, double[][] fields) {
        /** Adds to u (and to the right-hand side b) what brings the extra unknowns to zero; returns the forces that do so. */
        double[] hold(double[] u, double[] b) {
            int n = extra.length;
            if (n == 0) {
                return new double[0];
            }
            double[][] flexibility = new double[n][n + 1];
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < n; k++) {
                    flexibility[i][k] = fields[k][extra[i]];
                }
                flexibility[i][n] = -u[extra[i]];
            }
            double[] forces = eliminate(flexibility);
            for (int k = 0; k < n; k++) {
                b[extra[k]] += forces[k];
                for (int i = 0; i < u.length; i++) {
                    u[i] += forces[k] * fields[k][i];
                }
            }
            for (int i : extra) {
                u[i] = 0;
            }
            return forces;
        }
    }

    /** Solves a small positive definite system given with its right-hand side as last column; overwrites it. */
    private static double[] eliminate(double[][] a) {
        int n = a.length;
        for (int p = 0; p < n; p++) {
            for (int i = p + 1; i < n; i++) {
                double factor = a[i][p] / a[p][p];
                for (int j = p; j <= n; j++) {
                    a[i][j] -= factor * a[p][j];
                }
            }
        }
        double[] x = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = a[i][n];
            for (int j = i + 1; j < n; j++) {
                sum -= a[i][j] * x[j];
            }
            x[i] = sum / a[i][i];
        }
        return x;
    }

    static boolean[] common(Iterable<boolean[]> all) {
        boolean[] common = null;
        for (boolean[] fixed : all) {
            if (common == null) {
                common = fixed.clone();
            }
            for (int i = 0; i < fixed.length; i++) {
                common[i] &= fixed[i];
            }
        }
        return common == null ? new boolean[0] : common;
    }

    static boolean holds(Structure structure, FreeMotion motion, boolean[] fixed) {
        for (int n = 0; n < structure.nodeCount(); n++) {
            if (motion.root(n) == n && !motion.of(n, fixed).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    /**
     * Sees whether every case finds what it holds, loads and presses on, and leaves no motion free. Solves nothing.
     *
     * @throws StructureException if not
     */
    public static void check(Structure structure, List<Case> cases) {
        FreeMotion motion = new FreeMotion(structure.positions(), structure.groups());
        for (Case each : cases) {
            checkHeld(structure, motion, CaseLoads.fixed(structure, each), each);
            CaseLoads.loads(structure, each);
        }
    }

    static void checkHeld(Structure structure, FreeMotion motion, boolean[] fixed, Case c) {
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
        if (node >= structure.mesh().nodeCount() + structure.hardpoints().size()) {
            return "'" + structure.fittingAt(node) + "'";
        }
        if (node >= structure.mesh().nodeCount()) {
            return "hardpoint '"
                    + structure
                            .hardpoints()
                            .get(node - structure.mesh().nodeCount())
                            .name() + "'";
        }
        int[] nodes = structure.mesh().elementNodes();
        for (int i = 0; i < nodes.length; i++) {
            if (nodes[i] == node) {
                return "piece '" + structure.mesh().region(i / 4).piece() + "'";
            }
        }
        return "a loose node";
    }

    static StructureException singular(Structure structure, SingularMatrixException e) {
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
