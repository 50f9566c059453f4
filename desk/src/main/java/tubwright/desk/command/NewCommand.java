// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.Workbench;

/** {@code tubwright new}: begins a design. */
@Command(
        name = "new",
        description = {"Begin a design: a commented file that runs as it stands, to be changed bit by bit."},
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {"", "Example:", "  tubwright new mytub", "  tubwright run mytub"})
final class NewCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Workbench bench;

    @Parameters(paramLabel = "DIR", description = "Folder to make. Files that are there already are never replaced.")
    private Path folder;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    NewCommand(Terminal terminal, Workbench bench) {
        this.terminal = terminal;
        this.bench = bench;
    }

    @Override
    public Integer call() throws IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new NotDirectoryException(folder.toString());
        }
        Map<String, String> files =
                bench.starter(folder.toAbsolutePath().normalize().getFileName().toString());
        for (String name : files.keySet()) {
            if (Files.exists(folder.resolve(name))) {
                throw new FileAlreadyExistsException(folder.resolve(name).toString());
            }
        }
        boolean made = !Files.exists(folder);
        Files.createDirectories(folder);
        List<Path> written = new ArrayList<>();
        try {
            for (Map.Entry<String, String> file : files.entrySet()) {
                Path target = folder.resolve(file.getKey());
                Path draft = folder.resolve("." + file.getKey() + ".draft");
                written.add(draft);
                Files.writeString(draft, file.getValue());
                Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE);
                written.add(target);
            }
        } catch (IOException e) {
            for (Path each : written) {
                Files.deleteIfExists(each);
            }
            if (made) {
                Files.deleteIfExists(folder);
            }
            throw e;
        }
        files.keySet().forEach(name -> terminal.print("  " + folder.resolve(name)));
        String word = folder.toString();
        terminal.print("Now:  tubwright run " + (word.contains(" ") ? "\"" + word + "\"" : word));
        return ExitCode.DONE;
    }
}
