// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.console.Progress;
import tubwright.desk.console.RigScaleSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.RigWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.rig.ScaleModel;

/** {@code tubwright rig scale}: what a small model tells of the full-size tub. */
@Command(
        name = "scale",
        description = {
            "What a small model of the tub would weigh and how stiff it would be, and what its measured stiffness says of the"
                    + " tub at full size, also where its plies are not to scale."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Examples:",
            "  tubwright rig scale mytub --to 1:3",
            "  tubwright rig scale mytub --to 1:3 --plies 1:1 --cores 1:2 --measured \"1300 N·m/deg\""
        })
final class RigScaleCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(names = "--to", paramLabel = "1:N", required = true, description = "Scale of lengths, e.g. 1:3.")
    private String scale = "";

    @Option(
            names = "--plies",
            paramLabel = "1:N",
            description = "Thickness of the model's plies against the tub's; default: 1:1, the same plies.")
    private String plies = "1:1";

    @Option(
            names = "--cores",
            paramLabel = "1:N",
            description = "Thickness of the model's cores against the tub's; default: to scale.")
    private Optional<String> cores = Optional.empty();

    @Option(names = "--measured", paramLabel = "STIFFNESS", description = "Torsional stiffness measured on the model.")
    private Optional<String> measured = Optional.empty();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    RigScaleCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        double length = ratio("--to", scale);
        if (length > 1) {
            throw new UserMistake("--to " + scale + ": a model is smaller than the tub, e.g. 1:3");
        }
        double ply = ratio("--plies", plies);
        double core = cores.map(c -> ratio("--cores", c)).orElse(length);
        Optional<Double> read = measured.map(RigScaleCommand::stiffness);
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            ScaleModel model = RigWork.scale(design, options.request(), length, ply, core, progress::stage);
            progress.done();
            RigScaleSummary.lines(terminal, design.name(), scale, plies, cores.orElse("to scale"), model, read)
                    .forEach(terminal::print);
        }
        return ExitCode.DONE;
    }

    private static double ratio(String option, String text) {
        String[] parts = text.split(":", -1);
        try {
            double value = parts.length == 2
                    ? Double.parseDouble(parts[0].strip()) / Double.parseDouble(parts[1].strip())
                    : Double.NaN;
            if (value > 0 && Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Told below.
        }
        throw new UserMistake(String.format(Locale.ROOT, "%s %s: write a ratio such as 1:3", option, text));
    }

    private static double stiffness(String text) {
        return OptionText.positive(
                "--measured", text, Dimension.TORSIONAL_STIFFNESS, "a stiffness is greater than nothing");
    }
}
