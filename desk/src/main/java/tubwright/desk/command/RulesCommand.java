// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.RulesAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.RulesSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.RulesJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.RulesPage;
import tubwright.desk.text.Figures;
import tubwright.desk.work.EvidenceWork;
import tubwright.desk.work.RulesWork;
import tubwright.engine.design.Design;

/** {@code tubwright rules}: a tub held against rule sets, clause by clause. */
@Command(
        name = "rules",
        description = {
            "Holds the tub against rule sets, clause by clause: panels as stiff as tubes, punched skins, points that carry, pads"
                    + " that push, impacts. Each comes to met, not met, or not checked and what is needed. Foretells the test"
                    + " panels."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads \"rules\" of the design; sets are data, two are shipped (\"student structural 2026\", \"junior single-seater"
                    + " 2014\"), your own stand in a file beside the design. Writes DIR/runs/rules (rules.html, answer.json,"
                    + " inputs/), replacing the one before.",
            "",
            "Example:",
            "  tubwright rules examples/bramble --quick"
        })
final class RulesCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(
            names = "--mesh",
            paramLabel = "SIZE",
            description = "Mesh size with its unit, e.g. \"20 mm\", instead of the design's own.")
    private Optional<String> mesh = Optional.empty();

    @Option(names = "--quick", description = "A mesh twice as coarse: an answer in a fraction of the time.")
    private boolean quick;

    @Mixin
    private AnswerOptions printing;

    RulesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        try (Progress progress = new Progress(terminal)) {
            Design design = Design.read(place);
            double size = MeshSize.of(mesh).orElse(design.asDesigned().tub().meshSize() * (quick ? 2 : 1));
            RulesAnswer answer = RulesWork.answer(design, size, RunCommand.stamp(), Version.text(), progress::stage);
            Path folder = design.file().toAbsolutePath().getParent();
            try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("rules"))) {
                String document = RulesJson.write(answer);
                out.text(RunFolder.ANSWER, document);
                out.text("rules.html", RulesPage.write(answer));
                List<Path> inputs = new ArrayList<>(List.of(design.file()));
                EvidenceWork.ruleFiles(design).forEach(f -> inputs.add(folder.resolve(f)));
                out.copy(folder, inputs, "inputs");
                out.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    RulesSummary.lines(terminal, answer).forEach(terminal::print);
                    terminal.print("");
                    terminal.print("  " + Written.shown(out.target().resolve("rules.html")));
                    terminal.print("  computed in " + Figures.elapsed(progress.seconds()));
                }
            }
        }
        return ExitCode.DONE;
    }
}
