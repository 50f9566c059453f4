// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.PunchAnswer;
import tubwright.desk.console.PunchSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.PunchJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.work.PunchWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.material.Provenance;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.safety.crush.CrushData;
import tubwright.engine.safety.crush.Perforation;
import tubwright.engine.safety.crush.PunchedPanel;

/** {@code tubwright punch}: what a hard body needs to get through a panel. */
@Command(
        name = "punch",
        description = {
            "What a hard body (a bolt, a link, a stone) needs to get through a panel of one of the design's laminates: slowly, by"
                    + " what shears and crushes, and fast, skin by skin. Estimates for comparing panels and planning tests."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Strengths come from your own tests; what is not given is not checked and says what it needs. Writes"
                    + " DIR/runs/punch (answer.json, inputs/), replacing the one before.",
            "",
            "Example:",
            "  tubwright punch mytub --laminate \"side skin\" --mass \"2 kg\" --diameter \"25 mm\" --speed \"12 m/s\""
                    + " --punch-shear \"90 MPa\" --resistance \"180 MPa\" --core-crush \"1.6 MPa\""
        })
final class PunchCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private DesignOptions where;

    @Option(names = "--laminate", required = true, paramLabel = "LAMINATE", description = "Which laminate is hit.")
    private String name = "";

    @Option(names = "--mass", required = true, paramLabel = "MASS", description = "Of the body, e.g. \"2 kg\".")
    private String mass = "";

    @Option(names = "--diameter", required = true, paramLabel = "SIZE", description = "Of the body, e.g. \"25 mm\".")
    private String diameter = "";

    @Option(names = "--speed", required = true, paramLabel = "SPEED", description = "Of the body, e.g. \"12 m/s\".")
    private String speed = "";

    @Option(names = "--nose", paramLabel = "SHAPE", description = "Of the body: flat or round; default: flat.")
    private String nose = "flat";

    @Option(
            names = "--punch-shear",
            paramLabel = "STRESS",
            description = "Shear strength of the skins through their thickness, from your perimeter shear test.")
    private Optional<String> shear = Optional.empty();

    @Option(
            names = "--resistance",
            paramLabel = "STRESS",
            description =
                    "Slow pressure of penetration of the skins: force over the body's section, from your punch test of"
                            + " a skin alone.")
    private Optional<String> resistance = Optional.empty();

    @Option(
            names = "--core-crush",
            paramLabel = "STRESS",
            description = "Steady crush stress of the core along its thickness; not its bare strength.")
    private Optional<String> core = Optional.empty();

    @Option(
            names = "--core-usable",
            paramLabel = "SHARE",
            description =
                    "Share of the core's thickness that crushes before it is solid, 0 to 1; default: 0.7 (common practice,"
                            + " no source).")
    private String usable = "0.7";

    @Mixin
    private AnswerOptions printing;

    PunchCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        PunchedPanel.Body body = new PunchedPanel.Body(
                nose(),
                OptionText.positive("--mass", mass, Dimension.MASS, "a mass is greater than zero"),
                OptionText.positive("--diameter", diameter, Dimension.LENGTH, "a diameter is greater than zero"),
                OptionText.positive("--speed", speed, Dimension.VELOCITY, "a speed is greater than zero"));
        PunchedPanel.Known known = known();
        Design design = TrimWork.read(where.place());
        PunchAnswer answer =
                PunchWork.punch(design, where.request(), name, body, known, RunCommand.stamp(), Version.text());
        Path folder = design.file().toAbsolutePath().getParent();
        try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("punch"))) {
            String document = PunchJson.write(answer);
            Written.keep(out, design, document, Map.of());
            if (printing.json()) {
                terminal.out().print(document);
            } else {
                PunchSummary.lines(terminal, answer).forEach(terminal::print);
            }
        }
        return ExitCode.DONE;
    }

    private Perforation.Nose nose() {
        return switch (nose.toLowerCase(Locale.ROOT)) {
            case "flat" -> Perforation.Nose.FLAT;
            case "round" -> Perforation.Nose.ROUND;
            default -> throw new UserMistake("--nose " + nose + ": flat or round");
        };
    }

    private PunchedPanel.Known known() {
        double share = OptionText.positive(
                "--core-usable", usable, Dimension.DIMENSIONLESS, "a share greater than zero, at most one");
        if (share > 1) {
            throw new UserMistake("--core-usable " + usable + ": a share greater than zero, at most one");
        }
        return new PunchedPanel.Known(
                stress("--punch-shear", shear),
                stress("--resistance", resistance),
                core.map(text -> new CrushData(
                        "core",
                        CrushData.Measure.STRESS,
                        OptionText.positive("--core-crush", text, Dimension.PRESSURE, "a stress is greater than zero"),
                        share,
                        OptionalDouble.empty(),
                        Provenance.STATED)));
    }

    private static OptionalDouble stress(String option, Optional<String> text) {
        return text.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        OptionText.positive(option, text.get(), Dimension.PRESSURE, "a stress is greater than zero"));
    }
}
