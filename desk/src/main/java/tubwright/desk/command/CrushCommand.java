// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.CrushAnswer;
import tubwright.desk.console.CrushSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.CrushJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.CrushPage;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;

/** {@code tubwright crush}: what noses and side structures take out of an impact. */
@Command(
        name = "crush",
        description = {
            "What noses, side and rear structures take out of an impact: stroke, deceleration and energy in one dimension,"
                    + " against the design's limits one by one; whether parts break off; what bulkhead and mounts must stand."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads \"crush\" and \"crush data\" of the design. Writes DIR/runs/crush (crush.html, answer.json, inputs/), replacing"
                    + " the one before.",
            "",
            "Example:",
            "  tubwright crush examples/larkspur"
        })
final class CrushCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Mixin
    private AnswerOptions printing;

    CrushCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Design design = Design.read(place);
        CrushAnswer answer = answer(design);
        Path folder = design.file().toAbsolutePath().getParent();
        try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("crush"))) {
            String document = CrushJson.write(answer);
            Written.keep(out, design, document, Map.of("crush.html", CrushPage.write(answer)));
            if (printing.json()) {
                terminal.out().print(document);
            } else {
                CrushSummary.lines(terminal, answer).forEach(terminal::print);
                terminal.print("");
                terminal.print("  " + Written.shown(out.target().resolve("crush.html")));
            }
        }
        return ExitCode.DONE;
    }

    private static CrushAnswer answer(Design design) {
        if (design.asDesigned().crush().isEmpty()) {
            throw new UserMistake(design.file() + ": there is no crush structure"
                    + "\n    write one under \"crush\"; docs/how-to/crush-a-nose.md shows how");
        }
        return new CrushAnswer(
                design.name(),
                design.asDesigned().crush().stream().map(CrushAnswer.Each::of).toList(),
                RunCommand.stamp(),
                Version.text());
    }
}
