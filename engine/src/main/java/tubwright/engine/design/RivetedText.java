// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Says;
import tubwright.engine.joint.InterRivetBuckling;
import tubwright.engine.quantity.Dimension;

/** Rows of fasteners as written. */
@Says("Rows of rivets or bolts; the flexibility of each after Huth (1986), single shear.")
record RivetedText(
        @Says("Diameter of the shank.") @In(value = Dimension.LENGTH, positive = true)
        Amount diameter,

        @Says("Distance from fastener to fastener along the row.") @In(value = Dimension.LENGTH, positive = true)
        Amount pitch,

        @Says("Number of rows.") @Otherwise("1") int rows,

        @Says("Distance between rows.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> rowSpacing,

        @Says("Material of the fasteners.") Name fastener,

        @Says("The two sheets joined: their thicknesses.") @In(value = Dimension.LENGTH, positive = true)
        Amounts sheets,

        @Says("Material of the sheets (a metal, or a laminate of the design by name).")
        Name sheetMaterial,

        @Says("Constants of the formula: \"riveted metal\", \"bolted metal\" or \"bolted carbon\".")
        @Otherwise("riveted metal")
        Kind kind,

        @Says("Width of sheet folded over to carry the row, for its mass.") @In(Dimension.LENGTH) @Otherwise("0 mm")
        Amount flange,

        @Says("Mass of one fastener; left out, it is estimated from its volume.")
        @In(value = Dimension.MASS, positive = true)
        Optional<Amount> massEach,

        @Says("Diameter of the heads; left out, twice the shank's.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> headDiameter,

        @Says("Distance of the outermost row from the edge of the sheet; left out, two diameters.")
        @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> edgeDistance,

        @Says("How the heads hold the sheet against buckling between fasteners: \"universal\", \"round\","
                + " \"countersunk\" or \"spot weld\".")
        @Otherwise("universal")
        Head head) {

    /** Kinds of head. */
    enum Head {
        UNIVERSAL(InterRivetBuckling.Head.UNIVERSAL),
        ROUND(InterRivetBuckling.Head.ROUND),
        COUNTERSUNK(InterRivetBuckling.Head.COUNTERSUNK),
        SPOT_WELD(InterRivetBuckling.Head.SPOT_WELD);

        private final InterRivetBuckling.Head head;

        Head(InterRivetBuckling.Head head) {
            this.head = head;
        }

        InterRivetBuckling.Head head() {
            return head;
        }
    }

    /** Which constants of the formula apply. */
    enum Kind {
        RIVETED_METAL,
        BOLTED_METAL,
        BOLTED_CARBON
    }
}
