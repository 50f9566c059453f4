// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Limit;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** What an impact must keep to, as written. */
@Says("What an impact must keep to. A sanctioning body's figures may be written here or come with a rule set.")
record CrushLimitsText(
        @Says("Mean deceleration over the stroke, v²/2s.") @In(value = Dimension.ACCELERATION, positive = true)
        Optional<Limit> mean,

        @Says("Highest deceleration.") @In(value = Dimension.ACCELERATION, positive = true)
        Optional<Limit> peak,

        @Says("Highest crush force.") @In(value = Dimension.FORCE, positive = true)
        Optional<Limit> force,

        @Says("Stages of the impact.") List<CrushStageText> stages,

        @Says("Levels of deceleration and how long they may be passed.")
        List<Spike> spikes,

        Place place) {
    /** A level and a time. */
    @Says("A level of deceleration that may be passed for a short time.")
    record Spike(
            @Says("The level.") @In(value = Dimension.ACCELERATION, positive = true)
            Amount above,

            @Says("How long in all.") @In(value = Dimension.TIME, positive = true)
            Limit lasting,

            Place place) {}
}
