// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** How layups scatter, as written. The usual spreads are common practice, no source, but for those of tests. */
@Says("Standard deviations of what a layup is made of, and how many layups are drawn.")
public record LayupScatterText(
        @Says("How many.") @Otherwise("100000") int draws,

        @Says("Of the moduli of a ply material, from batch to batch.") @In(Dimension.DIMENSIONLESS) @Otherwise("5 %")
        Amount stiffness,

        @Says("Of the thickness of a ply material, from batch to batch.") @In(Dimension.DIMENSIONLESS) @Otherwise("3 %")
        Amount thickness,

        @Says("Of the angle of each ply as laid.") @In(Dimension.ANGLE) @Otherwise("1.5 deg")
        Amount angle,

        @Says("Of the shear moduli of a core, from sheet to sheet.") @In(Dimension.DIMENSIONLESS) @Otherwise("12 %")
        Amount core,

        @Says("Of the stiffness of a bond, which goes as one over its thickness.")
        @In(Dimension.DIMENSIONLESS)
        @Otherwise("20 %")
        Amount bond) {}
