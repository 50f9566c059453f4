// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Points;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** One cross-section as written. */
@Says("A closed cross-section at one station, given by its right half.")
record FrameText(
        @Says("Its x, aft of the datum.") @In(Dimension.LENGTH)
        Amount station,

        @Says("Corners of the right half, (y, z), from the bottom centre (y = 0) to the top centre (y = 0); the left"
                + " half is its mirror image.")
        @In(Dimension.LENGTH)
        Points outline,

        @Says("Fillet radius at each corner, first and last included; 0 for a sharp one.") @In(Dimension.LENGTH)
        Optional<Amounts> radii,

        Place place) {}
