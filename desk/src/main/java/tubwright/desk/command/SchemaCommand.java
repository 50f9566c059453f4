// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.Workbench;

/** {@code tubwright schema}: prints the JSON Schema of the design document. */
@Command(
        name = "schema",
        description = {
            "Print the JSON Schema of the design document: with it, editors complete and check a design as it is typed."
        },
        synopsisHeading = "Usage: ",
        optionListHeading = "%n",
        footer = {"", "Example:", "  tubwright schema > design.schema.json"})
final class SchemaCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Workbench bench;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    SchemaCommand(Terminal terminal, Workbench bench) {
        this.terminal = terminal;
        this.bench = bench;
    }

    @Override
    public Integer call() {
        terminal.out().print(bench.schema().stripTrailing());
        terminal.out().print('\n');
        return ExitCode.DONE;
    }
}
