// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tubwright.engine.design.Design;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.fleet.Blueprint;
import tubwright.fleet.Campaign;
import tubwright.fleet.Job;
import tubwright.fleet.LocalCores;
import tubwright.fleet.Patch;
import tubwright.fleet.Point;
import tubwright.fleet.RowStore;
import tubwright.fleet.findings.LayupDraws;
import tubwright.fleet.findings.StudyRun;
import tubwright.fleet.plan.StudyPlan;
import tubwright.numerics.Parallel;
import tubwright.numerics.solver.Solvers;

/**
 * Throughput of studies: one worker and several on the same shapes, what a design costs over a bare run of the same tub,
 * and how long drawn layups take.
 */
final class StudyComparison {
    private static final int BARE = 6;

    private StudyComparison() {}

    /**
     * @param arguments folder of the design, number of shapes, mesh size in mm (0 for the design's own), then name of a
     *     study with a layup scatter, if any
     */
    public static void main(String[] arguments) throws IOException {
        Design design = Design.read(Path.of(arguments[0]));
        int count = Integer.parseInt(arguments[1]);
        double size = Double.parseDouble(arguments[2]) / 1000;
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
            points.add(blueprint.point(List.of(new Patch(
                    List.of("shape", "walls", "dash", "station"),
                    String.format(Locale.ROOT, "%.4f mm", 930 + 40.0 * i / count)))));
        }
        seconds(job, points.subList(0, Math.min(4, count)), 2); // warms up
        double bare = Parallel.alone(() -> bare(design.asDesigned().tub(), size));
        System.out.printf(Locale.ROOT, "bare run on one thread: %.3f s%n", bare);
        double one = 0;
        for (int workers = 1; workers <= Parallel.threads(); workers++) {
            double each = seconds(job, points, workers);
            one = workers == 1 ? each : one;
            System.out.printf(
                    Locale.ROOT,
                    "%d designs on %d workers: %.1f s, %.3f s a design, %.2f times one worker, %+.1f %% over bare%n",
                    count,
                    workers,
                    each,
                    each / count,
                    one / each,
                    100 * (each * workers / count / bare - 1));
        }
        if (arguments.length > 3) {
            draws(design, arguments[3]);
        }
    }

    private static double seconds(Job job, List<Point> points, int workers) {
        try {
            Path folder = Files.createTempDirectory("rows");
            long start = System.nanoTime();
            try (RowStore store = RowStore.open(folder)) {
                Campaign.Outcome outcome =
                        new Campaign(store, new LocalCores(workers)).run(job, points, new Campaign.Listener() {});
                if (outcome.count().failed() > 0) {
                    throw new IllegalStateException(outcome.count().failed() + " designs failed");
                }
            }
            double seconds = ClockedSolver.since(start);
            Files.delete(folder.resolve(RowStore.FILE_NAME));
            Files.delete(folder);
            return seconds;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Mesh, structure, solution, stiffness and mass of a tub that was read already. */
    private static double bare(Tub tub, double size) {
        List<Case> cases =
                tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
        long start = System.nanoTime();
        for (int i = 0; i < BARE; i++) {
            Structure structure = Structure.of(tub, Study.mesh(tub, size > 0 ? size : tub.meshSize()));
            var solved = StaticSolver.solve(structure, cases, Solvers.best(), new StepTimes());
            if (!(Study.stiffness(structure, solved.getFirst())
                            * MassRollUp.of(structure).whole().mass()
                    > 0)) {
                throw new IllegalStateException("no stiffness");
            }
        }
        return ClockedSolver.since(start) / BARE;
    }

    private static void draws(Design design, String study) throws IOException {
        StudyPlan plan = StudyPlan.read(design, study, "bench");
        Path folder = Files.createTempDirectory("rows");
        try (RowStore store = RowStore.open(folder)) {
            long start = System.nanoTime();
            Optional<LayupDraws> draws = StudyRun.run(design, plan, store, new LocalCores(), new StudyRun.Listener() {})
                    .variants()
                    .getFirst()
                    .layups();
            draws.ifPresent(d -> System.out.printf(
                    Locale.ROOT,
                    "%d layups drawn in %.1f s, bounds at most %.2f %% apart%n",
                    d.draws(),
                    ClockedSolver.since(start),
                    100 * d.widest()));
        }
        Files.delete(folder.resolve(RowStore.FILE_NAME));
        Files.delete(folder);
    }
}
