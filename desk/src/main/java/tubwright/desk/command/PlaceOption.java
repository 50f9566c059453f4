// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import picocli.CommandLine.Parameters;

/** Where the design lies: what nearly every command is told first. */
class PlaceOption {
    @Parameters(index = "0", paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    final Path place() {
        return place;
    }

    /** The folder the design lies in. */
    final Path folder() {
        return folder(place);
    }

    /** The folder a design lies in, by the place a person named: the folder itself, or the file. */
    static Path folder(Path place) {
        boolean file = place.toString().endsWith(".yaml") || place.toString().endsWith(".yml");
        return file ? place.toAbsolutePath().getParent() : place;
    }
}
