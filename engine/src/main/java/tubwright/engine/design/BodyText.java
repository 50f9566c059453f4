// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** Something bolted on that is neither tube nor tub, as written. */
@Says(
        "An engine, gearbox or other body bolted on at its mounts. Rigid unless \"elastic\" or \"matrix\" says otherwise.")
record BodyText(
        @Says("Its mass.") @In(Dimension.MASS) Amount mass,

        @Says("Its centre of mass: x, y, z.") @In(Dimension.LENGTH)
        Amounts centreOfMass,

        @Says("Where it is bolted on, one bolt each: hardpoints, or nodes where tubes end.")
        List<Name> mounts,

        @Says("Stiffness of a bolt with its boss, the same in all directions.")
        @In(value = Dimension.STIFFNESS, positive = true)
        @Otherwise(value = "300 kN/mm", origin = "assumed: a steel bolt in an aluminium boss")
        Amount mountStiffness,

        @Says("A simple elastic body.") Optional<ElasticText> elastic,

        @Says(
                "Stiffness at its mounts, row by row: the forces at the mounts (x, y, z of each, left before right, in the"
                        + " order of \"mounts\") for a unit movement of one of them. Instead of a body that its points ride on.")
        @In(Dimension.STIFFNESS)
        List<Amounts> matrix,

        @Says("Points that ride on it: pick-ups of a suspension, the far end of a tube.")
        List<Named<NodeText>> points,

        Place place) {}
