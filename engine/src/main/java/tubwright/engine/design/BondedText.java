// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A bond line as written. */
@Says(
        "A bond line: shear stiffness G w/t, normal stiffness E' w/t and rotational stiffness E' w³/(12 t) per length, with"
                + " E' the adhesive's modulus with its in-plane strains held.")
record BondedText(
        @Says("Width of the bonded area, square to the joint; of each leg in a tee.")
        @In(value = Dimension.LENGTH, positive = true)
        Amount overlap,

        @Says("The adhesive.") Name adhesive,

        @Says("Thickness of the adhesive.") @In(value = Dimension.LENGTH, positive = true) @Otherwise("0.2 mm")
        Amount bondLine,

        @Says("One bonded face (\"single lap\"), two (\"double lap\"), or two legs of a wall's edge (\"tee\").")
        @Otherwise("single lap")
        Arrangement arrangement,

        @Says("Laminate of the tape that makes the second face or the legs, for its mass.")
        Optional<Name> tape) {

    /** How the bonded faces lie. */
    enum Arrangement {
        SINGLE_LAP,
        DOUBLE_LAP,
        TEE;

        /** Number of bonded faces side by side or back to back. */
        int faces() {
            return this == SINGLE_LAP ? 1 : 2;
        }
    }
}
