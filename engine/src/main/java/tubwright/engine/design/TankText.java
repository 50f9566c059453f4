// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** The tank as written. */
@Says("The space a tank is made to: all of the tub between two stations and two heights.")
record TankText(
        @Says("What it must hold: \"18 l\".") @In(value = Dimension.VOLUME, positive = true)
        Amount holds,

        @Says("Its stations.") @In(Dimension.LENGTH) Span x,
        @Says("Its heights.") @In(Dimension.LENGTH) Span z,

        @Says("Left between tank and inner skin, for the tank's own wall and foam.")
        @In(Dimension.LENGTH)
        @Otherwise(value = "15 mm", origin = "assumed: common practice, no source")
        Amount gap,

        Place place) {}
