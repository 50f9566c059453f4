// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code tubwright rig}: what has to do with the torsion rig. */
@Command(
        name = "rig",
        description = "Around the torsion rig: plan the test, read it, explain it by the model, foretell the next tub.",
        synopsisHeading = "Usage: ",
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%nOptions:%n")
final class RigCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getOut());
        return ExitCode.USAGE;
    }
}
