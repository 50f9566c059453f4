// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** Pressure as written. */
@Says("Pressure on a strip, both sides of the car; or on the front face of a wall, as a driver's back gives it.")
record PressureText(
        @Says("Pressure on the outside (or front face) over that on the other; negative sucks.") @In(Dimension.PRESSURE)
        Amount pressure,

        @Says("Stations between which it acts; left out, the whole length.") @In(Dimension.LENGTH)
        Optional<Span> x,

        Place place) {}
