// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.function.Supplier;

/** What the material records have in common. */
final class Materials {
    private Materials() {}

    static void checkName(String name) {
        if (!name.matches("[a-z0-9][a-z0-9.-]*")) {
            throw new MaterialException(
                    "'" + name + "' cannot name a material: use lower-case letters, digits, points and hyphens");
        }
    }

    /** Puts the material's name before the message of whatever is wrong with its values. */
    static <T> T inMaterial(String name, Supplier<T> work) {
        try {
            return work.get();
        } catch (MaterialException e) {
            throw new MaterialException("material '" + name + "': " + e.getMessage());
        }
    }

    static Elasticity elasticity(PropertyTable table) {
        return new Elasticity(
                table.require(Property.E1),
                table.require(Property.E2),
                table.require(Property.NU12),
                table.require(Property.G12),
                table.require(Property.G13),
                table.require(Property.G23));
    }
}
