// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.work.TrimWork;

/** What the commands about taking weight out have in common. */
final class TrimOptions extends DesignOptions {
    @Option(
            names = "--case",
            paramLabel = "NAME",
            description = "The case whose stiffness counts; default: the first torsion case.")
    private Optional<String> loading = Optional.empty();

    @Mixin
    private MeshOptions mesh;

    @Override
    TrimWork.Request request() {
        return new TrimWork.Request(variant(), loading, mesh.size(), mesh.quick());
    }
}
