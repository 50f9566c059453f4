// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.RigPlanAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.RigPlanSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.ReadingsForm;
import tubwright.desk.export.RigWorkJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.sheet.RigTestSheet;
import tubwright.desk.work.RigWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.rig.plan.Means;

/** {@code tubwright rig plan}: a torsion test before it is made. */
@Command(
        name = "plan",
        description = {
            "Plan a torsion test: how far to load and why no further, whether the tub is held too much, where gauges tell"
                    + " most and what each adds, what they should read, and how well the stiffness will be known."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/rig/plan (sheet.pdf to take to the rig, readings.csv to fill in, answer.json, inputs/).",
            "",
            "Examples:",
            "  tubwright rig plan mytub",
            "  tubwright rig plan mytub --torque \"3 kN·m\" --pairs 5 --resolution \"0.001 mm\""
        })
final class RigPlanCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(
            names = "--torque",
            paramLabel = "TORQUE",
            description = "Greatest torque; default: as far as gauges need and strength allows.")
    private Optional<String> torque = Optional.empty();

    @Option(
            names = "--pairs",
            paramLabel = "N",
            description = "Gauge pairs you have, both ends counted; default: ${DEFAULT-VALUE}.",
            defaultValue = "6")
    private int pairs;

    @Option(names = "--resolution", paramLabel = "LENGTH", description = "Least step a gauge shows; default: 0.01 mm.")
    private Optional<String> resolution = Optional.empty();

    @Option(names = "--arm", paramLabel = "LENGTH", description = "Lever of the load; default: 1 m.")
    private Optional<String> arm = Optional.empty();

    @Option(
            names = "--cycles",
            paramLabel = "N",
            description = "Cycles after the bed-in; default: ${DEFAULT-VALUE}.",
            defaultValue = "3")
    private int cycles;

    @Option(
            names = "--steps",
            paramLabel = "N",
            description = "Load steps up to the greatest torque; default: ${DEFAULT-VALUE}.",
            defaultValue = "8")
    private int steps;

    @Mixin
    private AnswerOptions printing;

    RigPlanCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Means means = means();
        TrimWork.Request request = options.request();
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            try (RunFolder folder =
                    RunFolder.begin(options.folder().resolve("rig").resolve("plan"))) {
                RigPlanAnswer answer =
                        RigWork.plan(design, request, means, RunCommand.stamp(), Version.text(), progress::stage);
                progress.stage("writing the sheet");
                String document = RigWorkJson.write(answer);
                folder.text(RunFolder.ANSWER, document);
                folder.text("readings.csv", ReadingsForm.write(answer.plan()));
                try (OutputStream stream = folder.open("sheet.pdf")) {
                    stream.write(RigTestSheet.write(answer));
                }
                folder.copy(design.file().toAbsolutePath().getParent(), List.of(design.file()), "inputs");
                folder.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    RigPlanSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, folder.target().resolve("sheet.pdf"), progress);
                }
            }
        }
        return ExitCode.DONE;
    }

    private Means means() {
        Means usual = Means.USUAL;
        if (pairs < 2) {
            throw new UserMistake("--pairs " + pairs + ": a test needs a gauge pair at each end, so 2 or more");
        }
        if (steps < 4) {
            throw new UserMistake("--steps " + steps + ": a line needs 4 load steps or more to show its scatter");
        }
        if (cycles < 1) {
            throw new UserMistake("--cycles " + cycles + ": a test has at least one cycle");
        }
        return new Means(
                torque.map(t -> OptionalDouble.of(positive("--torque", t, Dimension.MOMENT, "3 kN·m")))
                        .orElse(OptionalDouble.empty()),
                steps,
                cycles,
                pairs,
                resolution
                        .map(r -> positive("--resolution", r, Dimension.LENGTH, "0.01 mm"))
                        .orElse(usual.resolution()),
                usual.repeat(),
                usual.overhang(),
                usual.placeUncertainty(),
                arm.map(a -> positive("--arm", a, Dimension.LENGTH, "800 mm")).orElse(usual.arm()),
                usual.armUncertainty(),
                usual.scaleUncertainty(),
                usual.cycleScatter());
    }

    private static double positive(String option, String text, Dimension dimension, String example) {
        return OptionText.positive(
                option, text, dimension, "write a size greater than nothing, e.g. \"" + example + "\"");
    }
}
