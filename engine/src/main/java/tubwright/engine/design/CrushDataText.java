// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** How something crushes, as written. */
@Says("How a material in its form crushes steadily. Without a crush stress or a specific energy nothing is checked.")
@Choose(
        value = {"crush stress", "specific energy"},
        needed = false)
record CrushDataText(
        @Says("Stress at which it goes on crushing, over the gross area: honeycomb and foam.")
        @In(value = Dimension.PRESSURE, positive = true)
        Optional<Amount> crushStress,

        @Says("Energy per mass that is crushed: tubes, cones and edges of laminate.")
        @In(value = Dimension.SPECIFIC_ENERGY, positive = true)
        Optional<Amount> specificEnergy,

        @Says(
                "Flatwise strength of the bare core: the peak before it crushes, two to three times the crush stress. It is"
                        + " never used in its place.")
        @In(value = Dimension.PRESSURE, positive = true)
        Optional<Amount> bareStrength,

        @Says("Density of the wall; needed with a specific energy.") @In(value = Dimension.DENSITY, positive = true)
        Optional<Amount> density,

        @Says("Share of its length that crushes before it is solid.")
        @In(value = Dimension.DIMENSIONLESS, positive = true)
        Optional<Amount> usableShare,

        @Says("Force at the speed of the impact over the quasi-static force.")
        @In(value = Dimension.DIMENSIONLESS, positive = true)
        Optional<Amount> atSpeed,

        @Says("Where the values come from: a test report, a publication.") @Otherwise("stated in the design")
        String source,

        @Says("Where the factor at speed comes from; needed with it.")
        Optional<String> atSpeedFrom,

        Place place) {}
