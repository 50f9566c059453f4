// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.engine.design.Design;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Assembly;
import tubwright.engine.structure.Buckling;
import tubwright.engine.structure.BucklingAnswer;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Modes;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.structure.Vibration;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/** Modes and buckling factors of a tub at one mesh size, beside one factorisation and beside a general library. */
final class StabilityRun {
    /** Cells about ourselves. */
    private static final int OURS = 8;

    private StabilityRun() {}

    /** @param arguments folder of the design, mesh size in mm, number of rounds (the last, with the library's, does not count for us), how many
     *     of each */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Tub tub = Design.read(Path.of(arguments[0])).asDesigned().tub();
        double size = Double.parseDouble(arguments[1]) / 1000;
        int rounds = Integer.parseInt(arguments[2]);
        int count = Integer.parseInt(arguments[3]);
        Structure structure = Structure.of(tub, Study.mesh(tub, size));
        List<Case> cases = three(tub);
        List<String> best = List.of();
        List<String> library = List.of();
        double least = Double.POSITIVE_INFINITY;
        for (int round = 0; round < rounds; round++) {
            long start = System.nanoTime();
            boolean last = round == rounds - 1;
            List<String> now = round(structure, cases, count, last);
            if (last) {
                library = now.subList(OURS, now.size());
            }
            if (ClockedSolver.since(start) < least && !last) {
                least = ClockedSolver.since(start);
                best = now;
            }
        }
        System.out.println(
                "RESULT " + structure.unknowns() + " " + String.join(" ", best) + " " + String.join(" ", library));
    }

    private static List<String> round(Structure structure, List<Case> cases, int count, boolean last)
            throws IOException, InterruptedException {
        List<String> cells = new ArrayList<>();
        StepTimes t = new StepTimes();
        List<Solution> solutions = StaticSolver.solve(structure, cases, Solvers.best(), t);
        ClockedSolver clock = new ClockedSolver(Solvers.best());
        long start = System.nanoTime();
        Vibration.free(structure, count, clock);
        double free = ClockedSolver.since(start);
        double factor = Math.min(t.factorisation, clock.factorisation / clock.factorisations);
        cells.add(seconds(factor));
        cells.add(seconds(free));
        cells.add(ratio(free / factor));
        clock = new ClockedSolver(Solvers.best());
        start = System.nanoTime();
        Modes held = Vibration.held(structure, cases.getFirst().hold(), count, clock);
        double time = ClockedSolver.since(start);
        cells.add(seconds(time));
        cells.add(ratio(time / factor));
        clock = new ClockedSolver(Solvers.best());
        start = System.nanoTime();
        List<BucklingAnswer> buckling = Buckling.solve(structure, solutions, count, 0, clock);
        double all = ClockedSolver.since(start);
        cells.add(seconds(all));
        cells.add(ratio(all / factor / cases.size()));
        cells.add(clock.factorisations + "/" + clock.vectors);
        if (last) {
            library(structure, solutions.getFirst(), count, held, buckling.getFirst(), cells);
        }
        return cells;
    }

    /** The held modes and the first case's factors by the general library. */
    private static void library(
            Structure structure, Solution solution, int count, Modes held, BucklingAnswer buckling, List<String> cells)
            throws IOException, InterruptedException {
        Assembly assembly = new Assembly(structure);
        boolean[] fixed = new boolean[structure.unknowns()];
        for (Case.Support support : solution.solved().hold()) {
            int node = structure.hardpointNode(support.hardpoint());
            for (int d = 0; d < 6; d++) {
                fixed[6 * node + d] |= support.directions()[d];
            }
        }
        SymmetricMatrix k =
                ConstrainedSystem.constrainInPlace(assembly.stiffness(), fixed).matrix();
        SymmetricMatrix m = assembly.mass();
        ConstrainedSystem.clearInPlace(m, fixed);
        SymmetricMatrix g = assembly.geometricStiffness(solution.displacements());
        ConstrainedSystem.clearInPlace(g, fixed);
        EigenLibrary.Answer other = EigenLibrary.run(k, m, g, count);
        double worst = other.values().length == 2 * count ? 0 : Double.NaN;
        for (int i = 0; i < count && worst >= 0; i++) {
            double frequency = Math.sqrt(other.values()[i]) / (2 * Math.PI);
            worst = Math.max(worst, Math.abs(frequency / held.modes().get(i).frequency() - 1));
            double factor = other.values()[count + i];
            worst = Math.max(worst, Math.abs(factor / buckling.modes().get(i).factor() - 1));
        }
        cells.add(seconds(other.factor()));
        cells.add(seconds(other.modes()));
        cells.add(seconds(other.buckling()));
        cells.add(String.format(Locale.ROOT, "%.0e", worst));
    }

    private static String seconds(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    private static String ratio(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /** Three cases on the supports of the torsion case. */
    private static List<Case> three(Tub tub) {
        Case.Torsion torsion = (Case.Torsion) tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .findFirst()
                .orElseThrow();
        List<Case> cases = new ArrayList<>();
        cases.add(torsion);
        cases.add(pushed("down", torsion, new double[] {0, 0, -1000}));
        cases.add(pushed("aft", torsion, new double[] {1000, 0, 0}));
        return cases;
    }

    static Case pushed(String name, Case.Torsion like, double[] force) {
        return new Case.Bending(name, like.hold(), like.loaded(), force, like.frontStation());
    }
}
