// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.solver.Solvers;

/** A bonded tube in two lengths with inserts: what every linear elastic solution must obey, whatever it is of. */
class SolverChecksTest {
    private static final Ladder LADDER = Ladder.of(Family.SOLVER, "Statics of elastic bodies", Mark.EXACT);
    private static final Structure TUBE = TestStructures.of(
            TestStructures.twoLengths(24, 32, true),
            List.of(new Joint("front / rear", 2e9, 2e9, 2e9, 2e5, .02, 0, 0, "bond")));

    private static Case.Bending push(String name, List<String> loaded, double... force) {
        return new Case.Bending(name, TestStructures.torsion().hold(), loaded, force, .5);
    }

    private static Solution solve(Structure structure, Case wanted, DirectSolver solver) {
        return StaticSolver.solve(structure, List.of(wanted), solver, new StepTimes())
                .getFirst();
    }

    private static Solution solve(Case wanted) {
        return solve(TUBE, wanted, Solvers.best());
    }

    @Test
    void bothSolversAgree() {
        double[] java =
                solve(TUBE, TestStructures.torsion(), Solvers.pureJava()).displacements();
        double most = 0;
        for (double v : java) {
            most = Math.max(most, Math.abs(v));
        }
        double[] best = solve(TestStructures.torsion()).displacements();
        double worst = 0;
        for (int i = 0; i < java.length; i++) {
            worst = Math.max(worst, Math.abs(java[i] - best[i]) / most);
        }
        LADDER.vanishes("Best solver here against pure Java, displacements", "24 × 32, bonded", worst, 1e-9);
    }

    @Test
    void reactionsBalanceLoads() {
        for (Case c : List.of(TestStructures.torsion(), push("push", List.of("front 0", "front 2"), 300, -200, 500))) {
            Solution s = solve(c);
            double[] loads = CaseLoads.loads(TUBE, c);
            double[] sum = new double[6];
            double size = 0;
            for (int n = 0; n < TUBE.nodeCount(); n++) {
                double[] f = new double[6];
                for (int d = 0; d < 6; d++) {
                    f[d] = loads[6 * n + d] + s.reactions()[6 * n + d];
                    sum[d] += f[d];
                    size = Math.max(size, Math.abs(loads[6 * n + d]));
                }
                double[] x = {TUBE.positions()[3 * n], TUBE.positions()[3 * n + 1], TUBE.positions()[3 * n + 2]};
                double[] m = Vectors.cross(x, new double[] {f[0], f[1], f[2]});
                for (int d = 0; d < 3; d++) {
                    sum[3 + d] += m[d];
                }
            }
            double worst = 0;
            for (double v : sum) {
                worst = Math.max(worst, Math.abs(v) / size);
            }
            LADDER.vanishes("Loads and reactions, force and moment, " + c.name(), "24 × 32, bonded", worst, 1e-8);
        }
    }

    @Test
    void energyIsHalfTheWork() {
        Solution s = solve(TestStructures.torsion());
        double[] elements = StrainEnergy.ofElements(TUBE, s.displacements());
        double sum = 0;
        for (double part : StrainEnergy.ofParts(TUBE, s.displacements(), elements)) {
            sum += part;
        }
        LADDER.vanishes(
                "Energy of all parts over half the work, less one", "24 × 32, bonded", sum / s.work() - 1, 1e-8);
    }

    @Test
    void whatOneLoadDoesAtAnotherIsReturned() {
        // Maxwell and Betti
        Case one = push("one", List.of("front 0"), 0, 0, 700);
        Case two = push("two", List.of("front 1", "front 3"), 100, 300, 0);
        double[] u = solve(one).displacements();
        double[] v = solve(two).displacements();
        double there = dot(CaseLoads.loads(TUBE, two), u);
        double back = dot(CaseLoads.loads(TUBE, one), v);
        LADDER.vanishes("Reciprocity, one load's work on the other", "24 × 32, bonded", there / back - 1, 1e-8);
    }

    @Test
    void twiceTheLoadMovesTwiceAsFarAndTwoLoadsAdd() {
        Case one = push("one", List.of("front 0"), 0, 0, 700);
        Case two = push("two", List.of("front 0"), 0, 0, 1400);
        double[] u = solve(one).displacements();
        double[] v = solve(two).displacements();
        double worst = 0;
        double most = 0;
        for (int i = 0; i < u.length; i++) {
            worst = Math.max(worst, Math.abs(v[i] - 2 * u[i]));
            most = Math.max(most, Math.abs(v[i]));
        }
        LADDER.vanishes("Twice the load, twice the movement", "24 × 32, bonded", worst / most, 1e-10);
    }

    @Test
    void tenTimesTheModulusMovesATenth() {
        Mesh mesh = TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 24, 32);
        Structure soft = TestStructures.of(mesh, List.of());
        double[][] stiff = new double[mesh.regions().size()][64];
        for (double[] c : stiff) {
            for (int i = 0; i < 64; i++) {
                c[i] = 10 * TestStructures.sheet()[i];
            }
        }
        double a = skinTwist(soft);
        double b = skinTwist(soft.withLaminates(stiff));
        // Inserts keep their stiffness; the twist of the tube between them is a tenth, but for how they share the load.
        LADDER.within(1e-3, "Twist of ten times the modulus", "24 × 32", a / 10, b);
    }

    private static double skinTwist(Structure structure) {
        double[] u = solve(structure, TestStructures.torsion(), Solvers.best()).displacements();
        return TestStructures.twist(structure, u, .5) - TestStructures.twist(structure, u, 1.0);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
