// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** What may break off in an impact, as written. */
@Says("Mass that hangs on the one before it (the first on the cell) and may break off.")
record CrushPartText(
        @Says("Its mass, part of the whole.") @In(value = Dimension.MASS, positive = true)
        Amount mass,

        @Says("Stiffness of what ties it, along the impact.") @In(value = Dimension.STIFFNESS, positive = true)
        Amount stiffness,

        @Says("Force at which that breaks.") @In(value = Dimension.FORCE, positive = true)
        Amount strength,

        Place place) {}
