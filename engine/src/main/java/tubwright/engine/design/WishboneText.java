// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A wishbone as written. */
@Says("Two legs from the body to one joint at the upright.")
record WishboneText(
        @Says("Its two inner points: front and rear leg.") List<Name> inner,

        @Says("Joint at the upright: \"300, 560, 310 mm\".") @In(Dimension.LENGTH)
        Amounts outer,

        Place place) {}
