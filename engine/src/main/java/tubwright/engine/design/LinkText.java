// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A link as written. */
@Says("A bar between body and upright.")
record LinkText(
        @Says("Its inner point.") Name inner,

        @Says("Joint at the upright: \"200, 570, 160 mm\".") @In(Dimension.LENGTH)
        Amounts outer,

        Place place) {}
