// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** The car on its wheels, as written. */
@Says(
        "The car as a rigid body on a flat road, which statics turns into tyre forces. Lateral load transfer is split by a"
                + " stated share, fore-and-aft force by the brakes' or the drive's share, side force by the tyres' loads.")
record CarText(
        @Says("Mass with driver and fuel, wheels included.") @In(value = Dimension.MASS, positive = true)
        Amount mass,

        @Says("Its centre of mass: x, and height above the road: \"1500, 280 mm\".") @In(Dimension.LENGTH)
        Amounts centreOfMass,

        @Says("Height z of the road in the axes of the design.") @In(Dimension.LENGTH)
        Amount road,

        @Says("The front axle.") AxleText frontAxle,
        @Says("The rear axle.") AxleText rearAxle,

        @Says("Share of the braking force at the front axle.")
        @In(Dimension.DIMENSIONLESS)
        @Otherwise(value = "60 %", origin = "assumed: common practice, no source")
        Amount brakesAtFront,

        @Says("Share of the driving force at the front axle.")
        @In(Dimension.DIMENSIONLESS)
        @Otherwise(value = "0 %", origin = "assumed: rear-wheel drive")
        Amount driveAtFront,

        @Says(
                "Share of the lateral load transfer that the front axle takes (roll stiffness and roll centres together).")
        @In(Dimension.DIMENSIONLESS)
        @Otherwise(value = "50 %", origin = "assumed: common practice, no source")
        Amount rollMomentAtFront,

        @Says(
                "Roll stiffness of both axles together, springs and anti-roll bars, for \"tubwright enough\": how stiff the tub"
                        + " must be for the balance of the car to obey them.")
        @In(value = Dimension.TORSIONAL_STIFFNESS, positive = true)
        Optional<Amount> rollStiffness,

        @Says("Body that carries the final drive and feels the torque of its shafts. Left out: the driving force turns"
                + " the uprights as braking does.")
        Optional<Name> drivenFrom,

        Place place) {}
