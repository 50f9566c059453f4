// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Points;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** A cut-out in the skin as written. */
@Says(
        "A cut-out in the skin: a rounded rectangle (x and width, or x and z), a circle (centre and diameter) or a polygon"
                + " with rounded corners (outline).")
@Choose({"x", "centre", "outline"})
record OpeningText(
        @Says(
                "Where the contour is drawn: seen from \"above\" (x, y), from \"below\" (x, y) or from the \"side\" (x, z).")
        @Otherwise("above")
        View view,

        @Says("The strips it may cut.") @Needed List<Name> strips,

        @Says("Rounded rectangle: where it lies along the tub.") @In(Dimension.LENGTH)
        Optional<Span> x,

        @Says("Rounded rectangle from above or below: width over both sides of the centre line.")
        @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> width,

        @Says("Rounded rectangle from the side: from this height to that.") @In(Dimension.LENGTH)
        Optional<Span> z,

        @Says("Circle: its centre, in the plane of the view.") @In(Dimension.LENGTH)
        Optional<Points> centre,

        @Says("Circle: its diameter.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> diameter,

        @Says("Polygon: its corners in order, in the plane of the view.") @In(Dimension.LENGTH)
        Optional<Points> outline,

        @Says("Radius of the corners of a rectangle or polygon.") @In(Dimension.LENGTH)
        Optional<Amount> corner,

        @Says("From the side: cut the right side, the left or both.") @Otherwise("both")
        Sides sides,

        Place place) {

    /** The plane the contour is drawn in. */
    enum View {
        ABOVE,
        BELOW,
        SIDE
    }
}
