// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.text.Figures;

/** How a command closes: where what it wrote is to be found, and how long it took. */
final class Written {
    private Written() {}

    static void tell(Terminal terminal, Path path, Progress progress) {
        terminal.print("");
        terminal.print("  " + terminal.look(Look.STRONG, shown(path)));
        terminal.print("  computed in " + Figures.elapsed(progress.seconds()));
    }

    /** A path as short as it can be said from where the user is. */
    static String shown(Path path) {
        Path here = Path.of("").toAbsolutePath();
        return path.startsWith(here) ? here.relativize(path).toString() : path.toString();
    }
}
