// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.export.RunFolder;
import tubwright.desk.text.Figures;
import tubwright.desk.work.EngineWorkbench;
import tubwright.desk.work.RunFiles;
import tubwright.desk.work.Workbench;

/** The run that the command line knows, started from the page: mesh error, report and run folder; it can be stopped. */
final class WholeRun {
    private final OpenProject project;
    private final StoredRuns stored;
    private final String version;
    private final Consumer<Happening> hear;
    private final Errand errand;

    WholeRun(OpenProject project, StoredRuns stored, Queue queue, String version, Consumer<Happening> hear) {
        this.project = project;
        this.stored = stored;
        this.version = version;
        this.hear = hear;
        errand = new Errand("a run", Happening.What.RUN, queue, hear);
    }

    RunView view() {
        return errand.view();
    }

    /** Begins, unless one is under way. */
    RunView start() {
        return errand.start(this::compute);
    }

    /** Asks it to stop; it does before its next step. */
    RunView stop() {
        return errand.stop();
    }

    private String compute(Errand.Steps steps) throws IOException {
        Workings workings = project.workings();
        String stamp = Instant.now().truncatedTo(ChronoUnit.SECONDS).toString();
        RunAnswer answer;
        try (RunFolder folder = RunFolder.begin(project.folder().resolve("runs").resolve("latest"))) {
            answer = EngineWorkbench.of(workings.design())
                    .run(
                            new Workbench.Request(
                                    List.of(),
                                    List.of(),
                                    OptionalDouble.empty(),
                                    false,
                                    false,
                                    Optional.empty(),
                                    stamp,
                                    version),
                            new Workbench.Listener() {
                                @Override
                                public void stage(String words) {
                                    step(words, 0, 1);
                                }

                                @Override
                                public void step(String words, int done, int all) {
                                    steps.step(words, (double) done / all);
                                }
                            });
            steps.step("writing the report", 0.99);
            RunFiles.write(folder, answer);
            // As it was computed, should the file have changed meanwhile.
            folder.text(
                    "inputs/" + workings.design().file().getFileName(),
                    workings.design().text());
            folder.finish();
        }
        List<AnswerView> taken = workings.take(answer.variants(), stamp);
        stored.keep(words(answer), workings.revision(), taken, workings.design().text());
        hear.accept(new Happening(Happening.What.LOGBOOK, workings.revision(), ""));
        return "report and fields are in runs/latest";
    }

    private static String words(RunAnswer answer) {
        StringBuilder words = new StringBuilder();
        answer.variants().forEach(v -> {
            words.append(words.isEmpty() ? "" : "; ").append(v.variant()).append(": ");
            Reading.torsion(v)
                    .ifPresent(c -> words.append(Figures.plusMinus(
                                    StiffnessUnit.TORSION.of(c.stiffness().value()),
                                    StiffnessUnit.TORSION.of(c.stiffness().error()),
                                    Figures.NARROW_SPACE))
                            .append(" N·m/deg, "));
            words.append(Figures.fixed(v.mass().whole().mass(), 2, "")).append(" kg");
        });
        return words.toString();
    }
}
