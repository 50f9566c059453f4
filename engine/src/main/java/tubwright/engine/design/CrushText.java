// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.safety.crush.CrushStructure;

/** A crush structure as written. */
@Says(
        "A structure that crushes in an impact: nose, side, rear. Answered by \"tubwright crush\"; where \"onto\" or \"over\" says"
                + " what its force goes into, the strength run has a case \"... crush\" of its own.")
@Choose(
        value = {"onto", "over"},
        needed = false)
record CrushText(
        @Says("Side on which it is hit.") CrushStructure.Hit hit,

        @Says("All that hangs on the structure: car with driver and fuel.") @In(value = Dimension.MASS, positive = true)
        Amount mass,

        @Says("Speed against something that does not give.") @In(value = Dimension.VELOCITY, positive = true)
        Amount speed,

        @Says("Its lengths, from the end that is hit.") @Needed
        List<Named<CrushSectionText>> sections,

        @Says("First peak over the steady force of the tip: 1 where a chamfer or the like does away with it.")
        @In(value = Dimension.DIMENSIONLESS, positive = true)
        Optional<Amount> firstPeak,

        @Says("What starts the crush, and where the first peak comes from.") @Otherwise("not stated")
        String trigger,

        @Says("What it must keep to.") Optional<CrushLimitsText> limits,

        @Says("What may break off behind the cell, from the front.")
        List<Named<CrushPartText>> parts,

        @Says("Hardpoints that share its force equally. A name without L or R means both.")
        List<Name> onto,

        @Says("Strips or walls its force is spread over, as the wall of a nose stands on the skin behind it.")
        List<Name> over,

        @Says("With \"over\": stations between which it is spread.") @In(Dimension.LENGTH)
        Optional<Span> x,

        @Says("Force that bulkhead and mounts bore in a test.") @In(value = Dimension.FORCE, positive = true)
        Optional<Amount> bears,

        @Says("Which test; needed with \"bears\".") Optional<String> bearsFrom,

        @Says("Factor on the highest crush force for what is behind it.")
        @In(value = Dimension.DIMENSIONLESS, positive = true)
        @Otherwise(value = "1.25", origin = "common practice, no source")
        Amount margin,

        Place place) {}
