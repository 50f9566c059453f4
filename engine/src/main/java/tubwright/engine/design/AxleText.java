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

/** Two wheels as written. */
@Says("An axle: its two wheels.")
record AxleText(
        @Says("Station of the wheels' middles.") @In(Dimension.LENGTH)
        Amount x,

        @Says("Distance between the middles of the two tyres.") @In(value = Dimension.LENGTH, positive = true)
        Amount track,

        @Says("Rolling radius.") @In(value = Dimension.LENGTH, positive = true)
        Amount tyreRadius,

        @Says("Mass of one wheel with tyre, hub, brake and upright: what the links carry beside the tub.")
        @In(Dimension.MASS)
        @Otherwise("0 kg")
        Amount wheelMass,

        @Says("Body that carries the wheels rigidly, where their links are not given under \"suspension\".")
        Optional<Name> carriedBy,

        Place place) {}
