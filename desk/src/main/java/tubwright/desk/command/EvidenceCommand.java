// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.EvidenceAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.console.Wrap;
import tubwright.desk.export.RunFolder;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.report.EvidencePage;
import tubwright.desk.sheet.EvidenceBook;
import tubwright.desk.text.Figures;
import tubwright.desk.work.EvidenceWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;

/** {@code tubwright evidence}: the dossier that a sceptic can follow. */
@Command(
        name = "evidence",
        description = {
            "Gathers what a scrutineer may ask for into one dossier, as PDF and HTML: what it was made from, materials with their"
                    + " sources, how the program was checked, cases, margins, damage map, crush, rules clause by clause, tests"
                    + " done, and what is not covered."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/evidence (evidence.pdf, evidence.html, inputs/), replacing the one before. Holds no time of its"
                    + " making: the same inputs give the same bytes.",
            "",
            "Example:",
            "  tubwright evidence examples/larkspur --quick"
        })
final class EvidenceCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private PlaceOption where;

    @Option(names = "--size", paramLabel = "SIZE", description = "Diameter of the moving patch; default: 100 mm.")
    private String size = "100 mm";

    @Option(
            names = "--positions",
            paramLabel = "N",
            description = "How many places the moving patch visits; default: 400.")
    private int positions = 400;

    @Option(
            names = "--mesh",
            paramLabel = "SIZE",
            description = "Mesh size with its unit, e.g. \"20 mm\", instead of the design's own.")
    private Optional<String> mesh = Optional.empty();

    @Option(names = "--quick", description = "A mesh twice as coarse: an answer in a fraction of the time.")
    private boolean quick;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    EvidenceCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        double diameter =
                OptionText.positive("--size", size, Dimension.LENGTH, "a patch has a diameter greater than zero");
        if (positions < 1 || positions > 20_000) {
            throw new UserMistake("--positions " + positions + ": 1 to 20000 places can be visited");
        }
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + where.place());
            Design design = Design.read(where.place());
            Path folder = design.file().toAbsolutePath().getParent();
            try (RunFolder written =
                    RunFolder.begin(out.orElse(folder.resolve("runs").resolve("evidence")))) {
                EvidenceAnswer answer = EvidenceWork.gather(
                        design,
                        new EvidenceWork.Request(MeshSize.of(mesh), quick, diameter, positions, tests(folder)),
                        Version.text(),
                        progress::stage,
                        Thread.currentThread()::isInterrupted);
                progress.stage("writing the dossier");
                try (OutputStream pdf = written.open("evidence.pdf")) {
                    pdf.write(EvidenceBook.write(answer));
                }
                written.text("evidence.html", EvidencePage.write(answer));
                written.text(
                        RunFolder.ANSWER,
                        "{\"schemaVersion\": 1, \"answer\": \"evidence\", \"fingerprint\": \"" + answer.fingerprint()
                                + "\"}\n");
                List<Path> inputs = new ArrayList<>(List.of(design.file()));
                EvidenceWork.ruleFiles(design).forEach(f -> inputs.add(folder.resolve(f)));
                written.copy(folder, inputs, "inputs");
                written.finish();
                progress.done();
                terminal.print("");
                terminal.print(terminal.look(Look.STRONG, answer.tub()) + "  fingerprint " + answer.fingerprint());
                terminal.print("  " + answer.gaps().size() + " things are not covered: the dossier names them.");
                Wrap.lines(EvidenceAnswer.CAUTION, "  ", 78).forEach(terminal::print);
                terminal.print("");
                terminal.print("  "
                        + terminal.look(
                                Look.STRONG, Written.shown(written.target().resolve("evidence.pdf"))));
                terminal.print("  " + Written.shown(written.target().resolve("evidence.html")));
                terminal.print("  computed in " + Figures.elapsed(progress.seconds()));
            }
        }
        return ExitCode.DONE;
    }

    /** Lines of the project's logbook about tests, oldest first; none where it has no logbook. */
    private static List<EvidenceAnswer.Test> tests(Path folder) {
        Path runs = folder.resolve("runs");
        if (!Files.exists(runs.resolve("logbook.mv.db"))) {
            return List.of();
        }
        try (Logbook book = Logbook.open(runs)) {
            return book.entries().stream()
                    .filter(e -> e.kind() == Logbook.Kind.TEST)
                    .sorted(java.util.Comparator.comparingLong(Logbook.Entry::id))
                    .map(e -> new EvidenceAnswer.Test(e.stamp(), e.words()))
                    .toList();
        }
    }
}
