// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** Mass without stiffness, as written. */
@Says("Driver, fuel, battery: mass at points, or spread over skin and walls.")
@Choose({"at", "on"})
record PlacedMassText(
        @Says("The whole of it.") @In(Dimension.MASS) Amount mass,
        @Says("Points or bodies that share it equally.") List<Name> at,
        @Says("Strips or walls it is spread over evenly.") List<Name> on,

        @Says("Stations between which it is spread; left out, the whole length.") @In(Dimension.LENGTH)
        Optional<Span> x,

        Place place) {}
