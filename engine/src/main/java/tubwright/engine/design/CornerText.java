// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** One corner of the suspension as written. */
@Says(
        "A corner: two wishbones, a steering or toe link and a rod hold the upright. Points are those of the right-hand side,"
                + " x, y, z in the axes of the design; inner points name hardpoints (or nodes, or points of a body).")
record CornerText(
        @Says("The upper wishbone.") WishboneText upperWishbone,
        @Says("The lower wishbone.") WishboneText lowerWishbone,
        @Says("Steering link, or toe link at the rear.") LinkText steeringLink,

        @Says("Push rod, pull rod, or the spring and damper unit itself.")
        RodText rod,

        @Says("The rocker the rod ends on.") Optional<RockerText> rocker,

        @Says("Tube of wishbone legs, link and rod: outside diameter x wall, \"18 x 1.5 mm\". Left out: they do not"
                + " stretch.")
        @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> roundTube,

        @Says("Metal of these tubes.") Optional<Name> material,
        Place place) {}
