// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.nio.file.Files;
import java.nio.file.Path;

/** The folder the project lies in. */
final class Checkouts {
    /** The nearest folder above the one the tests run in that has the launcher. */
    static final Path ROOT = root();

    private Checkouts() {}

    private static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("tubwright.cmd"))) {
            folder = folder.getParent();
        }
        return folder;
    }
}
