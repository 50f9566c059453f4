// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.export.AnswerJson;
import tubwright.desk.export.VtuWriter;
import tubwright.desk.report.Note;
import tubwright.desk.work.Gathering;
import tubwright.desk.work.Workbench;
import tubwright.engine.design.Design;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * The whole way from a design file to its report at one mesh size, in a process of its own, timed step by step; then the
 * same linear system handed straight to the native library. Prints one line of figures.
 */
final class TubRun {
    private TubRun() {}

    /** @param arguments folder of the design, mesh size in mm, number of rounds */
    public static void main(String[] arguments) throws IOException {
        Path place = Path.of(arguments[0]);
        double size = Double.parseDouble(arguments[1]) / 1000;
        int rounds = Integer.parseInt(arguments[2]);
        double[] best = null;
        int unknowns = 0;
        long entries = 0;
        Tub tub = null;
        for (int round = 0; round < rounds; round++) {
            long start = System.nanoTime();
            Design design = Design.read(place);
            double reading = since(start);
            tub = design.asDesigned().tub();
            Study study = new Study(Solvers.best(), List.of(size / tub.meshSize()), Progress.silent());
            List<VariantAnswer> answers = study.answer(List.of(tub));
            StepTimes t = study.times();
            start = System.nanoTime();
            report(design, answers);
            double report = since(start);
            unknowns = answers.getFirst()
                    .cases()
                    .getFirst()
                    .stiffness()
                    .samples()
                    .getFirst()
                    .unknowns();
            entries = t.factorEntries;
            double[] now = {
                reading, t.mesh, t.build, t.assembly, t.ordering, t.factorisation, t.solve, t.answers, report
            };
            best = best == null || sum(now) < sum(best) ? now : best;
        }
        double peak = SolverRun.peakGigabytes();
        double[] bare = bare(tub, size);
        StringBuilder line = new StringBuilder("RESULT " + unknowns);
        for (double seconds : best) {
            line.append(String.format(Locale.ROOT, " %.3f", seconds));
        }
        double ours = sum(best) - best[5] - best[6];
        line.append(String.format(
                Locale.ROOT,
                " %.3f %.2f %.3f %.3f %.3f %.1f %.2f",
                ours,
                ours / best[5],
                bare[0],
                bare[1],
                bare[2],
                entries / 1e6,
                peak));
        System.out.println(line);
    }

    private static void report(Design design, List<VariantAnswer> answers) throws IOException {
        Workbench.Request request = new Workbench.Request(
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                false,
                false,
                Optional.empty(),
                "2026-01-01T00:00:00Z",
                "benchmark");
        RunAnswer answer = Gathering.of(design, List.of(design.asDesigned()), answers, request);
        long length = Note.write(answer).length() + AnswerJson.write(answer).length();
        if (length == 0) {
            throw new IllegalStateException("empty report");
        }
        VtuWriter.write(answers.getFirst(), answer.layups(), OutputStream.nullOutputStream());
    }

    /** Order, factorise, solve by the library bare; not available without it. */
    private static double[] bare(Tub tub, double size) {
        if (Solvers.nativeIfPresent().isEmpty()) {
            return new double[] {Double.NaN, Double.NaN, Double.NaN};
        }
        Structure structure = Structure.of(tub, Study.mesh(tub, size));
        StaticSolver.LinearSystem system =
                StaticSolver.system(structure, tub.cases().getFirst());
        double[] best = null;
        for (int round = 0; round < 2; round++) {
            Contestant.Times t =
                    BareLibrary.run(system.stiffness().matrix(), system.loads().clone());
            double[] now = {t.order(), t.factor(), t.solve()};
            best = best == null || sum(now) < sum(best) ? now : best;
        }
        return best;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return sum;
    }

    private static double since(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }
}
