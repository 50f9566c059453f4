// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A case as written. */
@Says("What is held and what pushes. With a couple it is a torsion case, read between two stations; with a force a"
        + " bending case, read at one. With forces, pads, pressures, a car on its wheels or forces on wheels, alone or together, it"
        + " is a load case, answered by reserve factors.")
@Choose(
        value = {"couple", "force", "forces", "pads", "pressures", "car", "wheels"},
        several = true)
@Choose(
        value = {"couple", "force", "forces"},
        needed = false)
@Choose(
        value = {"couple", "force", "car"},
        needed = false)
record CaseText(
        @Says(
                "Hardpoints held, each with its directions: \"x, y, z\" (also \"rx, ry, rz\"). A name without L or R means"
                        + " both. A load case that holds nothing is a body free in space, balanced by the inertia of its"
                        + " own mass.")
        List<Named<Name>> hold,

        @Says("Torsion and bending: hardpoints that share the load. A name without L or R means both.")
        List<Name> loadAt,

        @Says("Torsion: the couple about x, right-handed about +x.") @In(Dimension.MOMENT)
        Optional<Amount> couple,

        @Says("Torsion: station at which the loaded end's twist is read.") @In(Dimension.LENGTH)
        Optional<Amount> frontStation,

        @Says("Torsion: station at which the held end's twist is read.") @In(Dimension.LENGTH)
        Optional<Amount> rearStation,

        @Says("Bending: the whole force.") @In(Dimension.FORCE)
        Optional<Amount> force,

        @Says("Bending: where the force points.") @Otherwise("down")
        Heading direction,

        @Says("Bending: station at which the movement is read.") @In(Dimension.LENGTH)
        Optional<Amount> station,

        @Says(
                "Load case: the force at each hardpoint, three numbers aft, right and up: \"-800, 300, 1200 N\". A name"
                        + " without L or R means both; the force is then that on the right, and the left one is its mirror image.")
        @In(Dimension.FORCE)
        List<Named<Amounts>> forces,

        @Says("Load case: the moment at each hardpoint, about x, y and z, likewise.") @In(Dimension.MOMENT)
        List<Named<Amounts>> moments,

        @Says("Load case: forces spread over the skin or wall under a pad.")
        List<Named<PadText>> pads,

        @Says("Load case: pressure by strip or wall.") List<Named<PressureText>> pressures,

        @Says("Load case: what the car does on its wheels; needs \"car\". Links and rods bring the tyres' forces to the"
                + " tub, which is then a body free in space with everything that is bolted on.")
        Optional<ManoeuvreText> car,

        @Says("Load case: force on a tyre beyond those of the whole car's statics, aft, right and up: \"1.5, 0, 4 kN\"."
                + " Wheels are called front L, front R, rear L and rear R; front and rear mean both, as with forces.")
        @In(Dimension.FORCE)
        List<Named<Amounts>> wheels,

        @Says("Load case: what the tub's own mass feels, aft, right and up: \"0, 0, -1 g0\" is its weight.")
        @In(Dimension.ACCELERATION)
        Optional<Amounts> acceleration,

        @Says("Load case: where the loads come from.") @Otherwise("not stated")
        String source,

        Place place) {

    /** Where a force points. */
    enum Heading {
        DOWN(0, 0, -1),
        UP(0, 0, 1),
        RIGHT(0, 1, 0),
        LEFT(0, -1, 0),
        AFT(1, 0, 0),
        FORWARD(-1, 0, 0);

        private final double[] unit;

        Heading(double... unit) {
            this.unit = unit;
        }

        /** The force vector of this heading. */
        double[] times(double force) {
            return new double[] {unit[0] * force, unit[1] * force, unit[2] * force};
        }
    }
}
