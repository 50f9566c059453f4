// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.Optional;
import picocli.CommandLine.Option;
import tubwright.desk.work.TrimWork;

/** Which design, and which variant of it. */
class DesignOptions extends PlaceOption {
    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "Work on this variant instead of the design as written.")
    private Optional<String> variant = Optional.empty();

    final Optional<String> variant() {
        return variant;
    }

    /** That variant, on the design's own mesh. */
    TrimWork.Request request() {
        return new TrimWork.Request(variant, Optional.empty(), MeshSize.of(Optional.empty()), false);
    }
}
