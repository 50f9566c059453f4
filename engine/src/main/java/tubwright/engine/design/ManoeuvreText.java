// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** What the car does in a case, as written. */
@Says(
        "The car on its four wheels, its tyre forces found by statics from these and from the case's own forces and pressures.")
@Choose(
        value = {"braking", "driving", "cornering", "vertical", "standing"},
        several = true)
record ManoeuvreText(
        @Says("Deceleration.") @In(value = Dimension.ACCELERATION, positive = true)
        Optional<Amount> braking,

        @Says("Acceleration forward.") @In(value = Dimension.ACCELERATION, positive = true)
        Optional<Amount> driving,

        @Says("Sideways acceleration: positive in a right-hand bend, negative in a left-hand one.")
        @In(Dimension.ACCELERATION)
        Optional<Amount> cornering,

        @Says("Vertical acceleration on top of gravity: a bump at all four wheels.") @In(Dimension.ACCELERATION)
        Optional<Amount> vertical,

        @Says("yes: gravity alone, for cases whose other loads say the rest.")
        Optional<Boolean> standing,

        Place place) {}
