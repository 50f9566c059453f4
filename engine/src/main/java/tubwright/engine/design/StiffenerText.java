// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A bar along a line of the tub as written. */
@Says("A bar fixed along corner lines, opening edges or stations.")
@Choose({"corners", "openings", "stations"})
@Choose({"angle", "flat", "square tube", "round tube"})
record StiffenerText(
        @Says("Corner lines it follows, on both sides, each as the two strips that meet: \"floor / chine\".")
        List<Name> corners,

        @Says("Openings (or holes in walls) whose edges it follows.")
        List<Name> openings,

        @Says("Stations at which it goes round the skin: names of walls, or x with its unit.")
        List<Name> stations,

        @Says("Angle: leg x leg x thickness, \"25 x 25 x 1.6 mm\".") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> angle,

        @Says("Flat strip: width (along the surface) x thickness.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> flat,

        @Says("Square or rectangular tube: width (along the surface) x depth x wall.")
        @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> squareTube,

        @Says("Round tube: outside diameter x wall.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> roundTube,

        @Says("Its metal.") Name material,

        @Says("Distance of its centroid inside the surface; left out, it lies against the surface.")
        @In(Dimension.LENGTH)
        Optional<Amount> offset,

        Place place) {}
