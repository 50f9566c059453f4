// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import tubwright.engine.material.PropertyValue;

/**
 * How a kind of laminate moves after gelling, along and through.
 *
 * @param name of the kind
 * @param along thermal expansion in the plane, 1/K
 * @param through thermal expansion through the thickness, 1/K
 * @param alongShrinkage strain of cure in the plane, negative when it shrinks
 * @param throughShrinkage through the thickness
 */
public record Shrinkage(
        String name,
        PropertyValue along,
        PropertyValue through,
        PropertyValue alongShrinkage,
        PropertyValue throughShrinkage) {
    /** For the formula of bends. */
    public SpringIn springIn() {
        return new SpringIn(along.si(), through.si(), alongShrinkage.si(), throughShrinkage.si());
    }
}
