// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.RigPredictAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.RigPredictSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.CalibrationFile;
import tubwright.desk.export.KeptPrediction;
import tubwright.desk.export.RigWorkJson;
import tubwright.desk.text.Figures;
import tubwright.desk.work.RigWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.rig.explain.Calibration;

/** {@code tubwright rig predict}: the next tub with an interval. */
@Command(
        name = "predict",
        description = {
            "Foretell how stiff a tub will be on the rig, with an interval, from the model and from what the last test has"
                    + " taught about materials and joints; with its mass and weakest margin."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "The calibration is DIR/rig/calibration.json, or that of another project with --from. With --keep the"
                    + " prediction goes on record in DIR/rig/predictions, and \"rig explain\" says later whether it held.",
            "",
            "Examples:",
            "  tubwright rig predict mytub",
            "  tubwright rig predict mytub --built 2",
            "  tubwright rig predict mytub2 --from mytub --keep \"tub 2\""
        })
final class RigPredictCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(names = "--from", paramLabel = "DIR", description = "Project whose calibration is used.")
    private Optional<Path> from = Optional.empty();

    @Option(names = "--keep", paramLabel = "NAME", description = "Put the prediction on record under this name.")
    private Optional<String> keep = Optional.empty();

    @Mixin
    private BuiltOption built = new BuiltOption();

    @Mixin
    private AnswerOptions printing;

    RigPredictCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        TrimWork.Request request = options.request();
        keep.ifPresent(name -> {
            if (!name.matches("[\\p{L}\\p{Nd}][\\p{L}\\p{Nd}._ -]*")) {
                throw new UserMistake("--keep " + name + ": use letters, digits, points, hyphens and blanks");
            }
            if (Files.exists(KeptPrediction.folder(options.folder()).resolve(name + ".json"))) {
                throw new UserMistake("there is a prediction \"" + name
                        + "\" on record already; a prediction is not replaced, so take another name");
            }
        });
        Path file = CalibrationFile.of(from.orElse(options.folder()));
        Optional<Calibration> calibration = CalibrationFile.read(file);
        if (from.isPresent() && calibration.isEmpty()) {
            throw new UserMistake(file + ": there is no calibration; make one with" + "\n    tubwright rig explain "
                    + from.get() + " READINGS --keep");
        }
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            RigPredictAnswer answer = RigWork.predict(
                    design,
                    request,
                    calibration,
                    built.read(options.folder()),
                    RigLog.fingerprint(design.file()),
                    RunCommand.stamp(),
                    Version.text(),
                    progress::stage);
            if (keep.isPresent()) {
                answer = kept(answer, keep.get());
                RigLog.add(
                        terminal,
                        options.folder(),
                        RigLog.revision(design.file()),
                        List.of(RigPredictSummary.line(keep.get(), answer)));
            }
            progress.done();
            if (printing.json()) {
                terminal.out().print(RigWorkJson.write(answer));
            } else {
                RigPredictSummary.lines(terminal, answer).forEach(terminal::print);
                terminal.print("");
                terminal.print("  computed in " + Figures.elapsed(progress.seconds()));
            }
        }
        return ExitCode.DONE;
    }

    private RigPredictAnswer kept(RigPredictAnswer answer, String name) throws IOException {
        Path place = new KeptPrediction(
                        name,
                        answer.tub(),
                        answer.variant(),
                        answer.prediction().stiffness(),
                        answer.prediction().spread(),
                        answer.mass(),
                        answer.fingerprint(),
                        answer.stamp())
                .keep(options.folder());
        return new RigPredictAnswer(
                answer.tub(),
                answer.variant(),
                answer.prediction(),
                answer.calibration(),
                answer.mass(),
                answer.testedMass(),
                answer.weakest(),
                answer.fingerprint(),
                Optional.of(place.toString()),
                answer.weighed(),
                answer.meshSize(),
                answer.version(),
                answer.stamp());
    }
}
