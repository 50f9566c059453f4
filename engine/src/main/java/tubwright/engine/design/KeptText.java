// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** A volume kept free, as written. */
@Says("A volume kept free: a box between stations, widths and heights, or a round bar from one point to another.")
@Choose({"x", "from"})
record KeptText(
        @Says("Of a box: its stations.") @In(Dimension.LENGTH)
        Optional<Span> x,

        @Says("Of a box: from left to right.") @In(Dimension.LENGTH)
        Optional<Span> y,

        @Says("Of a box: its heights.") @In(Dimension.LENGTH)
        Optional<Span> z,

        @Says("Of a bar: x, y, z of one end: \"420, 0, 330 mm\".") @In(Dimension.LENGTH)
        Optional<Amounts> from,

        @Says("Of a bar: x, y, z of the other.") @In(Dimension.LENGTH)
        Optional<Amounts> to,

        @Says("Of a bar.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> diameter,

        Place place) {}
