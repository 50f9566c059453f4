// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A push or pull rod as written. */
@Says("The rod that carries the wheel's load to a rocker or to the body.")
@Choose({"inner", "at rocker"})
record RodText(
        @Says("What its outer end stands on: upright, upper wishbone or lower wishbone.") @Otherwise("upright")
        Stands standsOn,

        @Says("Its outer end.") @In(Dimension.LENGTH) Amounts outer,

        @Says("Its inner end, where that is a point of the body.")
        Optional<Name> inner,

        @Says("Its inner end, where that is on the rocker.") @In(Dimension.LENGTH)
        Optional<Amounts> atRocker,

        Place place) {

    /** What a rod stands on. */
    enum Stands {
        UPRIGHT,
        UPPER_WISHBONE,
        LOWER_WISHBONE
    }
}
