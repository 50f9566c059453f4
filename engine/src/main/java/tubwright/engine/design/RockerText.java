// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A rocker as written. */
@Says("A lever on a pivot fixed to the body, turned by the rod and held by the spring and damper unit.")
record RockerText(
        @Says("Point of the body that carries its pivot.") Name pivot,

        @Says("Direction of its axis, three plain numbers. Left out: square to the arms of rod and damper.")
        @In(Dimension.DIMENSIONLESS)
        Optional<Amounts> axis,

        @Says("Point of the body that holds the other end of the spring and damper unit.")
        Name damper,

        @Says("Where the unit is fixed to the rocker.") @In(Dimension.LENGTH)
        Amounts damperAt,

        @Says(
                "Stiffness of the unit for the torsional stiffness from hub to hub. Left out: a solid link, as on the rig.")
        @In(value = Dimension.STIFFNESS, positive = true)
        Optional<Amount> damperStiffness,

        Place place) {}
