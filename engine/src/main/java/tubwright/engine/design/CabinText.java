// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** What has to go into the tub, as written. */
@Says("Who and what has to go into the tub. \"tubwright cabin\" holds it against the inner skin.")
record CabinText(
        @Says("The driver as a template.") Optional<DriverText> driver,

        @Says("Volumes kept free: pedals, steering column, belts.")
        List<Named<KeptText>> kept,

        @Says("The tank.") Optional<TankText> tank,

        @Says("Least distance wanted between anything and the inner skin.")
        @In(Dimension.LENGTH)
        @Otherwise(value = "10 mm", origin = "assumed: common practice, no source")
        Amount room,

        Place place) {}
