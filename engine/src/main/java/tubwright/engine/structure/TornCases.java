// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import tubwright.numerics.Analysis;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.eigen.CriticalFactors;
import tubwright.numerics.eigen.EigenException;

/**
 * Load cases solved anew with elements torn out, and how far each is from buckling: (K′ + λ K_G′) φ = 0 with the geometric
 * stiffness of the load gone round the hole. Loads on what is gone act no more; a free body finds a new balance with the inertia of
 * what is left.
 *
 * @param cases one a case, in their order; those that could not be solved are left out
 * @param lost names of hardpoints that lose some of their bed
 */
public record TornCases(List<OneCase> cases, List<String> lost) {
    public TornCases {
        cases = List.copyOf(cases);
        lost = List.copyOf(lost);
    }

    /**
     * One case.
     *
     * @param solved the case
     * @param displacements with the elements gone, 6 per node of the whole structure
     * @param buckling lowest positive factor; infinite where it does not buckle, not a number where it was not found
     */
    public record OneCase(Case solved, double[] displacements, double buckling) {}

    /** Tears elements out of a structure and solves; with none torn out, the structure as it is. */
    public static TornCases of(Structure structure, List<Case> cases, int[] elements, DirectSolver solver) {
        Assembly assembly = new Assembly(structure);
        SymmetricMatrix stiffness = assembly.stiffness();
        Tearing tearing = new Tearing(structure, stiffness.diagonal());
        Torn torn = tearing.tear(elements);
        subtract(stiffness, torn.stiffness(), torn.nodes());
        boolean[] dead = new boolean[structure.unknowns()];
        for (int i = 0; i < torn.dead().length; i++) {
            dead[6 * torn.nodes()[i / 6] + i % 6] = torn.dead()[i];
        }
        Map<String, List<Case>> groups = new LinkedHashMap<>();
        for (Case each : cases) {
            groups.computeIfAbsent(Arrays.toString(CaseLoads.fixed(structure, each, dead)), _ -> new ArrayList<>())
                    .add(each);
        }
        OwnMass mass = new OwnMass(structure);
        Map<Case, OneCase> answers = new LinkedHashMap<>();
        try (Analysis analysis = solver.analyse(stiffness.pattern(), Definiteness.INDEFINITE)) {
            for (List<Case> group : groups.values()) {
                boolean[] fixed = CaseLoads.fixed(structure, group.getFirst(), dead);
                for (int i = 0; i < fixed.length; i++) {
                    fixed[i] |= dead[i];
                }
                SymmetricMatrix k =
                        ConstrainedSystem.constrain(stiffness, fixed).matrix();
                try (Factorisation factor = analysis.factorise(k)) {
                    for (Case each : group) {
                        double[] u = CaseLoads.loads(structure, each, mass);
                        if (factor.negativePivots() > 0) {
                            continue;
                        }
                        if (each instanceof Case.Loads l && l.free()) {
                            mass.motions().balanceWithout(dead, u);
                        }
                        for (int i = 0; i < u.length; i++) {
                            u[i] = fixed[i] ? 0 : u[i];
                        }
                        factor.solveInPlace(u);
                        SymmetricMatrix g = assembly.geometricStiffness(u);
                        subtract(g, tearing.geometric(torn.elements(), torn.nodes(), u), torn.nodes());
                        ConstrainedSystem.clearInPlace(g, fixed);
                        answers.put(each, new OneCase(each, u, lowest(k, g, analysis, factor)));
                    }
                } catch (SingularMatrixException e) {
                    // Something is left with a motion that nothing resists: the answer of the patch says so.
                    continue;
                }
            }
        }
        TreeSet<String> lost = new TreeSet<>();
        torn.parts().keySet().stream()
                .filter(p -> p.kind() == Part.Kind.HARDPOINT)
                .forEach(p -> lost.add(p.name()));
        return new TornCases(
                cases.stream().filter(answers::containsKey).map(answers::get).toList(), List.copyOf(lost));
    }

    private static double lowest(SymmetricMatrix k, SymmetricMatrix g, Analysis analysis, Factorisation factor) {
        try {
            double[] values =
                    CriticalFactors.of(k, g, 1, 0, analysis, factor).positive().values();
            return values.length == 0 ? Double.POSITIVE_INFINITY : values[0];
        } catch (EigenException e) {
            return Double.NaN;
        }
    }

    private static void subtract(SymmetricMatrix from, double[][] what, int[] nodes) {
        for (int i = 0; i < what.length; i++) {
            for (int j = 0; j < what.length; j++) {
                int row = 6 * nodes[i / 6] + i % 6;
                int column = 6 * nodes[j / 6] + j % 6;
                if (row <= column && what[i][j] != 0) {
                    from.add(row, column, -what[i][j]);
                }
            }
        }
    }
}
