// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** The give of a body as written. */
@Says("A straight beam along x through the body's centre of mass, from its front to its rear end.")
record ElasticText(
        @Says("x of its front end.") @In(Dimension.LENGTH) Amount front,
        @Says("x of its rear end.") @In(Dimension.LENGTH) Amount rear,

        @Says("Between its ends.") @In(value = Dimension.TORSIONAL_STIFFNESS, positive = true)
        Amount torsionalStiffness,

        @Says("Force at the rear end for its movement while the front end is held (any direction across).")
        @In(value = Dimension.STIFFNESS, positive = true)
        Amount bendingStiffness,

        @Says("Along x between its ends.")
        @In(value = Dimension.STIFFNESS, positive = true)
        @Otherwise(value = "1000 kN/mm", origin = "assumed: hardly stretches")
        Amount axialStiffness,

        Place place) {}
