// SPDX-License-Identifier: Apache-2.0
package tubwright.desk;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import tubwright.desk.command.Cli;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.Workbench;

/**
 * What came of a command.
 *
 * @param code exit code
 * @param out standard output
 * @param err standard error
 */
public record Typed(int code, String out, String err) {
    /** Runs a command on a terminal without colours that nobody watches. */
    public static Typed on(Workbench bench, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                false,
                false,
                true);
        int code = Cli.run(terminal, bench, arguments);
        return new Typed(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
