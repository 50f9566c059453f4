// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** How a hardpoint is made, as written. */
@Says("How a hardpoint is made, for its strength. Strengths by test go before what is computed.")
record InsertText(
        @Says(
                "\"potted\" in resin through the whole core, a solid \"block\" in place of the core, a \"pad\" bonded onto the"
                        + " skin, or \"bolted\" through solid laminate or sheet.")
        @Otherwise("potted")
        Kind kind,

        @Says("Diameter of the insert itself where it goes through the skin.")
        @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> diameter,

        @Says("Diameter of a bolt's shank.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> bolt,

        @Says("Number of bolts.") @Otherwise("1") int bolts,

        @Says("Diameter of the circle on which several bolts stand.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> boltCircle,

        @Says("Diameter of the flange bonded to the skin, of the pad, or of the washers.")
        @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> flange,

        @Says("Adhesive under flange or pad.") Optional<Name> adhesive,

        @Says("Tested strength along the insert.") @In(value = Dimension.FORCE, positive = true)
        Optional<Amount> testedPull,

        @Says("Tested strength along the skin.") @In(value = Dimension.FORCE, positive = true)
        Optional<Amount> testedShear,

        @Says("Tested strength against turning.") @In(value = Dimension.MOMENT, positive = true)
        Optional<Amount> testedTorque,

        Place place) {

    /** How it sits in the panel. */
    enum Kind {
        POTTED,
        BLOCK,
        PAD,
        BOLTED
    }
}
