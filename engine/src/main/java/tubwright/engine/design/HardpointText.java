// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** Where a load enters, as written. */
@Says("A pick-up, mount or hoop foot with its insert. On a strip give x and z (or x and y, or x alone for the middle of"
        + " the strip); on a wall give y and z.")
record HardpointText(
        @Says("The strip or wall it sits on.") Name on,
        @Says("Station.") @In(Dimension.LENGTH) Optional<Amount> x,

        @Says("Distance from the centre line.") @In(Dimension.LENGTH)
        Optional<Amount> y,

        @Says("Height.") @In(Dimension.LENGTH) Optional<Amount> z,

        @Says("On which side: both, right, left or centre.") @Otherwise("both")
        Sides sides,

        @Says("Distance of the load's point from the surface, outward (a bracket).")
        @In(Dimension.LENGTH)
        @Otherwise("0 mm")
        Amount standoff,

        @Says("Diameter of the insert with its potting.")
        @In(value = Dimension.LENGTH, positive = true)
        @Otherwise("50 mm")
        Amount footprint,

        @Says("Stiffness of insert and potting against movement.")
        @In(value = Dimension.STIFFNESS, positive = true)
        @Otherwise(value = "100 kN/mm", origin = "assumed: a bonded metal insert, stiffer than the panel round it")
        Amount stiffness,

        @Says("Stiffness of insert and potting against rotation.")
        @In(value = Dimension.TORSIONAL_STIFFNESS, positive = true)
        @Otherwise(value = "10 kN·m/rad", origin = "assumed: a bonded metal insert, stiffer than the panel round it")
        Amount rotationalStiffness,

        @Says("Mass of insert and potting beyond the laminate they replace.") @In(Dimension.MASS) @Otherwise("60 g")
        Amount mass,

        @Says(
                "How it is made, for its strength. Left out, it is taken as potted over its whole footprint, and what needs"
                        + " more is listed as not checked.")
        Optional<InsertText> insert,

        Place place) {}
