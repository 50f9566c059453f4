// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.response.Reserves;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Twenty cases on one factorisation, then every ply and sandwich check of every element in all of them. */
final class ManyCasesRun {
    private static final int CASES = 20;
    private static final int PLIES = 20;

    private ManyCasesRun() {}

    /** @param arguments folder of the design, mesh size in mm, number of rounds */
    public static void main(String[] arguments) throws IOException {
        Tub tub = Design.read(Path.of(arguments[0])).asDesigned().tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, Double.parseDouble(arguments[1]) / 1000));
        Case.Torsion torsion = (Case.Torsion) tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .findFirst()
                .orElseThrow();
        List<Case> cases = new ArrayList<>();
        for (int c = 0; c < CASES; c++) {
            double angle = 0.3 * c;
            cases.add(StabilityRun.pushed("case " + c, torsion, new double[] {
                1000 * Math.cos(angle), 1000 * Math.sin(angle), 500 * Math.cos(2 * angle)
            }));
        }
        Laminate[] laminates = structure.mesh().regions().stream()
                .map(r -> twentyPlies(tub.laminate(r)))
                .toArray(Laminate[]::new);
        double[] best = null;
        for (int round = 0; round < Integer.parseInt(arguments[2]); round++) {
            StepTimes one = new StepTimes();
            StaticSolver.solve(structure, cases.subList(0, 1), Solvers.best(), one);
            StepTimes all = new StepTimes();
            List<Solution> solutions = StaticSolver.solve(structure, cases, Solvers.best(), all);
            long start = System.nanoTime();
            Reserves.of(structure, laminates, solutions, tub.strength());
            double reserves = ClockedSolver.since(start);
            double[] now = {Math.min(one.factorisation, all.factorisation), one.solve, all.solve, reserves};
            best = best == null || now[2] + now[3] < best[2] + best[3] ? now : best;
        }
        System.out.printf(
                Locale.ROOT,
                "RESULT %d %d %.2f %.2f %.2f %.2f %.2f %.2f%n",
                structure.unknowns(),
                structure.mesh().elementCount(),
                best[0],
                best[1],
                best[2],
                (best[2] - best[1]) / best[0],
                best[3],
                SolverRun.peakGigabytes());
    }

    /** The laminate's own plies over and over until there are twenty, its core in the middle. */
    private static Laminate twentyPlies(Laminate laminate) {
        List<Layer> plies = laminate.layersWith(LayerRole.PLY);
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < PLIES; i++) {
            if (i == PLIES / 2) {
                layers.addAll(laminate.layersWith(LayerRole.CORE));
            }
            layers.add(plies.get(i % plies.size()));
        }
        return new Laminate(layers, laminate.reference());
    }
}
