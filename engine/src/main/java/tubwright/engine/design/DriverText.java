// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.cabin.Body;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** The driver as written. */
@Says("A driver by percentile, every length at the same one (survey of U.S. Army personnel, 2012).")
record DriverText(
        @Says("Whom the percentile counts: men or women.") Body.People people,

        @Says("Share of them that is smaller, 1 to 99 %.") @In(value = Dimension.DIMENSIONLESS, positive = true)
        Amount percentile,

        @Says("x, z of the hip joint: \"1480, 190 mm\".") @In(Dimension.LENGTH)
        Amounts hips,

        @Says("Angle of the torso aft of upright.") @In(value = Dimension.ANGLE, positive = true)
        Amount back,

        @Says("x, z of the heels on the pedals: \"420, 210 mm\".") @In(Dimension.LENGTH)
        Amounts heels,

        @Says("Middle to middle of the feet.")
        @In(Dimension.LENGTH)
        @Otherwise(value = "150 mm", origin = "assumed: common practice, no source")
        Amount feetApart,

        @Says("Thickness of what the driver wears, on every side.")
        @In(Dimension.LENGTH)
        @Otherwise(value = "6 mm", origin = "assumed: common practice, no source")
        Amount clothing,

        Place place) {}
