// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.trim.LayupRules;

/** Layup rules as written. */
@Says(
        "What stacks must keep to when weight is taken out. Where no source is named a default is common practice, no source.")
record LayupRulesText(
        @Says("Plies each skin of a sandwich, and each half of a solid laminate, keeps at least.") @Otherwise("2")
        int fewestPlies,

        @Says("Plies of each kind that may be laid into a skin beside those of the design; left out, none.")
        Optional<Integer> mostAdded,

        @Says("Core thicknesses in stock, besides those of the design.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amounts> cores,

        @Says("Whether stacks are symmetric: \"free\", \"as designed\" (where the design's stack is) or \"required\".")
        @Otherwise("as designed")
        Demand symmetry,

        @Says("The same for the balance of plies off 0 and 90.") @Otherwise("as designed")
        Demand balance,

        @Says("Least share of the fibres in each of 0, 45, -45 and 90, e.g. \"10 %\" (MIL-HDBK-17-3F ch. 12).")
        @In(Dimension.DIMENSIONLESS)
        @Otherwise("0 %")
        Amount leastShare,

        @Says("Plies of one direction that may lie on one another (MIL-HDBK-17-3F ch. 12).") @Otherwise("4")
        int mostGrouped,

        @Says("Whether the outer and inner plies may change: \"kept\" or \"free\".") @Otherwise("kept")
        Faces faces,

        @Says(
                "Plies by which a skin may differ between neighbouring zones of a piece; where the design's own neighbours"
                        + " differ more, their difference is allowed.")
        Optional<Integer> mostDropped,

        @Says("Thickness by which cores of neighbouring zones may differ.") @In(Dimension.LENGTH)
        Optional<Amount> coreStep,

        @Says("Plies of each skin that neighbouring zones have in common, so that they run through.")
        Optional<Integer> runningThrough,

        @Says("Different stacks there may be in all zones together.")
        Optional<Integer> mostStacks,

        @Says("Whether plies of patches may be left out: \"kept\" or \"free\".") @Otherwise("kept")
        Faces patches,

        @Says("Whether bonds may be made narrower, down to half: \"kept\" or \"free\".") @Otherwise("kept")
        Faces joints) {

    /** Where a rule holds. */
    enum Demand {
        FREE,
        AS_DESIGNED,
        REQUIRED
    }

    /** Whether something may change. */
    enum Faces {
        KEPT,
        FREE
    }

    static LayupRules rules(Optional<LayupRulesText> text) {
        return text.map(LayupRulesText::rules).orElse(LayupRules.USUAL);
    }

    private LayupRules rules() {
        List<Double> thicknesses =
                cores.map(c -> Arrays.stream(c.si()).boxed().toList()).orElse(List.of());
        return new LayupRules(
                fewestPlies,
                mostAdded.orElse(0),
                thicknesses,
                LayupRules.Demand.valueOf(symmetry.name()),
                LayupRules.Demand.valueOf(balance.name()),
                leastShare.si(),
                mostGrouped,
                faces == Faces.KEPT,
                mostDropped.orElse(Integer.MAX_VALUE),
                coreStep.map(Amount::si).orElse(Double.POSITIVE_INFINITY),
                runningThrough.orElse(0),
                mostStacks.orElse(Integer.MAX_VALUE),
                patches == Faces.FREE,
                joints == Faces.FREE);
    }
}
