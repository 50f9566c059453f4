// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.desk.work.UserMistake;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

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
        try {
            double size = Quantity.parse(option.get(), Dimension.LENGTH).si();
            if (!(size > 0)) {
                throw new UserMistake("--mesh " + option.get() + ": a mesh size is greater than zero");
            }
            return OptionalDouble.of(size);
        } catch (QuantityException e) {
            throw new UserMistake("--mesh: " + e.getMessage());
        }
    }
}
