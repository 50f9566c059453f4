// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import tubwright.numerics.Analysis;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.eigen.CriticalFactors;
import tubwright.numerics.eigen.EigenPairs;

/**
 * Linear buckling of solved cases: factors λ at which (K + λ K_G) φ = 0, K_G the geometric stiffness of the case's own
 * stress state. Perfect shape, linear material, no change of geometry before buckling: real thin curved shells fail
 * below it and knock-downs belong to whoever uses the factor.
 */
public final class Buckling {
    private Buckling() {}

    /**
     * Lowest buckling factors of each case.
     *
     * @param structure what carries
     * @param solutions of {@link StaticSolver}, one for each case
     * @param count how many positive factors of each case
     * @param reversed how many negative factors of each case
     * @return in the order of the solutions
     */
    public static List<BucklingAnswer> solve(
            Structure structure, List<Solution> solutions, int count, int reversed, DirectSolver solver) {
        return solve(structure, solutions, count, reversed, solver, c -> {});
    }

    /**
     * As {@link #solve(Structure, List, int, int, DirectSolver)}.
     *
     * @param next hears of each case before it is begun, and may throw to stop
     */
    public static List<BucklingAnswer> solve(
            Structure structure,
            List<Solution> solutions,
            int count,
            int reversed,
            DirectSolver solver,
            Consumer<Case> next) {
        Assembly assembly = new Assembly(structure);
        SymmetricMatrix stiffness = assembly.stiffness();
        Map<String, List<Solution>> groups = new LinkedHashMap<>();
        for (Solution solution : solutions) {
            boolean[] fixed = CaseLoads.fixed(structure, solution.solved());
            groups.computeIfAbsent(held(fixed), k -> new ArrayList<>()).add(solution);
        }
        Map<Solution, BucklingAnswer> answers = new LinkedHashMap<>();
        try (Analysis analysis = solver.analyse(stiffness.pattern(), Definiteness.INDEFINITE)) {
            for (List<Solution> group : groups.values()) {
                boolean[] fixed = CaseLoads.fixed(structure, group.getFirst().solved());
                SymmetricMatrix k =
                        ConstrainedSystem.constrain(stiffness, fixed).matrix();
                try (Factorisation factor = analysis.factorise(k)) {
                    for (Solution solution : group) {
                        next.accept(solution.solved());
                        SymmetricMatrix g = assembly.geometricStiffness(solution.displacements());
                        ConstrainedSystem.clearInPlace(g, fixed);
                        CriticalFactors.Both both = CriticalFactors.of(k, g, count, reversed, analysis, factor);
                        answers.put(
                                solution,
                                new BucklingAnswer(
                                        solution.solved(),
                                        modes(structure, both.positive()),
                                        modes(structure, both.negative()),
                                        both.positive().count()));
                    }
                }
            }
        }
        return solutions.stream().map(answers::get).toList();
    }

    /** The held unknowns as a key. */
    private static String held(boolean[] fixed) {
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < fixed.length; i++) {
            if (fixed[i]) {
                key.append(i).append(' ');
            }
        }
        return key.toString();
    }

    private static List<BucklingMode> modes(Structure structure, EigenPairs pairs) {
        double[][] energies = StrainEnergy.ofParts(structure, pairs.vectors());
        List<BucklingMode> modes = new ArrayList<>();
        for (int k = 0; k < pairs.size(); k++) {
            double[] shape = pairs.vectors()[k].clone();
            double largest = 0;
            int at = 0;
            for (int n = 0; n < structure.nodeCount(); n++) {
                double movement = Math.hypot(Math.hypot(shape[6 * n], shape[6 * n + 1]), shape[6 * n + 2]);
                if (movement > largest) {
                    largest = movement;
                    at = n;
                }
            }
            for (int i = 0; i < shape.length && largest > 0; i++) {
                shape[i] /= largest;
            }
            double[] parts = energies[k];
            int most = StrainEnergy.most(parts);
            double[] place = Arrays.copyOfRange(structure.positions(), 3 * at, 3 * at + 3);
            modes.add(new BucklingMode(
                    pairs.values()[k],
                    shape,
                    most,
                    parts[most] / Arrays.stream(parts).sum(),
                    place,
                    pairs.errors()[k]));
        }
        return modes;
    }
}
