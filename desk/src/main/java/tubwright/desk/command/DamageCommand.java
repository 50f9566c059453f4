// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.console.DamageSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.DamageJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.DamagePage;
import tubwright.desk.work.DamageWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.safety.damage.Degree;

/** {@code tubwright damage}: what the rest carries when a patch is gone. */
@Command(
        name = "damage",
        description = {
            "Takes a patch away and says what the rest carries: stiffness lost, lowest reserve factors beside the hole by case,"
                    + " loads with no path left. Without --at a moving patch goes over the whole tub: where a hit stays local"
                    + " and where it would spread, the design and its variants side by side."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/damage (damage.html, answer.json, inputs/), replacing the one before. Linear and static: says"
                    + " nothing of crash or of tearing further (spread does).",
            "",
            "Examples:",
            "  tubwright damage examples/larkspur --quick --beyond 3",
            "  tubwright damage mytub --at \"620, 240, 300 mm\" --size \"150 mm\"",
            "  tubwright damage mytub --at \"engine mount upper R\" --degree hole"
        })
final class DamageCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private PlaceOption where;

    @Option(names = "--size", paramLabel = "SIZE", description = "Diameter of the patch; default: 100 mm.")
    private String size = "100 mm";

    @Option(
            names = "--at",
            paramLabel = "WHERE",
            description =
                    "One patch only: at a point \"x, y, z mm\" or at a hardpoint; or all of a zone, wall or strip.")
    private Optional<String> at = Optional.empty();

    @Option(
            names = "--degree",
            paramLabel = "DEGREE",
            description = "barely visible, visible or hole; default: a hole, with --at all three.")
    private Optional<String> degree = Optional.empty();

    @Option(
            names = "--positions",
            paramLabel = "N",
            description = "How many places the moving patch visits; default: 600.")
    private int positions = 600;

    @Option(
            names = "--beyond",
            paramLabel = "N",
            description =
                    "Look at buckling, joints and inserts with the hole in the N weakest places of a scan, some seconds"
                            + " each; default: 0.")
    private int beyond = 0;

    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "This variant only, instead of the design and all its variants.")
    private Optional<String> variant = Optional.empty();

    @Mixin
    private MeshOptions mesh;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    DamageCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        DamageWork.Request request = request();
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + where.place());
            Design design = TrimWork.read(where.place());
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(where.folder().resolve("runs").resolve("damage")))) {
                DamageAnswer answer = DamageWork.damage(
                        design,
                        request,
                        RunCommand.stamp(),
                        Version.text(),
                        progress::stage,
                        Thread.currentThread()::isInterrupted);
                progress.stage("writing the page");
                String document = DamageJson.write(answer);
                Written.keep(folder, design, document, Map.of("damage.html", DamagePage.write(answer)));
                Written.tell(
                        terminal,
                        progress,
                        printing,
                        document,
                        DamageSummary.lines(terminal, answer),
                        folder.target().resolve("damage.html"));
            }
        }
        return ExitCode.DONE;
    }

    private DamageWork.Request request() {
        double diameter =
                OptionText.positive("--size", size, Dimension.LENGTH, "a patch has a diameter greater than zero");
        if (positions < 1 || positions > 20_000) {
            throw new UserMistake("--positions " + positions + ": 1 to 20000 places can be visited");
        }
        if (beyond < 0 || beyond > 100) {
            throw new UserMistake("--beyond " + beyond + ": 0 to 100 places can be looked at");
        }
        if (beyond > 0 && (at.isPresent() || degree.isPresent() && degree(degree.get()) != Degree.HOLE)) {
            throw new UserMistake(
                    "--beyond: of a scan of holes; leave out --at and --degree (a single hole with --at is looked"
                            + " at without asking)");
        }
        TrimWork.Request on = new TrimWork.Request(variant, Optional.empty(), mesh.size(), mesh.quick());
        return new DamageWork.Request(on, diameter, at, degree.map(DamageCommand::degree), positions, beyond);
    }

    private static Degree degree(String text) {
        return Arrays.stream(Degree.values())
                .filter(d -> d.words().equals(text.strip().replace('-', ' ')))
                .findFirst()
                .orElseThrow(() -> new UserMistake("--degree " + text + ": there are "
                        + Arrays.stream(Degree.values()).map(Degree::words).collect(Collectors.joining(", "))));
    }
}
