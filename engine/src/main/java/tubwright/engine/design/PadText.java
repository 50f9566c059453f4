// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A force on a pad as written. */
@Says("A force spread evenly over the skin or wall under a pad.")
record PadText(
        @Says("Strips or walls it lies on; left out, whatever lies in its box.")
        List<Name> on,

        @Says("Middle of the pad: \"1300, 260, 300 mm\".") @In(Dimension.LENGTH)
        Amounts at,

        @Says(
                "Size of the pad along x, y and z; across the skin it is deep enough to hold the skin: \"100, 120, 300 mm\".")
        @In(value = Dimension.LENGTH, positive = true)
        Amounts size,

        @Says("The whole force, aft, right and up: \"0, -20, 0 kN\".") @In(Dimension.FORCE)
        Amounts force,

        Place place) {}
