// SPDX-License-Identifier: Apache-2.0
package tubwright.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The folder the project lies in, for the tests that look at its files. */
final class Checkout {
    /** The nearest folder above the one the tests run in that has the launcher. */
    static final Path ROOT = root();

    private Checkout() {}

    private static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("tubwright.cmd"))) {
            folder = folder.getParent();
        }
        return folder;
    }

    /** The files below a folder of the checkout whose name ends so, sorted; none if there is no such folder. */
    static List<Path> filesBelow(Path folder, String ending) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new IllegalStateException("Cannot walk " + folder, e);
        }
    }

    /** The folders directly below the checkout. */
    static List<Path> modules() {
        try (Stream<Path> folders = Files.list(ROOT)) {
            return folders.filter(folder -> Files.exists(folder.resolve("pom.xml")))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new IllegalStateException("Cannot list " + ROOT, e);
        }
    }

    /** What a file says, with line ends as on Unix. */
    static String text(Path file) {
        try {
            return Files.readString(file).replace("\r\n", "\n");
        } catch (IOException e) {
            throw new IllegalStateException("Cannot read " + file, e);
        }
    }

    /** A path as a reader of a message knows it: from the checkout, with slashes. */
    static String nameOf(Path file) {
        return ROOT.relativize(file).toString().replace('\\', '/');
    }
}
