// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.RigExplainSummary;
import tubwright.desk.console.RigExplainWords;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.KeptPrediction;
import tubwright.desk.export.RigWorkJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.export.ScoredPrediction;
import tubwright.desk.report.RigExplainNote;
import tubwright.desk.work.RigWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.rig.ReadingsReader;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReduction;

/** {@code tubwright rig explain}: why the tub twists otherwise than predicted. */
@Command(
        name = "explain",
        description = {
            "Explain a torsion test by the model: which stretch twists otherwise than designed, which material or joint is"
                    + " behind it and how surely, what the test can and cannot tell, and how stiff the tub is as built."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/rig/explained (report.html, answer.json, inputs/). With --keep what was learnt goes to"
                    + " DIR/rig/calibration.json, for \"rig predict\".",
            "",
            "Examples:",
            "  tubwright rig explain mytub readings.csv",
            "  tubwright rig explain mytub readings.csv --drop-bed-in --keep",
            "  tubwright rig explain mytub readings.csv --built 1",
            "  tubwright rig explain mytub readings.csv --doubt \"joint seat back edge=1.5\""
        })
final class RigExplainCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Parameters(index = "1", paramLabel = "FILE", description = "Readings of the torsion test of the tub alone.")
    private Path file;

    @Option(names = "--drop-bed-in", description = "Leave out the first cycle.")
    private boolean dropBedIn;

    @Option(names = "--keep", description = "Keep what was learnt as the project's calibration.")
    private boolean keep;

    @Option(
            names = "--doubt",
            paramLabel = "NAME=SPREAD",
            description =
                    "Standard deviation of ln(factor) of one stiffness before the test, instead of the usual one.")
    private Map<String, String> doubts = new HashMap<>();

    @Mixin
    private BuiltOption built = new BuiltOption();

    @Mixin
    private AnswerOptions printing;

    RigExplainCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        TrimWork.Request request = options.request();
        Map<String, Double> spreads = spreads();
        Path there = Files.exists(file) ? file : options.folder().resolve(file);
        if (!Files.exists(there)) {
            throw new NoSuchFileException(file.toString());
        }
        TorsionReading reading =
                TorsionReduction.of(ReadingsReader.read(file.toString(), RigReadCommand.text(there)), dropBedIn);
        if (reading.readings().setup().hubToHub()) {
            throw new UserMistake(
                    file + " is a test from hub to hub, suspension and all; give the test of the tub alone."
                            + "\n    \"rig read\" with both files tells tub and suspension apart");
        }
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            Path home = options.folder();
            try (RunFolder folder = RunFolder.begin(home.resolve("rig").resolve("explained"))) {
                RigExplainAnswer answer = RigWork.explain(
                        design,
                        request,
                        reading,
                        spreads,
                        KeptPrediction.all(home),
                        built.read(home),
                        RunCommand.stamp(),
                        Version.text(),
                        progress::stage,
                        Thread::interrupted);
                if (keep) {
                    answer = RigWork.kept(design, answer, home);
                }
                String document = RigWorkJson.write(answer);
                folder.text(RunFolder.ANSWER, document);
                folder.text("report.html", RigExplainNote.write(answer));
                folder.copy(design.file().toAbsolutePath().getParent(), List.of(design.file()), "inputs");
                folder.copy(there.toAbsolutePath().getParent(), List.of(there), "inputs");
                folder.finish();
                ScoredPrediction.keep(home, scores(answer));
                RigLog.add(terminal, home, RigLog.revision(design.file()), RigExplainWords.log(answer));
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    RigExplainSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, folder.target().resolve("report.html"), progress);
                }
            }
        }
        return ExitCode.DONE;
    }

    private static List<ScoredPrediction> scores(RigExplainAnswer answer) {
        TorsionReading reading = answer.reading();
        return answer.foretold().stream()
                .map(f -> new ScoredPrediction(
                        f.name(),
                        answer.tub(),
                        answer.variant(),
                        f.stamp(),
                        f.stiffness(),
                        f.spread(),
                        f.measured(),
                        f.measuredSpread(),
                        f.mass(),
                        reading.readings().setup().mass().orElse(Double.NaN),
                        reading.readings().source(),
                        answer.stamp()))
                .toList();
    }

    private Map<String, Double> spreads() {
        Map<String, Double> result = new HashMap<>();
        doubts.forEach((name, text) -> {
            double value;
            try {
                value = Double.parseDouble(text.strip());
            } catch (NumberFormatException e) {
                value = Double.NaN;
            }
            if (!(value > 0 && value < 10)) {
                throw new UserMistake("--doubt " + name + "=" + text
                        + ": write a standard deviation of ln(factor) between 0 and 10; 0.69 means half to double");
            }
            result.put(name, value);
        });
        return result;
    }
}
