// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** Local extra plies as written. */
@Says("Local extra plies, added to the inner face: on strips from station to station, round openings, or round"
        + " hardpoints.")
@Choose({"on", "around", "at"})
record PatchText(
        @Says("Orientation code of the plies, the one that is laid first in front.")
        Name stack,

        @Says("Legend, as in a laminate.") @Needed List<Named<Name>> plies,
        @Says("The strips it lies on.") List<Name> on,

        @Says("On strips: from this station to that.") @In(Dimension.LENGTH)
        Optional<Span> x,

        @Says("The openings it runs round.") List<Name> around,

        @Says("Round openings: width of the band from the edge.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> width,

        @Says("The hardpoints it surrounds.") List<Name> at,

        @Says("Round hardpoints: its diameter.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> diameter,

        Place place) {}
