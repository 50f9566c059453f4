// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.Design;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.StrainEnergy;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.solver.Solvers;

/** A whole single-seater of sandwich, walls, joints, inserts and openings: what statics asks of any elastic body. */
class WholeTubTest {
    private static final Ladder LADDER = Ladder.of(Family.SOLVER, "Statics of elastic bodies", Mark.EXACT);
    private static final String MESH = "Larkspur, 80 mm";
    private static final Tub TUB = example();
    private static final Structure STRUCTURE = Structure.of(TUB, Study.mesh(TUB, TUB.meshSize()));
    private static final Case.Torsion TORSION = (Case.Torsion) TUB.cases().stream()
            .filter(Case.Torsion.class::isInstance)
            .findFirst()
            .orElseThrow();

    private static Tub example() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("tubwright.cmd"))) {
            folder = folder.getParent();
        }
        Tub t = Design.read(folder.resolve("examples/larkspur")).asDesigned().tub();
        return new Tub(
                t.name(),
                t.variant(),
                t.construction(),
                t.shape(),
                t.layout(),
                .08,
                t.laminates(),
                t.patchPlies(),
                t.joints(),
                t.stiffeners(),
                t.hardpoints(),
                t.cases());
    }

    private static Solution solve(Case wanted, DirectSolver solver) {
        return StaticSolver.solve(STRUCTURE, List.of(wanted), solver, new StepTimes())
                .getFirst();
    }

    private static Case.Loads push(String hardpoint, double... force) {
        return new Case.Loads(
                "push on " + hardpoint,
                TORSION.hold(),
                List.of(new Case.Force(hardpoint, force, new double[3])),
                new double[3],
                "");
    }

    @Test
    void bothSolversAgree() {
        double[] java = solve(TORSION, Solvers.pureJava()).displacements();
        double[] best = solve(TORSION, Solvers.best()).displacements();
        double most = 0;
        double worst = 0;
        for (int i = 0; i < java.length; i++) {
            most = Math.max(most, Math.abs(java[i]));
            worst = Math.max(worst, Math.abs(java[i] - best[i]));
        }
        LADDER.vanishes("A whole tub: best solver here against pure Java, displacements", MESH, worst / most, 1e-8);
    }

    @Test
    void reactionsBalanceLoads() {
        double[] loads = StaticSolver.system(STRUCTURE, TORSION).loads();
        double[] r = solve(TORSION, Solvers.best()).reactions();
        for (int i = 0; i < r.length; i++) {
            r[i] += loads[i];
        }
        double[] x = STRUCTURE.positions();
        double[] force = new double[3];
        double[] moment = new double[3];
        double size = 0;
        for (int n = 0; n < STRUCTURE.nodeCount(); n++) {
            for (int d = 0; d < 3; d++) {
                int e = (d + 1) % 3;
                int f = (d + 2) % 3;
                force[d] += r[6 * n + d];
                moment[d] += r[6 * n + 3 + d] + x[3 * n + e] * r[6 * n + f] - x[3 * n + f] * r[6 * n + e];
                size = Math.max(size, Math.abs(loads[6 * n + d]));
            }
        }
        double worst = 0;
        for (int d = 0; d < 3; d++) {
            worst = Math.max(worst, Math.max(Math.abs(force[d]), Math.abs(moment[d])) / size);
        }
        LADDER.vanishes("A whole tub: loads and reactions, force and moment", MESH, worst, 1e-7);
    }

    @Test
    void energyOfAllPartsIsHalfTheWork() {
        Solution s = solve(TORSION, Solvers.best());
        double sum = 0;
        for (double part : StrainEnergy.ofParts(
                STRUCTURE, s.displacements(), StrainEnergy.ofElements(STRUCTURE, s.displacements()))) {
            sum += part;
        }
        LADDER.vanishes(
                "A whole tub: energy of all parts over half the work, less one", MESH, sum / s.work() - 1, 1e-7);
    }

    @Test
    void whatOneLoadDoesAtAnotherIsReturned() {
        // Maxwell and Betti
        String here = TORSION.loaded().getFirst();
        String there = TORSION.loaded().getLast();
        double[] f = {300, -200, 900};
        double[] g = {-150, 800, 250};
        double[] u = solve(push(here, f), Solvers.best()).displacements();
        double[] v = solve(push(there, g), Solvers.best()).displacements();
        double out = dot(g, u, STRUCTURE.hardpointNode(there));
        double back = dot(f, v, STRUCTURE.hardpointNode(here));
        LADDER.vanishes("A whole tub: reciprocity, one load's work on the other", MESH, out / back - 1, 1e-7);
    }

    private static double dot(double[] force, double[] u, int node) {
        return force[0] * u[6 * node] + force[1] * u[6 * node + 1] + force[2] * u[6 * node + 2];
    }
}
