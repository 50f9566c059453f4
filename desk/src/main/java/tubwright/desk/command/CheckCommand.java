// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.console.CheckSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.Workbench;

/** {@code tubwright check}: reads a design and says it in words. */
@Command(
        name = "check",
        description = {
            "Read a design, check it, and say the tub in words: developed area by zone, mass by piece, warnings against"
                    + " layup practice with the rule named. Computes no stiffness and writes nothing."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {"", "Example:", "  tubwright check examples/larkspur"})
final class CheckCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Workbench bench;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    CheckCommand(Terminal terminal, Workbench bench) {
        this.terminal = terminal;
        this.bench = bench;
    }

    @Override
    public Integer call() {
        CheckSummary.lines(terminal, bench.read(place).check()).forEach(terminal::print);
        return ExitCode.DONE;
    }
}
