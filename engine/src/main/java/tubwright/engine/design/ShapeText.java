// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;

/** The surface of the tub as written. */
record ShapeText(
        @Says("How the skin runs from frame to frame: \"smooth\" along fair curves, \"ruled\" along straight lines.")
        @Otherwise("smooth")
        LoftKind loft,

        @Says("Names of the strips of skin between neighbouring outline corners, from the bottom centre to the top"
                + " centre; one fewer than corners.")
        @Needed
        List<Name> strips,

        @Says("Cross-sections, from front to rear, each with the same number of corners.") @Needed
        List<FrameText> frames,

        @Says("Cut-outs in the skin: cockpit, access holes.")
        List<Named<OpeningText>> openings,

        @Says("Flat panels inside the tub: bulkheads, dash, seat back.")
        List<Named<WallText>> walls,

        Place place) {

    /** How the skin runs from frame to frame. */
    enum LoftKind {
        SMOOTH,
        RULED
    }
}
