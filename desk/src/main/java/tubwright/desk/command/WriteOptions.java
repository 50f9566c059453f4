// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import tubwright.desk.work.ChoiceWork;

/** Where a choice is written. */
final class WriteOptions {
    @Option(
            names = "--write",
            paramLabel = "FILE",
            description = "Write the choice as a new design file, all else kept as it is.")
    private Optional<Path> file = Optional.empty();

    @Option(
            names = "--as-variant",
            paramLabel = "NAME",
            description = "Write it as a new variant: into the design file, or into the new one.")
    private Optional<String> variant = Optional.empty();

    ChoiceWork.Wanted wanted() {
        return new ChoiceWork.Wanted(file, variant);
    }
}
