// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.StudyAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.StudySummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.RunFolder;
import tubwright.desk.export.StudyCsv;
import tubwright.desk.export.StudyJson;
import tubwright.desk.report.StudyPage;
import tubwright.desk.work.StudyWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.fleet.Campaign;
import tubwright.fleet.findings.StudyRun;
import tubwright.fleet.plan.StudyPlan;

/** {@code tubwright study}: many designs of one tub. */
@Command(
        name = "study",
        description = {
            "Many designs of one tub: what DIR/studies/NAME.yaml varies is varied, what it reads is read of every design."
                    + " No design is computed twice; one that is no tub is kept with its reason, and the study goes on."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Ctrl-C ends it with what there is; the same command goes on from there. Writes DIR/runs/study-NAME (study.html,"
                    + " rows.csv, answer.json, inputs/), replacing the one before, and keeps every row in DIR/runs/rows.",
            "",
            "Examples:",
            "  tubwright study examples/larkspur",
            "  tubwright study examples/larkspur narrow"
        })
final class StudyCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private PlaceOption where;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "NAME",
            description = "The study; left out, the studies there are.")
    private Optional<String> name = Optional.empty();

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "Designs at a time on this machine; default: one on each core.")
    private int workers;

    @Option(
            names = "--master",
            paramLabel = "ADDRESS",
            description = "Send the designs to a cluster instead; needs the part of the program for it.")
    private Optional<String> master = Optional.empty();

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    StudyCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (workers < 0) {
            throw new UserMistake("--workers " + workers + ": at least one");
        }
        Path studies = where.folder().resolve(StudyPlan.FOLDER);
        if (name.isEmpty()) {
            List<String> names = StudyPlan.names(studies);
            names.forEach(terminal::print);
            if (names.isEmpty()) {
                terminal.print("There is no study in " + studies + "; docs/how-to/studies.md says how to write one.");
            }
            return ExitCode.DONE;
        }
        try (Interruption interruption = new Interruption();
                Progress progress = new Progress(terminal)) {
            progress.endsByItself();
            progress.stage("reading " + where.place());
            Design design = Design.read(where.place());
            StudyPlan plan = StudyPlan.read(design, name.get(), Version.text());
            StudyAnswer answer = StudyWork.run(
                    design,
                    plan,
                    new StudyWork.Request(workers, master),
                    Version.text(),
                    listener(progress, interruption));
            progress.stage("writing the page");
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(where.folder().resolve("runs").resolve("study-" + name.get())))) {
                String document = StudyJson.write(answer);
                folder.text(RunFolder.ANSWER, document);
                folder.text("rows.csv", StudyCsv.write(answer));
                folder.text("study.html", StudyPage.write(answer));
                Path root = design.file().toAbsolutePath().getParent();
                folder.copy(root, List.of(design.file(), studies.resolve(name.get() + ".yaml")), "inputs");
                folder.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    StudySummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, folder.target().resolve("study.html"), progress);
                }
                terminal.out().flush();
            }
            return answer.findings().complete() ? ExitCode.DONE : ExitCode.STOPPED;
        }
    }

    private StudyRun.Listener listener(Progress progress, Interruption interruption) {
        return new StudyRun.Listener() {
            private String variant = "";
            private double begun;

            @Override
            public void progress(String of, Campaign.Count count) {
                if (count.done() == 0) {
                    variant = of;
                    begun = progress.seconds();
                }
                progress.stage(StudyWork.words(variant, count, progress.seconds() - begun));
            }

            @Override
            public void stage(String words) {
                progress.stage(words);
            }

            @Override
            public boolean stop() {
                return interruption.asked();
            }
        };
    }
}
