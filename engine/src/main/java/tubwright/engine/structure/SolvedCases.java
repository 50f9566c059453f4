// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SmallDense;
import tubwright.numerics.SymmetricMatrix;

/**
 * Cases solved, with what local changes of the structure start from: the matrix that was factorised, which cases it serves,
 * and what they hold beyond it.
 *
 * @param structure what carries
 * @param solutions one a case
 * @param loads forces per unknown of each case, N and N·m
 * @param diagonal of the stiffness, nothing fixed
 * @param bases one, or one for each set of supports where these have too little in common
 */
public record SolvedCases(
        Structure structure, List<Solution> solutions, List<double[]> loads, double[] diagonal, List<Base> bases) {
    public SolvedCases {
        solutions = List.copyOf(solutions);
        loads = List.copyOf(loads);
        bases = List.copyOf(bases);
    }

    /**
     * A matrix and the sets of supports that go with it.
     *
     * @param matrix stiffness with the fixed unknowns decoupled
     * @param held sets of supports
     */
    public record Base(SymmetricMatrix matrix, List<Held> held) {
        public Base {
            held = List.copyOf(held);
        }
    }

    /**
     * A set of supports.
     *
     * @param fixed one flag per unknown
     * @param extra unknowns held beyond those fixed in the matrix
     * @param fields what unit loads on the extra ones do, nothing else held
     * @param cases indices of the cases so held
     * @param relief where they are cases of a free body
     */
    public record Held(boolean[] fixed, int[] extra, double[][] fields, List<Integer> cases, Optional<Relief> relief) {
        public Held {
            cases = List.copyOf(cases);
        }

        /** Flexibility between the extra unknowns, m/N and the like. */
        public double[][] flexibility() {
            double[][] s = new double[extra.length][extra.length];
            for (int i = 0; i < extra.length; i++) {
                for (int k = 0; k < extra.length; k++) {
                    s[i][k] = fields[k][extra[i]];
                }
            }
            return s;
        }

        /** Brings the extra unknowns of a field of the common matrix to nought by forces on them. */
        private void hold(double[] u) {
            if (extra.length == 0) {
                return;
            }
            double[][] forces = {Arrays.stream(extra).mapToDouble(i -> -u[i]).toArray()};
            SmallDense.solve(flexibility(), forces);
            for (int k = 0; k < extra.length; k++) {
                for (int i = 0; i < u.length; i++) {
                    u[i] += forces[0][k] * fields[k][i];
                }
            }
        }
    }

    /**
     * What keeps a free body in balance.
     *
     * @param motions its six rigid motions
     * @param momenta mass times each: the forces of a unit acceleration
     * @param fields what these forces do on the supports' matrix, extra holds included
     */
    public record Relief(List<double[]> motions, double[][] momenta, double[][] fields) {
        public Relief {
            motions = List.copyOf(motions);
        }
    }

    /**
     * Solves.
     *
     * @throws StructureException where supports leave a motion free or a part is not connected
     */
    public static SolvedCases of(Structure structure, List<Case> cases, DirectSolver solver, StepTimes times) {
        List<Solution> solutions = StaticSolver.solve(structure, cases, solver, times);
        FreeMotion motion = new FreeMotion(structure.positions(), structure.groups());
        Map<Case, boolean[]> held = StaticSolver.held(structure, cases, motion);
        boolean[] common = StaticSolver.common(held.values());
        boolean shared = StaticSolver.holds(structure, motion, common);
        SymmetricMatrix stiffness = structure.assemble();
        OwnMass mass = new OwnMass(structure);
        record Key(List<Integer> fixed, boolean free) {}
        Map<Key, List<Integer>> groups = new LinkedHashMap<>();
        for (int c = 0; c < cases.size(); c++) {
            boolean[] fixed = held.get(cases.get(c));
            List<Integer> which = IntStream.range(0, fixed.length)
                    .filter(i -> fixed[i])
                    .boxed()
                    .toList();
            boolean free = cases.get(c) instanceof Case.Loads l && l.free();
            groups.computeIfAbsent(new Key(which, free), _ -> new ArrayList<>()).add(c);
        }
        List<Base> bases = new ArrayList<>();
        List<List<Map.Entry<Key, List<Integer>>>> sets = shared
                ? List.of(List.copyOf(groups.entrySet()))
                : groups.entrySet().stream().map(List::of).toList();
        for (List<Map.Entry<Key, List<Integer>>> set : sets) {
            boolean[] fixed = common;
            if (!shared) {
                fixed = held.get(cases.get(set.getFirst().getValue().getFirst()));
            }
            SymmetricMatrix matrix =
                    ConstrainedSystem.constrain(stiffness, fixed).matrix();
            try (Factorisation factor = solver.factorise(matrix, Definiteness.POSITIVE_DEFINITE)) {
                List<Held> all = new ArrayList<>();
                for (Map.Entry<Key, List<Integer>> each : set) {
                    boolean[] own = held.get(cases.get(each.getValue().getFirst()));
                    all.add(held(
                            own, fixed, each.getValue(), factor, each.getKey().free() ? mass : null));
                }
                bases.add(new Base(matrix, all));
            }
        }
        List<double[]> loads =
                cases.stream().map(c -> CaseLoads.loads(structure, c, mass)).toList();
        return new SolvedCases(structure, solutions, loads, stiffness.diagonal(), bases);
    }

    private static Held held(
            boolean[] own, boolean[] common, List<Integer> cases, Factorisation factor, OwnMass freeMass) {
        int[] extra =
                IntStream.range(0, own.length).filter(i -> own[i] && !common[i]).toArray();
        double[][] fields = new double[extra.length][own.length];
        for (int k = 0; k < extra.length; k++) {
            fields[k][extra[k]] = 1;
        }
        factor.solveInPlace(fields);
        Held held = new Held(own, extra, fields, cases, Optional.empty());
        if (freeMass == null) {
            return held;
        }
        RigidMotions motions = freeMass.motions();
        double[][] accelerated = new double[6][];
        for (int k = 0; k < 6; k++) {
            accelerated[k] = motions.momenta()[k].clone();
            for (int i = 0; i < own.length; i++) {
                accelerated[k][i] = common[i] ? 0 : accelerated[k][i];
            }
        }
        factor.solveInPlace(accelerated);
        for (double[] each : accelerated) {
            held.hold(each);
        }
        return new Held(
                own, extra, fields, cases, Optional.of(new Relief(motions.motions(), motions.momenta(), accelerated)));
    }
}
