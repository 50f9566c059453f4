// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.SolvedCases;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tearing;
import tubwright.engine.structure.Torn;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SmallDense;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.multifrontal.LocalInverses;
import tubwright.numerics.solver.Solvers;

/** What a low-rank update says is what the damaged structure says when it is assembled, factorised and solved anew. */
class RedistributionTest {
    private static final double ALIKE = 1e-8;

    private final Structure structure = HitBox.model().structure();
    private final SolvedCases solved =
            SolvedCases.of(structure, HitBox.tub().cases(), Solvers.pureJava(), new StepTimes());
    private final Tearing tearing = new Tearing(structure, solved.diagonal());

    @Test
    void aTornPatchLeavesWhatAWholeSolutionSays() {
        List<Torn> torn = HitBox.model().patches().moving(0.2, 5).stream()
                .map(p -> tearing.tear(p.elements()))
                .toList();
        assertTrue(torn.stream()
                .anyMatch(t -> IntStream.range(0, t.dead().length).anyMatch(i -> t.dead()[i])));
        check(torn);
    }

    @Test
    void aWallTornOutAndACornerWithAnInsertToo() {
        Patches patches = HitBox.model().patches();
        check(List.of(
                tearing.tear(patches.whole("front").elements()),
                tearing.tear(patches.at("top front R", 0.15).elements())));
    }

    @Test
    void aWeakenedPatchToo() {
        Weakened[] left = structure.mesh().regions().stream()
                .map(r -> Weakened.of(HitBox.tub().laminate(r)))
                .toArray(Weakened[]::new);
        check(HitBox.model().patches().moving(0.25, 2).stream()
                .map(p -> tearing.soften(p.elements(), r -> left[r].stiffness()))
                .toList());
    }

    private void check(List<Torn> torn) {
        int[] everywhere = IntStream.range(0, structure.nodeCount()).toArray();
        for (SolvedCases.Base base : solved.bases()) {
            Redistribution way = new Redistribution(solved, base, true);
            List<LocalInverses.Place> places =
                    torn.stream().map(t -> Redistribution.place(t, everywhere)).toList();
            List<List<Redistribution.Outcome>> found = new ArrayList<>(Collections.nCopies(torn.size(), List.of()));
            LocalInverses.of(base.matrix())
                    .visit(places, (k, inverse) -> found.set(k, way.of(torn.get(k), places.get(k), inverse)));
            for (int k = 0; k < torn.size(); k++) {
                compare(base, torn.get(k), found.get(k));
            }
        }
    }

    private void compare(SolvedCases.Base base, Torn torn, List<Redistribution.Outcome> outcomes) {
        for (SolvedCases.Held held : base.held()) {
            for (int c : held.cases()) {
                Redistribution.Outcome outcome = outcomes.stream()
                        .filter(o -> o.index() == c)
                        .findFirst()
                        .orElseThrow();
                Case solvedCase = solved.solutions().get(c).solved();
                assertFalse(outcome.loose(), solvedCase.name());
                double[] anew = anew(torn, held, c);
                double size = Arrays.stream(anew).map(Math::abs).max().orElseThrow();
                double work = 0;
                for (int i = 0; i < anew.length; i++) {
                    int at = Arrays.binarySearch(torn.nodes(), i / 6);
                    if (at < 0 || !torn.dead()[6 * at + i % 6]) {
                        assertEquals(anew[i], outcome.movement()[i], ALIKE * size, solvedCase.name());
                        work += solved.loads().get(c)[i] * anew[i];
                    }
                }
                if (outcome.dropped().length == 0) {
                    double before = 2 * solved.solutions().get(c).work();
                    assertEquals(work - before, outcome.moreWork(), ALIKE * work, solvedCase.name());
                }
            }
        }
    }

    /** The rest assembled and solved by itself; a free body's loads brought into balance again by its own inertia. */
    private double[] anew(Torn torn, SolvedCases.Held held, int c) {
        SymmetricMatrix rest = structure.assemble();
        boolean[] fixed = held.fixed().clone();
        double[] load = solved.loads().get(c).clone();
        for (int i = 0; i < torn.dead().length; i++) {
            int row = 6 * torn.nodes()[i / 6] + i % 6;
            for (int j = i; j < torn.dead().length; j++) {
                if (torn.stiffness()[i][j] != 0) {
                    rest.add(row, 6 * torn.nodes()[j / 6] + j % 6, -torn.stiffness()[i][j]);
                }
            }
            if (torn.dead()[i]) {
                fixed[row] = true;
                load[row] = 0;
            }
        }
        if (held.relief().isPresent()) {
            balance(held.relief().get(), torn, load);
        }
        ConstrainedSystem system = ConstrainedSystem.constrainInPlace(rest, fixed);
        try (Factorisation factor = Solvers.pureJava().factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
            // The shells' stiffness spans ten decades: one step of refinement takes what that costs out of the
            // reference.
            double[] u = system.solve(factor, load);
            double[] left = system.matrix().multiply(u);
            double[] b = system.rightHandSide(load, new double[load.length]);
            for (int i = 0; i < left.length; i++) {
                left[i] = b[i] - left[i];
            }
            factor.solveInPlace(left);
            for (int i = 0; i < u.length; i++) {
                u[i] += left[i];
            }
            return u;
        }
    }

    private static void balance(SolvedCases.Relief relief, Torn torn, double[] load) {
        double[][] momenta = new double[6][];
        for (int k = 0; k < 6; k++) {
            momenta[k] = relief.momenta()[k].clone();
            for (int i = 0; i < torn.dead().length; i++) {
                if (torn.dead()[i]) {
                    momenta[k][6 * torn.nodes()[i / 6] + i % 6] = 0;
                }
            }
        }
        double[][] inertia = new double[6][6];
        double[][] pushed = new double[1][6];
        for (int j = 0; j < 6; j++) {
            double[] motion = relief.motions().get(j);
            for (int i = 0; i < load.length; i++) {
                pushed[0][j] += motion[i] * load[i];
                for (int k = 0; k < 6; k++) {
                    inertia[j][k] += motion[i] * momenta[k][i];
                }
            }
        }
        SmallDense.solve(inertia, pushed);
        for (int k = 0; k < 6; k++) {
            for (int i = 0; i < load.length; i++) {
                load[i] -= pushed[0][k] * momenta[k][i];
            }
        }
    }
}
