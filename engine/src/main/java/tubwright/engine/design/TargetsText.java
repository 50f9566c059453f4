// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Limit;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** What the tub must reach, as written. */
record TargetsText(
        @Says("Torsional stiffness between the stations of the torsion case.")
        @In(value = Dimension.TORSIONAL_STIFFNESS, positive = true)
        Optional<Limit> torsionalStiffness,

        @Says("Mass of the tub with joints, inserts and stiffeners.") @In(value = Dimension.MASS, positive = true)
        Optional<Limit> mass,

        @Says("Force over movement in the bending case.") @In(value = Dimension.STIFFNESS, positive = true)
        Optional<Limit> bendingStiffness,

        @Says("Lowest buckling factor over the load cases; over all cases where there is no load case.")
        @In(value = Dimension.DIMENSIONLESS, positive = true)
        Optional<Limit> bucklingFactor,

        @Says("First natural frequency of torsion, the tub free in space.")
        @In(value = Dimension.FREQUENCY, positive = true)
        Optional<Limit> firstTorsionFrequency,

        @Says("First natural frequency of vertical bending, the tub free in space.")
        @In(value = Dimension.FREQUENCY, positive = true)
        Optional<Limit> firstBendingFrequency,

        @Says("Least reserve factor in all load cases, spots at inserts left out; \"tubwright lighten\" keeps it.")
        @In(value = Dimension.DIMENSIONLESS, positive = true)
        Optional<Limit> reserveFactor) {}
