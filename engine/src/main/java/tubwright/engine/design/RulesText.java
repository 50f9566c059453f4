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
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** Rules that a tub is held against, as written. */
@Says(
        "A rule set and what its places are on this tub; answered by \"tubwright rules\". What is not said is not checked.")
@Choose({"set", "own"})
record RulesText(
        @Says("Name of a shipped set, or a file of your own beside the design: \"our-rules.yaml\".")
        Optional<Name> set,

        @Says("A set of your own, written here.") Optional<RuleSetText> own,

        @Says(
                "Hardpoints held while the tub is pushed, each with its directions; left out, it is a body free in space.")
        List<Named<Name>> hold,

        @Says("The set's places on this tub.") List<Named<Where>> places,
        Place place) {
    /** A place. */
    @Says("What a place of a rule set is on this tub.")
    record Where(
            @Says("Zones whose laminates count.") List<Name> zones,

            @Says("Height of the panel across its bending.") @In(value = Dimension.LENGTH, positive = true)
            Optional<Amount> height,

            @Says("Hardpoints or nodes. A name without L or R means both.")
            List<Name> points,

            @Says("Middle of a pad: \"1300, 260, 300 mm\".") @In(Dimension.LENGTH)
            Optional<Amounts> at,

            @Says("Strips or walls under the pad.") List<Name> on,

            @Says("EI of the panel by your own test.") @In(value = Dimension.BENDING_RIGIDITY, positive = true)
            Optional<Amount> testedBending,

            @Says("Force that punched the panel through in your own test.")
            @In(value = Dimension.FORCE, positive = true)
            Optional<Amount> testedPunch,

            @Says("Force that a point bore in your own test.") @In(value = Dimension.FORCE, positive = true)
            Optional<Amount> testedPoint,

            @Says("Which tests; needed with tested values.") Optional<String> testedFrom,
            Place place) {}
}
