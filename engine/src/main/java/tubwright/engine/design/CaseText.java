// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A case as written. */
@Says("What is held and what pushes. With a couple it is a torsion case, read between two stations; with a force a"
        + " bending case, read at one.")
@Choose({"couple", "force"})
record CaseText(
        @Says(
                "Hardpoints held, each with its directions: \"x, y, z\" (also \"rx, ry, rz\"). A name without L or R means"
                        + " both.")
        @Needed
        List<Named<Name>> hold,

        @Says("Hardpoints that share the load. A name without L or R means both.") @Needed
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
