// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.desk.work.UserMistake;
import tubwright.engine.quantity.Dimension;

/** Reads the mesh size of the option {@code --mesh}. */
final class MeshSize {
    private MeshSize() {}

    /**
     * The size in m, or empty where the option is not given.
     *
     * @throws UserMistake where it is not a length greater than zero
     */
    static OptionalDouble of(Optional<String> option) {
        if (option.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                OptionText.positive("--mesh", option.get(), Dimension.LENGTH, "a mesh size is greater than zero"));
    }
}
