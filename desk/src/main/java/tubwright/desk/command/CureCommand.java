// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.console.CureSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.CureJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.CurePage;
import tubwright.desk.work.CureWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.make.cure.CureException;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.cure.CureShop;
import tubwright.engine.make.cure.Tool;
import tubwright.engine.quantity.Dimension;

/** {@code tubwright cure}: every laminate through its cures. */
@Command(
        name = "cure",
        description = {
            "Every different laminate of the tub through its cures: temperatures through the thickness with the mould,"
                    + " degree of cure, glass transition, voids, pressure on core; how bends close and what size moulds are"
                    + " cut to."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads cure.yaml beside the design, if there is one, for data of your own. Writes DIR/runs/cure (cure.html,"
                    + " answer.json, inputs/), replacing the one before. What data are missing is named and not checked.",
            "",
            "Examples:",
            "  tubwright cure mytub",
            "  tubwright cure mytub --mould steel --order one-shot --service \"80 °C\""
        })
final class CureCommand implements Callable<Integer> {
    /** Data of the user's own, beside the design. */
    private static final String OWN = "cure.yaml";

    private final Terminal terminal;

    @Mixin
    private DesignOptions options;

    @Option(names = "--cycle", paramLabel = "NAME", description = "Of solid laminates; default: solid-180.")
    private String solid = "solid-180";

    @Option(names = "--core-cycle", paramLabel = "NAME", description = "Over core; default: honeycomb-180.")
    private String overCore = "honeycomb-180";

    @Option(names = "--order", paramLabel = "ORDER", description = "Of sandwich: three-cures (default) or one-shot.")
    private String order = CureShop.Order.THREE_CURES.word();

    @Option(names = "--mould", paramLabel = "MATERIAL", description = "What moulds are made of; default: carbon-epoxy.")
    private String mould = "carbon-epoxy";

    @Option(names = "--mould-thickness", paramLabel = "LENGTH", description = "Default: usual of the material.")
    private Optional<String> thickness = Optional.empty();

    @Option(
            names = "--heat-transfer",
            paramLabel = "COEFFICIENT",
            description = "From the air to mould and bag; default: 60 W/m²/K.")
    private Optional<String> transfer = Optional.empty();

    @Option(
            names = "--humidity",
            paramLabel = "SHARE",
            description = "Relative humidity the prepreg was stored in; default: 50 %%.")
    private Optional<String> humidity = Optional.empty();

    @Option(names = "--service", paramLabel = "TEMPERATURE", description = "Highest temperature of use.")
    private Optional<String> service = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    CureCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Design design = Design.read(options.place());
        Path folder = design.file().toAbsolutePath().getParent();
        List<Path> inputs = new ArrayList<>(List.of(design.file()));
        try (Progress progress = new Progress(terminal)) {
            CureLibrary library = library(folder);
            if (Files.exists(folder.resolve(OWN))) {
                inputs.add(folder.resolve(OWN));
            }
            CureShop shop = shop(library);
            String name = options.variant().orElse(Design.AS_DESIGNED);
            Design.Variant chosen = design.variant(name)
                    .orElseThrow(() -> new UserMistake(
                            "no variant is called \"" + name + "\"; there are " + design.variantNames()));
            CureAnswer answer = CureWork.cure(
                    chosen.tub(),
                    library,
                    shop,
                    RunCommand.stamp(),
                    Version.text(),
                    progress::stage,
                    Thread.currentThread()::isInterrupted);
            progress.stage("writing the page");
            try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("cure"))) {
                String document = CureJson.write(answer);
                out.text(RunFolder.ANSWER, document);
                out.text("cure.html", CurePage.write(answer));
                out.copy(folder, inputs, "inputs");
                out.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    CureSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, out.target().resolve("cure.html"), progress);
                }
            }
        } catch (CureException e) {
            throw new UserMistake(e.getMessage());
        }
        return ExitCode.DONE;
    }

    /** The shipped data, and the user's own beside the design. */
    static CureLibrary library(Path folder) throws IOException {
        Path own = folder.resolve(OWN);
        CureLibrary shipped = CureLibrary.shipped();
        return Files.exists(own) ? shipped.with(own.toString(), YamlReader.contents(own)) : shipped;
    }

    private CureShop shop(CureLibrary library) {
        Tool tool = library.tool(mould);
        double wall = thickness
                .map(t -> OptionText.positive(
                        "--mould-thickness", t, Dimension.LENGTH, "a mould has a wall, for instance \"8 mm\""))
                .orElse(tool.thickness().si());
        double heat = transfer.map(t -> OptionText.positive(
                        "--heat-transfer", t, Dimension.HEAT_TRANSFER, "write for instance \"60 W/m²/K\""))
                .orElse(CureShop.USUAL_TRANSFER);
        double damp = humidity.map(h -> OptionText.quantity("--humidity", h, Dimension.DIMENSIONLESS))
                .orElse(CureShop.USUAL_HUMIDITY);
        OptionalDouble use = service.map(
                        s -> OptionalDouble.of(OptionText.quantity("--service", s, Dimension.TEMPERATURE)))
                .orElse(OptionalDouble.empty());
        return new CureShop(tool, wall, heat, heat, library.cycle(solid), library.cycle(overCore), order(), damp, use);
    }

    private CureShop.Order order() {
        return Arrays.stream(CureShop.Order.values())
                .filter(o -> o.word().equals(order))
                .findFirst()
                .orElseThrow(() -> new UserMistake("--order " + order + ": write three-cures or one-shot"));
    }
}
