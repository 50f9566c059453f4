// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.SmallDense;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/** What tearing takes is what a structure built without the torn shells and what sat on them lacks. */
class TearingTest {
    private final Mesh mesh = TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 10, 16);
    private final Structure whole = TestStructures.of(mesh, List.of());
    private final SymmetricMatrix stiffness = whole.assemble();
    private final Tearing tearing = new Tearing(whole, stiffness.diagonal());

    @Test
    void tornShellsTakeTheirStiffnessAndTheNodesInsideThem() {
        int[] elements = {16 * 4 + 3, 16 * 4 + 4, 16 * 5 + 3, 16 * 5 + 4};
        Torn torn = tearing.tear(elements);
        assertEquals(9, torn.nodes().length);
        assertEquals(6, IntStream.range(0, 54).filter(i -> torn.dead()[i]).count());
        assertTrue(torn.parts().isEmpty());
        compare(torn, List.of());
    }

    @Test
    void anInsertLosesTheBedThatLiesOnTornShells() {
        Hardpoint front = whole.hardpoints().getFirst();
        int[] under = IntStream.range(0, mesh.elementCount())
                .filter(e -> whole.members().stream()
                        .anyMatch(m -> m.owner() == 1
                                && Arrays.equals(
                                        Arrays.copyOf(m.nodes(), 4),
                                        Arrays.copyOfRange(mesh.elementNodes(), 4 * e, 4 * e + 4))))
                .toArray();
        Torn all = tearing.tear(under);
        assertEquals(1, all.parts().get(new Part(Part.Kind.HARDPOINT, front.name())), 1e-12);
        int insert = Arrays.binarySearch(all.nodes(), mesh.nodeCount());
        assertTrue(insert >= 0 && all.dead()[6 * insert] && all.dead()[6 * insert + 5]);
        compare(all, whole.members().stream().filter(m -> m.owner() == 1).toList());
    }

    @Test
    void theShellsBesideAHoleSurroundIt() {
        assertEquals(8, tearing.beside(new int[] {16 * 4 + 3}).length);
    }

    @Test
    void aTornTubeMovesAndBucklesAsOneBuiltWithoutTheShells() {
        int[] hole = {16 * 4 + 3};
        Case torsion = TestStructures.torsion();
        TornCases.OneCase torn = TornCases.of(whole, List.of(torsion), hole, Solvers.pureJava())
                .cases()
                .getFirst();
        Structure rest = without(hole, List.of());
        List<Solution> solved = StaticSolver.solve(rest, List.of(torsion), Solvers.pureJava(), new StepTimes());
        double[] u = solved.getFirst().displacements();
        double size = Arrays.stream(u).map(Math::abs).max().orElseThrow();
        assertArrayEquals(u, torn.displacements(), 1e-8 * size);
        double buckling = Buckling.solve(rest, solved, 1, 0, Solvers.pureJava())
                .getFirst()
                .modes()
                .getFirst()
                .factor();
        assertEquals(buckling, torn.buckling(), 1e-6 * buckling);
        double sound = TornCases.of(whole, List.of(torsion), new int[0], Solvers.pureJava())
                .cases()
                .getFirst()
                .buckling();
        assertTrue(torn.buckling() < sound, torn.buckling() + " with the hole, " + sound + " without");
    }

    /** Every node has weight, so that a hole with a node inside it always takes some load of a free body away. */
    @Test
    void aFreeTubThatLosesOnlyWeightFindsANewBalanceAndStillBuckles() {
        int[] hole = {16 * 4 + 3, 16 * 4 + 4, 16 * 5 + 3, 16 * 5 + 4};
        Torn torn = tearing.tear(hole);
        double[] none = new double[3];
        Case.Loads thrown = new Case.Loads(
                "thrown",
                List.of(),
                List.of(
                        new Case.Force("front 1", new double[] {100, 200, -900}, none),
                        new Case.Force("rear 2", new double[] {0, 50, 700}, none)),
                List.of(),
                none,
                List.of(),
                "",
                List.of());
        TornCases.OneCase found = TornCases.of(whole, List.of(thrown), hole, Solvers.pureJava())
                .cases()
                .getFirst();
        assertTrue(found.buckling() > 0 && Double.isFinite(found.buckling()));
        // What the rest feels beyond its old loads is the inertia of a rigid motion, at the held insert too: no
        // reaction.
        double[] felt = stiffness.multiply(found.displacements());
        double[] load = CaseLoads.loads(whole, thrown);
        boolean[] dead = new boolean[felt.length];
        for (int i = 0; i < torn.dead().length; i++) {
            int row = 6 * torn.nodes()[i / 6] + i % 6;
            dead[row] = torn.dead()[i];
            for (int j = 0; j < torn.dead().length; j++) {
                felt[row] -= torn.stiffness()[i][j] * found.displacements()[6 * torn.nodes()[j / 6] + j % 6];
            }
        }
        RigidMotions motions = new OwnMass(whole).motions();
        double[][] inertia = new double[6][6];
        double[][] more = new double[1][6];
        for (int i = 0; i < felt.length; i++) {
            for (int j = 0; j < 6 && !dead[i]; j++) {
                more[0][j] += motions.motions().get(j)[i] * (felt[i] - load[i]);
                for (int k = 0; k < 6; k++) {
                    inertia[j][k] += motions.motions().get(j)[i] * motions.momenta()[k][i];
                }
            }
        }
        SmallDense.solve(inertia, more);
        for (int i = 0; i < felt.length; i++) {
            double rigid = load[i];
            for (int k = 0; k < 6; k++) {
                rigid += more[0][k] * motions.momenta()[k][i];
            }
            assertEquals(dead[i] ? 0 : rigid, dead[i] ? 0 : felt[i], 1e-4);
        }
    }

    /** K of the whole less K of the same tube without them. */
    private void compare(Torn torn, List<Member> members) {
        SymmetricMatrix rest = without(torn.elements(), members).assemble();
        double scale = Arrays.stream(stiffness.diagonal()).max().orElseThrow();
        double[][] taken = new double[whole.unknowns()][];
        for (int i = 0; i < torn.dead().length; i++) {
            double[] row = new double[whole.unknowns()];
            for (int j = 0; j < torn.dead().length; j++) {
                row[6 * torn.nodes()[j / 6] + j % 6] = torn.stiffness()[i][j];
            }
            taken[6 * torn.nodes()[i / 6] + i % 6] = row;
        }
        for (int i = 0; i < whole.unknowns(); i++) {
            for (int j = 0; j < whole.unknowns(); j++) {
                double lost = taken[i] == null ? 0 : taken[i][j];
                assertEquals(lost, stiffness.get(i, j) - rest.get(i, j), 1e-12 * scale);
            }
        }
    }

    private Structure without(int[] elements, List<Member> members) {
        int[] left = IntStream.range(0, mesh.elementCount())
                .filter(e -> Arrays.binarySearch(elements, e) < 0)
                .toArray();
        Mesh rest = new Mesh(
                mesh.nodes(),
                Arrays.stream(left)
                        .flatMap(e -> Arrays.stream(mesh.elementNodes(), 4 * e, 4 * e + 4))
                        .toArray(),
                Arrays.stream(left)
                        .boxed()
                        .flatMapToDouble(e -> Arrays.stream(mesh.cornerNormals(), 12 * e, 12 * e + 12))
                        .toArray(),
                Arrays.stream(left)
                        .boxed()
                        .flatMapToDouble(e -> Arrays.stream(mesh.referenceDirections(), 3 * e, 3 * e + 3))
                        .toArray(),
                Arrays.stream(left).map(e -> mesh.elementRegions()[e]).toArray(),
                mesh.regions(),
                mesh.lines());
        return new Structure(
                rest,
                new double[][] {whole.laminate(0)},
                whole.parts(),
                new int[1],
                whole.hardpoints(),
                whole.members().stream().filter(m -> !members.contains(m)).toList(),
                new Structure.Masses(new double[1], new double[1], new double[1], List.of()),
                List.of());
    }
}
