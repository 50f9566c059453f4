// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.export.RunFolder;
import tubwright.desk.text.Figures;
import tubwright.engine.design.Design;

/** How a command closes: what it leaves in the run's folder, where that is to be found, and how long it took. */
final class Written {
    private Written() {}

    /** Fills the run's folder and moves it into place: the answer, what shows it, the design. */
    static void keep(RunFolder folder, Design design, String document, Map<String, String> pages) throws IOException {
        folder.text(RunFolder.ANSWER, document);
        for (Map.Entry<String, String> page : pages.entrySet()) {
            folder.text(page.getKey(), page.getValue());
        }
        folder.copy(design.file().toAbsolutePath().getParent(), List.of(design.file()), "inputs");
        folder.finish();
    }

    /** The document where that was asked for, otherwise a summary and where the page is. */
    static void tell(
            Terminal terminal,
            Progress progress,
            AnswerOptions printing,
            String document,
            List<String> summary,
            Path page) {
        progress.done();
        if (printing.json()) {
            terminal.out().print(document);
        } else {
            summary.forEach(terminal::print);
            tell(terminal, page, progress);
        }
    }

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
