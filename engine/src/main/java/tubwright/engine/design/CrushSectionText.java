// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** One length of a crush structure, as written. */
@Says("One length of a crush structure, its area changing evenly along it.")
@Choose({"wall area", "gross area"})
record CrushSectionText(
        @Says("Length along the impact.") @In(value = Dimension.LENGTH, positive = true)
        Amount length,

        @Says("How it crushes: a name under \"crush data\" or of the shipped crush values.")
        Name crushesAs,

        @Says(
                "Area of the wall's section where values are per mass: one number, or two, front and rear: \"190, 310 mm²\".")
        @In(value = Dimension.AREA, positive = true)
        Optional<Amounts> wallArea,

        @Says("Area over all where values are a crush stress: one number, or two, front and rear.")
        @In(value = Dimension.AREA, positive = true)
        Optional<Amounts> grossArea,

        Place place) {}
