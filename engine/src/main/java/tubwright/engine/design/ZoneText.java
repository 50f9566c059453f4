// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** An area of one laminate as written. */
@Says("An area of one laminate: strips over their whole length or part of it, or walls.")
record ZoneText(
        @Says("The laminate.") Name laminate,
        @Says("The strips or walls it covers.") @Needed List<Name> on,

        @Says("On strips: only from this station to that.") @In(Dimension.LENGTH)
        Optional<Span> x,

        Place place) {}
