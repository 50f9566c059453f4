// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Points;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** A hole in a wall as written. */
@Says(
        "A hole in a wall, drawn as seen from the front (y, z), or from the side (x, z) if the wall runs along the car, or"
                + " from above (x, y) if it lies flat: a rounded rectangle (its spans), a circle (centre and diameter) or a"
                + " polygon with rounded corners (outline).")
@Choose(
        value = {"x", "y", "z", "centre", "outline"},
        several = true)
record HoleText(
        @Says("Rounded rectangle: from this station to that.") @In(Dimension.LENGTH)
        Optional<Span> x,

        @Says("Rounded rectangle: from this y to that.") @In(Dimension.LENGTH)
        Optional<Span> y,

        @Says("Rounded rectangle: from this height to that.") @In(Dimension.LENGTH)
        Optional<Span> z,

        @Says("Circle: its centre.") @In(Dimension.LENGTH) Optional<Points> centre,

        @Says("Circle: its diameter.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> diameter,

        @Says("Polygon: its corners in order.") @In(Dimension.LENGTH)
        Optional<Points> outline,

        @Says("Radius of the corners of a rectangle or polygon.") @In(Dimension.LENGTH)
        Optional<Amount> corner,

        Place place) {}
