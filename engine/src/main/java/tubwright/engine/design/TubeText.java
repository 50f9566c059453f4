// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** Tubes as written. */
@Says(
        "A run of straight tubes through points: roll hoop, stay, subframe. Where its points stand on both sides, so does it.")
@Choose({"round tube", "square tube"})
record TubeText(
        @Says("Points it runs through, two or more: hardpoints, nodes, points of bodies.")
        List<Name> through,

        @Says("Outside diameter x wall.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> roundTube,

        @Says("Width x height x wall.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> squareTube,

        @Says("Its metal.") Name material,

        @Says("How each stretch ends: welded, or pinned so that it carries force along itself only.")
        @Otherwise("welded")
        Ends ends,

        Place place) {

    /** How a tube ends. */
    enum Ends {
        WELDED,
        PINNED
    }
}
