// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.console.RigRecordSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.KeptPrediction;
import tubwright.desk.export.ScoredPrediction;
import tubwright.desk.work.UserMistake;

/** {@code tubwright rig record}: predictions against tests. */
@Command(
        name = "record",
        description = {
            "Predictions on record against the tests that came after them: foretold, measured, by how many standard"
                    + " deviations it was off, weight included where the tub was weighed; and how good the intervals have been."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "A prediction goes on record with \"rig predict --keep\" and is scored by \"rig explain\", which writes"
                    + " DIR/rig/record.json and a line in the project's logbook.",
            "",
            "Examples:",
            "  tubwright rig record mytub"
        })
final class RigRecordCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    RigRecordCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Path folder = PlaceOption.folder(place);
        if (!Files.isDirectory(folder)) {
            throw new UserMistake(folder + ": there is no such folder");
        }
        RigRecordSummary.lines(terminal, KeptPrediction.all(folder), ScoredPrediction.all(folder))
                .forEach(terminal::print);
        return ExitCode.DONE;
    }
}
