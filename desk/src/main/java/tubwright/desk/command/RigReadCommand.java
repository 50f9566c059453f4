// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tools.jackson.core.JacksonException;
import tubwright.desk.answer.RigAnswer;
import tubwright.desk.console.RigSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.export.RigJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.RigNote;
import tubwright.desk.work.UserMistake;
import tubwright.engine.rig.Finding;
import tubwright.engine.rig.Plausibility;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.ReadingsReader;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReduction;

/** {@code tubwright rig read}: reduces the readings of torsion tests. */
@Command(
        name = "read",
        description = {
            "Reduce the readings of a torsion test: gauge pairs to angles, bodily motion and held end removed, stiffness"
                    + " with its 95 %% interval by branch, loop, slop, twist line; doubtful gauges and outliers named. Give"
                    + " a test of the tub alone and one from hub to hub together and they are told apart."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/rig/latest (report.html, answer.json, inputs/). The twist line of DIR/runs/latest is drawn beside"
                    + " the measured one. How a file of readings is written: docs/how-to/read-a-torsion-test.md",
            "",
            "Examples:",
            "  tubwright rig read mytub readings.csv",
            "  tubwright rig read mytub tub.csv hubs.csv --drop-bed-in --name second-day"
        })
final class RigReadCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "Folder of the design.")
    private Path place;

    @Parameters(index = "1..*", arity = "1..*", paramLabel = "FILE", description = "Readings, one file a test.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--drop-bed-in", description = "Leave out the first cycle of each test.")
    private boolean dropBedIn;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the folder below DIR/rig; default: latest.")
    private String name = "latest";

    @Mixin
    private AnswerOptions printing;

    RigReadCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (!Files.isDirectory(place)) {
            throw new UserMistake(place + ": there is no such folder; the first word is the folder of the design, the"
                    + " readings follow");
        }
        if (!name.matches("[\\p{L}\\p{Nd}][\\p{L}\\p{Nd}._ -]*")) {
            throw new UserMistake("--name " + name + ": use letters, digits, points, hyphens and blanks");
        }
        List<TorsionReading> tests = new ArrayList<>();
        List<Path> found = new ArrayList<>();
        for (Path file : files) {
            Path there = Files.exists(file) ? file : place.resolve(file);
            if (!Files.exists(there)) {
                throw new NoSuchFileException(file.toString());
            }
            found.add(there);
            tests.add(TorsionReduction.of(ReadingsReader.read(file.toString(), text(there)), dropBedIn));
        }
        String title = place.toAbsolutePath().normalize().getFileName().toString();
        Optional<RigAnswer.Predicted> predicted = predicted();
        RigAnswer answer = new RigAnswer(
                title,
                Version.text(),
                tests.stream().map(t -> beside(predicted, t)).toList(),
                predicted);
        String document = RigJson.write(answer);
        try (RunFolder folder = RunFolder.begin(place.resolve("rig").resolve(name))) {
            folder.text("report.html", RigNote.write(answer));
            folder.text(RunFolder.ANSWER, document);
            for (Path each : found) {
                folder.copy(each.toAbsolutePath().getParent(), List.of(each), "inputs");
            }
            folder.finish();
        }
        Path design = place.resolve("tub.yaml");
        if (Files.exists(design)) {
            RigLog.add(
                    terminal,
                    place,
                    RigLog.revision(design),
                    answer.tests().stream().map(RigSummary::line).toList());
        }
        if (printing.json()) {
            terminal.out().print(document);
        } else {
            RigSummary.lines(terminal, answer).forEach(terminal::print);
            terminal.print("");
            terminal.print("  "
                    + terminal.look(
                            Look.STRONG,
                            place.resolve("rig")
                                    .resolve(name)
                                    .resolve("report.html")
                                    .toString()));
        }
        return ExitCode.DONE;
    }

    static String text(Path file) throws IOException {
        try {
            return Files.readString(file);
        } catch (MalformedInputException e) {
            throw new ReadingsException(file + ": is not text in UTF-8; save the table as CSV in UTF-8");
        }
    }

    /** A test of the tub with a word more where it lies beside the prediction as only a wrong unit can. */
    private static TorsionReading beside(Optional<RigAnswer.Predicted> predicted, TorsionReading test) {
        return predicted
                .filter(_ -> !test.readings().setup().hubToHub())
                .flatMap(p -> Plausibility.against(test.best().stiffness(), p.stiffness()))
                .map(words -> test.with(
                        new Finding(Finding.Kind.SET_UP, test.readings().source(), words)))
                .orElse(test);
    }

    /** The twist line of the last run; a run that cannot be read is told and passed over. */
    private Optional<RigAnswer.Predicted> predicted() throws IOException {
        Path last = place.resolve("runs").resolve("latest").resolve(RunFolder.ANSWER);
        if (!Files.exists(last)) {
            return Optional.empty();
        }
        try {
            return RigJson.predicted(Files.readString(last));
        } catch (JacksonException e) {
            terminal.say(last + " cannot be read, so nothing is predicted: run the design again");
            return Optional.empty();
        }
    }
}
