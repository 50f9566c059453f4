// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import tubwright.engine.design.Design;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.fleet.Blueprint;
import tubwright.fleet.Elsewhere;
import tubwright.fleet.Job;
import tubwright.fleet.LocalCores;
import tubwright.fleet.Patch;
import tubwright.fleet.Point;
import tubwright.fleet.Row;
import tubwright.fleet.RowStore;
import tubwright.fleet.StudyRunner;
import tubwright.fleet.findings.LayupDraws;
import tubwright.fleet.findings.StudyRun;
import tubwright.fleet.plan.StudyPlan;
import tubwright.numerics.Parallel;
import tubwright.numerics.solver.Solvers;

/**
 * How studies grow: the same shapes on one worker and several, here and on a cluster of processes on the loopback address;
 * what a design costs over a bare run of the same tub; and from what was measured, what a great study costs. Writes Markdown.
 */
final class StudyComparison {
    private static final int LAID_OUT = 2000;
    private static final int KEPT = 20_000;

    /** A drawn layup's study: name of it on the Larkspur. */
    private static final String SCATTER = "scatter";

    private StudyComparison() {}

    /**
     * @param arguments file to write, folder of the design, number of shapes, mesh size in mm (0 for the design's own), and,
     *     where a cluster shall be measured too, the cluster's folder
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/studies.md");
        Design design = Design.read(Path.of(arguments.length > 1 ? arguments[1] : "examples/larkspur"));
        int count = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 200;
        double size = arguments.length > 3 ? Double.parseDouble(arguments[3]) / 1000 : 0;
        Job job = new Job(
                design.text(),
                design.file().getFileName().toString(),
                Design.AS_DESIGNED,
                List.of("torsional stiffness", "mass"),
                size,
                "bench");
        Blueprint blueprint = new Blueprint(job);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            points.add(blueprint.point(List.of(dash(i, count))));
        }
        StudyClock.run(job, points.subList(0, Math.min(6, count)), new LocalCores()); // warms up
        // The same shapes, since not all meshes are equally hard to solve; read before the clock starts.
        List<Tub> tubs = IntStream.range(0, Math.clamp(count / 10, 1, 10))
                .map(i -> i * Math.max(1, count / 10))
                .mapToObj(i ->
                        blueprint.design(points.get(i).patches()).asDesigned().tub())
                .toList();
        double bare = Parallel.alone(() -> bare(tubs, size));
        List<StudyReport.Line> lines = new ArrayList<>();
        for (int workers = 1; workers <= Parallel.threads(); workers++) {
            lines.add(new StudyReport.Line(
                    "threads here", workers, count, StudyClock.run(job, points, new LocalCores(workers))));
        }
        bare = (bare + Parallel.alone(() -> bare(tubs, size))) / 2;
        if (arguments.length > 4) {
            lines.addAll(onACluster(Path.of(arguments[4]), job, points));
        }
        StudyReport report = new StudyReport(
                design.name(),
                size,
                bare,
                layout(blueprint),
                keeping(),
                lines,
                size == 0 && Files.exists(Path.of("examples/larkspur/studies/" + SCATTER + ".yaml"))
                        ? draws(design)
                        : Optional.empty());
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            report.write(out);
        }
        System.out.println("Written: " + file);
    }

    /** The dash a little further aft each time: another shape, much the same work. */
    private static Patch dash(int i, int count) {
        return new Patch(
                List.of("shape", "walls", "dash", "station"),
                String.format(Locale.ROOT, "%.4f mm", 930 + 40.0 * i / count));
    }

    private static List<StudyReport.Line> onACluster(Path folder, Job job, List<Point> points)
            throws IOException, InterruptedException {
        Elsewhere door = Elsewhere.found()
                .orElseThrow(() -> new IllegalArgumentException("the cluster's jars are not on the class path"));
        List<StudyReport.Line> lines = new ArrayList<>();
        for (int workers = 1; workers <= Parallel.threads(); workers++) {
            try (LoopbackCluster cluster = new LoopbackCluster(folder, workers);
                    StudyRunner runner = door.at(cluster.address())) {
                // Each worker's process warms up on its own.
                StudyClock.run(job, points.subList(0, Math.min(6 * workers, points.size())), runner);
                lines.add(new StudyReport.Line(
                        "workers of one core on loopback",
                        workers,
                        points.size(),
                        StudyClock.run(job, points, runner)));
            }
        }
        return lines;
    }

    /** Mesh, structure, solution, stiffness and mass of a tub that was read already, on average, s. */
    private static double bare(List<Tub> tubs, double size) {
        long start = System.nanoTime();
        for (Tub tub : tubs) {
            List<Case> cases =
                    tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
            Structure structure = Structure.of(tub, Study.mesh(tub, size > 0 ? size : tub.meshSize()));
            var solved = StaticSolver.solve(structure, cases, Solvers.best(), new StepTimes());
            if (!(Study.stiffness(structure, solved.getFirst())
                            * MassRollUp.of(structure).whole().mass()
                    > 0)) {
                throw new IllegalStateException("no stiffness");
            }
        }
        return ClockedSolver.since(start) / tubs.size();
    }

    /** To lay out a point and find its key, on one core, s. */
    private static double layout(Blueprint blueprint) {
        long start = 0;
        for (int i = -LAID_OUT / 4; i < LAID_OUT; i++) {
            if (i == 0) {
                start = System.nanoTime();
            }
            blueprint.point(List.of(dash(Math.abs(i), LAID_OUT)));
        }
        return ClockedSolver.since(start) / LAID_OUT;
    }

    /** To keep a row, s. */
    private static double keeping() throws IOException {
        Path folder = Files.createTempDirectory("rows");
        List<String> readings = List.of("torsional stiffness", "mass");
        long start = System.nanoTime();
        try (RowStore store = RowStore.open(folder)) {
            for (int i = 0; i < KEPT; i++) {
                store.add(Row.done(String.format("%064x", i), readings, new double[] {1.0 / (i + 1), i}));
            }
        }
        double seconds = ClockedSolver.since(start);
        StudyClock.delete(folder);
        return seconds / KEPT;
    }

    private static Optional<StudyReport.Draws> draws(Design design) throws IOException {
        StudyPlan plan = StudyPlan.read(design, SCATTER, "bench");
        Path folder = Files.createTempDirectory("rows");
        try (RowStore store = RowStore.open(folder)) {
            long start = System.nanoTime();
            Optional<LayupDraws> draws = StudyRun.run(design, plan, store, new LocalCores(), new StudyRun.Listener() {})
                    .variants()
                    .getFirst()
                    .layups();
            return draws.map(d -> new StudyReport.Draws(d.draws(), ClockedSolver.since(start), d.widest()));
        } finally {
            StudyClock.delete(folder);
        }
    }
}
