// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupRules;
import tubwright.engine.trim.Lighten;
import tubwright.engine.trim.LightenProblem;
import tubwright.engine.trim.Lightened;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.Neighbours;
import tubwright.engine.trim.PlainGreedy;
import tubwright.engine.trim.Site;
import tubwright.engine.trim.Sites;
import tubwright.numerics.solver.Solvers;

/**
 * The lightest layup of the Larkspur cut into finer zones, for one stiffness and for two, beside plain greedy removal with
 * a solution after every step. Writes a Markdown section.
 */
public final class LightenComparison {
    /** Cores stocked, m. */
    private static final List<Double> CORES = List.of(0.010, 0.015, 0.020);

    /** What each row keeps of torsion, and of bending where that counts. */
    private static final List<double[]> ROWS =
            List.of(new double[] {0.9}, new double[] {0.8}, new double[] {0.7}, new double[] {0.8, 0.75});

    private LightenComparison() {}

    /**
     * @param arguments file to write, folder of the design, mesh size in mm, seconds for each search, {@code alone} to leave
     *     out greedy removal, the row of the table to make where not all are wanted
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/lighten.md");
        Path folder = Path.of(arguments.length > 1 ? arguments[1] : "examples/larkspur");
        double size = Double.parseDouble(arguments.length > 2 ? arguments[2] : "25") * 1e-3;
        double seconds = Double.parseDouble(arguments.length > 3 ? arguments[3] : "180");
        boolean greedy = arguments.length < 5 || !arguments[4].equals("alone");
        Tub tub = FinerZones.of(folder);
        Structure structure = Structure.of(tub, Study.mesh(tub, size));
        List<LoadedTub> tubs = new ArrayList<>();
        for (Case each : tub.cases()) {
            if (!(each instanceof Case.Loads)) {
                tubs.add(LoadedTub.solve(structure, each, Layup.of(tub), Solvers.best()));
            }
        }
        List<Site> sites = Sites.of(tubs.getFirst(), LayupRules.of(2, 1, CORES));
        int least = sites.stream().mapToInt(s -> s.candidates().size()).min().orElseThrow();
        int all = sites.stream().mapToInt(s -> s.candidates().size()).sum();
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            out.printf(
                    Locale.ROOT,
                    "%s, %d unknowns, %d zones, %d candidates, at least %d a zone, as designed %.3f kg.%n%n",
                    tub.name(),
                    structure.unknowns(),
                    sites.size(),
                    all,
                    least,
                    tubs.getFirst().mass(Layup.of(tub)));
            head(out);
            List<double[]> rows = ROWS;
            if (arguments.length > 5) {
                rows = List.of(ROWS.get(Integer.parseInt(arguments[5])));
            }
            for (double[] keep : rows) {
                List<Lighten.Target> targets = new ArrayList<>();
                for (int t = 0; t < keep.length; t++) {
                    LoadedTub each = tubs.get(t);
                    targets.add(new Lighten.Target(each, keep[t] * each.stiffness(each.compliance())));
                }
                // A problem of its own, so that no search profits from the one before.
                LightenProblem problem = LightenProblem.of(tubs.subList(0, keep.length), sites, Neighbours.FREE);
                Lightened found = Lighten.run(problem, targets, Lighten.Budget.ofSeconds(seconds), new Telling());
                String line = String.format(
                        Locale.ROOT,
                        "| %s | %.3f | %.3f | %.2f | %d | %d | %d | %s |",
                        words(keep),
                        found.mass(),
                        found.bound(),
                        100 * found.gap(),
                        found.solves(),
                        found.harvests(),
                        found.nodes(),
                        found.ended());
                if (greedy) {
                    PlainGreedy.Result plain = PlainGreedy.run(problem, targets);
                    line += String.format(Locale.ROOT, " %.3f | %d |", plain.mass(), plain.solves());
                }
                out.println(line);
                out.flush();
                System.out.println(line);
            }
        }
        tubs.forEach(LoadedTub::close);
    }

    private static String words(double[] keep) {
        String torsion = Math.round(100 * keep[0]) + " % of torsion";
        return keep.length == 1 ? torsion : torsion + ", " + Math.round(100 * keep[1]) + " % of bending";
    }

    private static void head(PrintWriter out) {
        out.println(
                "| kept | kg | bound, kg | gap, % | layups solved | solved to 1e-4 | nodes | ended | greedy, kg | layups solved |");
        out.println("|---|--:|--:|--:|--:|--:|--:|---|--:|--:|");
        out.flush();
    }

    private static final class Telling implements Lighten.Listener {
        private final long start = System.nanoTime();

        @Override
        public void stage(String words) {
            System.out.printf(Locale.ROOT, "%7.1f %s%n", (System.nanoTime() - start) * 1e-9, words);
        }

        @Override
        public void step(Lightened.Step s) {
            System.out.printf(
                    Locale.ROOT,
                    "%7.1f %3d %.4f %.4f %.2f%n",
                    s.seconds(),
                    s.solves(),
                    s.mass(),
                    s.bound(),
                    100 * (1 - s.bound() / s.mass()));
        }
    }
}
