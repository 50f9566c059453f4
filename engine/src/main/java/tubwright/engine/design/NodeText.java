// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A point in space as written. */
@Says("A point, on the right-hand side: it stands on the left too unless y is 0 or \"sides\" says otherwise.")
record NodeText(
        @Says("x, y, z: \"1880, 160, 860 mm\".") @In(Dimension.LENGTH)
        Amounts at,

        @Says("On which side: both, right, left or centre.") @Otherwise("both")
        Sides sides,

        Place place) {}
