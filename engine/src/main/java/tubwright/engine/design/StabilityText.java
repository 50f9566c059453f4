// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.response.StabilityAsk;

/** What of stability and vibration is answered, as written. */
@Says("Buckling and natural frequencies: answered where this section, a target or --stability asks for them.")
record StabilityText(
        @Says("Whether buckling factors are wanted.") @Otherwise("yes")
        boolean buckling,

        @Says("How many of the lowest buckling factors of every case.") @Otherwise("3")
        int bucklingFactors,

        @Says("Whether natural frequencies are wanted.") @Otherwise("yes")
        boolean vibration,

        @Says(
                "How many of the lowest natural frequencies; panels of thin sheet have many before the first of the whole tub.")
        @Otherwise("10")
        int frequencies,

        @Says(
                "Hardpoints held, each with its directions, for a second set of frequencies beside those of the tub free in"
                        + " space: \"x, y, z\" (also \"rx, ry, rz\"). A name without L or R means both.")
        List<Named<Name>> hold,

        Place place) {
    /** More than these are not the lowest any more. */
    private static final int MOST = 200;

    StabilityAsk ask(HardpointReader hardpoints) {
        int most = Math.max(bucklingFactors, frequencies);
        if (most > MOST) {
            throw new DesignError(
                    place,
                    "stability: " + most + " is too many factors or frequencies to look for",
                    "give a number up to " + MOST);
        }
        return new StabilityAsk(
                buckling ? bucklingFactors : 0, vibration ? frequencies : 0, CaseReader.supports(hold, hardpoints));
    }
}
