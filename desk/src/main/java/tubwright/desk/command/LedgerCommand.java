// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.LedgerAnswer;
import tubwright.desk.console.LedgerSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.LedgerCsv;
import tubwright.desk.export.RunFolder;
import tubwright.desk.export.TrimJson;
import tubwright.desk.report.LedgerPage;
import tubwright.desk.work.TrimWork;
import tubwright.engine.design.Design;

/** {@code tubwright ledger}: what every ply weighs and what it is worth. */
@Command(
        name = "ledger",
        description = {
            "What every ply, core and joint of a design weighs and what it is worth: the stiffness lost when it is given up,"
                    + " solved one by one, and bracketed without solving."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/ledger (ledger.html, ledger.csv, worth.png, answer.json, inputs/), replacing the ledger"
                    + " before.",
            "",
            "Examples:",
            "  tubwright ledger examples/larkspur --quick",
            "  tubwright ledger mytub --case bending --all",
            "  tubwright ledger mytub --json"
        })
final class LedgerCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(names = "--all", description = "List every entry, not only the cheapest and dearest.")
    private boolean all;

    @Option(
            names = "--stiffness-only",
            description = "Leave the load cases out: no reserve and buckling factors, an answer sooner.")
    private boolean stiffnessOnly;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    LedgerCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        TrimWork.Request request = options.request();
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(options.folder().resolve("runs").resolve("ledger")))) {
                LedgerAnswer answer = TrimWork.ledger(
                        design, request, !stiffnessOnly, RunCommand.stamp(), Version.text(), progress::stage);
                progress.stage("writing the ledger");
                String document = TrimJson.write(answer);
                try (OutputStream stream = folder.open("worth.png")) {
                    stream.write(LedgerPage.picture(answer));
                }
                Written.keep(
                        folder,
                        design,
                        document,
                        Map.of("ledger.csv", LedgerCsv.write(answer), "ledger.html", LedgerPage.write(answer)));
                Written.tell(
                        terminal,
                        progress,
                        printing,
                        document,
                        LedgerSummary.lines(terminal, answer, all),
                        folder.target().resolve("ledger.html"));
            }
        }
        return ExitCode.DONE;
    }
}
