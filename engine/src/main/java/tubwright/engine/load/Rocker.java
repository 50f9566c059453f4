// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.function.UnaryOperator;

/**
 * A lever that turns about an axis fixed to the tub, pushed by the rod at one arm and held by the spring and damper unit
 * at another.
 *
 * @param name hardpoint of the pivot
 * @param pivot point of the axis where the tub carries it, m
 * @param axis direction of the axis, any length
 * @param damper spring and damper unit: {@code inner} its end at the tub, {@code outer} its end at the rocker
 */
public record Rocker(String name, double[] pivot, double[] axis, Link damper) {
    public Rocker {
        if (!(Vectors.length(axis) > 1e-9)) {
            throw new LoadException("the rocker '" + name + "' has no axis", "give the direction it turns about");
        }
    }

    /** Its mirror image on the other side of the car; the axis is mirrored as a line. */
    Rocker mirrored(UnaryOperator<String> twin) {
        return new Rocker(
                twin.apply(name),
                Vectors.mirrored(pivot),
                Vectors.mirrored(axis),
                damper.mirrored(twin.apply(damper.name())));
    }
}
