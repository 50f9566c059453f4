// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.InByKey;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;

/** An own material as written. */
@Says("A material of the design's own. Directions: 1 along the fibres (a honeycomb's ribbon), 2 across, 3 through the"
        + " thickness.")
record MaterialText(
        @Says("What it is.") Kind kind,
        @Says("One line for a reader.") Optional<String> description,

        @Says("Where the values come from: a test report, a data sheet.") @Otherwise("stated in the design")
        String source,

        @Says("Its values.") @Needed @InByKey(MaterialProperties.class)
        List<Named<Amount>> properties,

        Place place) {

    /** Kinds of material. */
    enum Kind {
        UD,
        CLOTH,
        HONEYCOMB,
        FOAM,
        FILM,
        PASTE,
        METAL
    }
}
