// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** On what mesh of the structure. */
final class MeshOptions {
    @Option(
            names = "--mesh",
            paramLabel = "SIZE",
            description = "Mesh size with its unit, e.g. \"20 mm\", instead of the design's own.")
    private Optional<String> mesh = Optional.empty();

    @Option(names = "--quick", description = "A mesh twice as coarse: an answer in a fraction of the time.")
    private boolean quick;

    OptionalDouble size() {
        return MeshSize.of(mesh);
    }

    boolean quick() {
        return quick;
    }
}
