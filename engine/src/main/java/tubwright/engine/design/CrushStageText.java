// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Limit;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A stage of an impact, as written. */
@Says("What holds while the first part of an impact is taken.")
@Choose({"first", "first energy"})
@Choose({"peak", "mean"})
record CrushStageText(
        @Says("The first so many millimetres of stroke.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> first,

        @Says("The first so many kilojoules.") @In(value = Dimension.ENERGY, positive = true)
        Optional<Amount> firstEnergy,

        @Says("Highest deceleration in it.") @In(value = Dimension.ACCELERATION, positive = true)
        Optional<Limit> peak,

        @Says("Mean deceleration over it; with \"first\".") @In(value = Dimension.ACCELERATION, positive = true)
        Optional<Limit> mean,

        Place place) {}
