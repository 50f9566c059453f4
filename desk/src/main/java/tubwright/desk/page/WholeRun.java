// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.export.RunFolder;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.text.Figures;
import tubwright.desk.work.EngineWorkbench;
import tubwright.desk.work.RunFiles;
import tubwright.desk.work.UserMistake;
import tubwright.desk.work.Workbench;

/** The run that the command line knows, started from the page: mesh error, report and run folder; it can be stopped. */
final class WholeRun {
    private final OpenProject project;
    private final Logbook logbook;
    private final Queue queue;
    private final String version;
    private final Consumer<Happening> hear;
    private RunView view = RunView.NONE;
    private boolean stop;
    private long start;

    WholeRun(OpenProject project, Logbook logbook, Queue queue, String version, Consumer<Happening> hear) {
        this.project = project;
        this.logbook = logbook;
        this.queue = queue;
        this.version = version;
        this.hear = hear;
    }

    synchronized RunView view() {
        return view.state() == RunView.State.WORKING
                ? new RunView(view.state(), view.words(), view.share(), seconds())
                : view;
    }

    /** Begins, unless one is under way. */
    RunView start() {
        synchronized (this) {
            if (view.state() == RunView.State.WORKING) {
                throw new UserMistake("a run is under way; stop it first");
            }
            stop = false;
            start = System.nanoTime();
        }
        set(RunView.State.WORKING, "waiting for its turn", 0);
        queue.add(Queue.Want.NOW, this::compute);
        return view();
    }

    /** Asks it to stop; it does before its next step. */
    synchronized RunView stop() {
        stop = true;
        return view();
    }

    private synchronized boolean stopping() {
        return stop;
    }

    private void compute() {
        String revision = "";
        try {
            checkStop();
            Workings workings = project.workings();
            revision = workings.revision();
            Workbench.Draft draft = EngineWorkbench.of(workings.design());
            String stamp = Instant.now().truncatedTo(ChronoUnit.SECONDS).toString();
            RunAnswer answer;
            try (RunFolder folder =
                    RunFolder.begin(project.folder().resolve("runs").resolve("latest"))) {
                answer = draft.run(
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
                                checkStop();
                                set(RunView.State.WORKING, words, (double) done / all);
                            }
                        });
                checkStop();
                set(RunView.State.WORKING, "writing the report", 0.99);
                RunFiles.write(folder, answer);
                // As it was computed, should the file have changed meanwhile.
                folder.text(
                        "inputs/" + workings.design().file().getFileName(),
                        workings.design().text());
                folder.finish();
            }
            workings.take(answer.variants(), stamp);
            logbook.add(Logbook.Kind.RUN, words(answer), revision);
            hear.accept(new Happening(Happening.What.LOGBOOK, revision, ""));
            set(RunView.State.DONE, "report and fields are in runs/latest", 1);
        } catch (CancellationException stopped) {
            set(RunView.State.STOPPED, "stopped; nothing was written", 0);
        } catch (IOException | RuntimeException fault) {
            set(RunView.State.FAILED, String.valueOf(fault.getMessage()), 0);
        }
    }

    private void checkStop() {
        if (stopping()) {
            throw new CancellationException("stopped");
        }
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

    private void set(RunView.State state, String words, double share) {
        synchronized (this) {
            view = new RunView(state, words, share, seconds());
        }
        hear.accept(new Happening(Happening.What.RUN, "", ""));
    }

    private double seconds() {
        return (System.nanoTime() - start) * 1e-9;
    }
}
