// SPDX-License-Identifier: Apache-2.0
package tubwright.desk;

import tubwright.desk.command.Cli;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.EngineWorkbench;

/** Where the program starts. */
public final class Main {
    private Main() {}

    /** Runs one command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        System.exit(Cli.run(Terminal.system(), new EngineWorkbench(), arguments));
    }
}
