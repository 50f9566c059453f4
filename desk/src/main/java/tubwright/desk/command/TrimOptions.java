// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.work.TrimWork;

/** What the commands about taking weight out have in common. */
final class TrimOptions {
    @Parameters(index = "0", paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "Work on this variant instead of the design as written.")
    private Optional<String> variant = Optional.empty();

    @Option(
            names = "--case",
            paramLabel = "NAME",
            description = "The case whose stiffness counts; default: the first torsion case.")
    private Optional<String> loading = Optional.empty();

    @Option(
            names = "--mesh",
            paramLabel = "SIZE",
            description = "Mesh size with its unit, e.g. \"20 mm\", instead of the design's own.")
    private Optional<String> mesh = Optional.empty();

    @Option(names = "--quick", description = "A mesh twice as coarse: an answer in a fraction of the time.")
    private boolean quick;

    Path place() {
        return place;
    }

    /** The folder the design lies in. */
    Path folder() {
        return folder(place);
    }

    /** The folder a design lies in, by the place a person named: the folder itself, or the file. */
    static Path folder(Path place) {
        boolean file = place.toString().endsWith(".yaml") || place.toString().endsWith(".yml");
        return file ? place.toAbsolutePath().getParent() : place;
    }

    TrimWork.Request request() {
        return new TrimWork.Request(variant, loading, MeshSize.of(mesh), quick);
    }
}
