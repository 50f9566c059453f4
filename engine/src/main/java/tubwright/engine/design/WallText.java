// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** A flat panel inside the tub as written. */
@Says("A flat panel inside the tub that ends at the skin: across the car, upright at a station or inclined from foot to"
        + " head; or along the car, beside the centre line.")
@Choose({"station", "foot", "beside"})
record WallText(
        @Says("Across, upright: its x.") @In(Dimension.LENGTH)
        Optional<Amount> station,

        @Says("Across, inclined: x of its lower edge on the centre line.") @In(Dimension.LENGTH)
        Optional<Amount> foot,

        @Says("Across, inclined: x of its upper edge on the centre line.") @In(Dimension.LENGTH)
        Optional<Amount> head,

        @Says("Along: its distance from the centre line; 0 for one in the middle.") @In(Dimension.LENGTH)
        Optional<Amount> beside,

        @Says("Along: from this station to that.") @In(Dimension.LENGTH)
        Optional<Span> x,

        @Says("Along, off the centre line: both sides, right or left.") @Otherwise("both")
        Sides sides,

        @Says("Height of its lower edge on the centre line; left out, it runs on to the skin below.")
        @In(Dimension.LENGTH)
        Optional<Amount> bottom,

        @Says("Height of its upper edge on the centre line; left out, it runs on to the skin above.")
        @In(Dimension.LENGTH)
        Optional<Amount> top,

        @Says("Holes in it: leg hole, access hole.") List<Named<HoleText>> holes,
        Place place) {}
