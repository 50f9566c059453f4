// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.CabinAnswer;
import tubwright.desk.console.CabinSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.CabinJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.CabinPage;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;

/** {@code tubwright cabin}: whether driver, tank and volumes kept free go into the tub. */
@Command(
        name = "cabin",
        description = {
            "Whether the driver by percentile, the tank and what is kept free go into the tub: room to the inner skin, where"
                    + " it is tightest, and what is in the way of what."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads \"cabin\" of the design. Writes DIR/runs/cabin (cabin.html, answer.json, inputs/), replacing the one before.",
            "",
            "Example:",
            "  tubwright cabin examples/larkspur"
        })
final class CabinCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(names = "--variant", paramLabel = "NAME", description = "Variant of the design; default: as designed.")
    private String variant = Design.AS_DESIGNED;

    @Mixin
    private AnswerOptions printing;

    CabinCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Design design = Design.read(place);
        Design.Variant asked = design.variant(variant)
                .orElseThrow(() -> new UserMistake("there is no variant \"" + variant + "\"\n    there are: "
                        + String.join(
                                ", ",
                                design.variants().stream()
                                        .map(Design.Variant::name)
                                        .toList())));
        if (asked.cabin().isEmpty()) {
            throw new UserMistake(design.file() + ": nothing is said to go into the tub"
                    + "\n    write driver, tank and volumes kept free under \"cabin\"; docs/how-to/fit-the-driver.md");
        }
        CabinAnswer answer = new CabinAnswer(design.name(), asked, asked.fit());
        Path folder = design.file().toAbsolutePath().getParent();
        try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("cabin"))) {
            String document = CabinJson.write(answer);
            out.text(RunFolder.ANSWER, document);
            out.text("cabin.html", CabinPage.write(answer));
            out.copy(folder, List.of(design.file()), "inputs");
            out.finish();
            if (printing.json()) {
                terminal.out().print(document);
            } else {
                CabinSummary.lines(terminal, answer).forEach(terminal::print);
                terminal.print("");
                terminal.print("  " + Written.shown(out.target().resolve("cabin.html")));
            }
        }
        return ExitCode.DONE;
    }
}
