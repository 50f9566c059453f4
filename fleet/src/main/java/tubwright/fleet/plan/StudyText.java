// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** A study as written. */
@Says(
        "A study of one design: what is varied, between what, and what is read. Lies beside the design as studies/NAME.yaml.")
public record StudyText(
        @Says("What it asks, in a sentence or two.") Optional<String> about,

        @Says("Variants of the design it is made with, each in turn; left out, the design as written.")
        List<Name> variants,

        @Says("What is varied, by name.") List<Named<VaryText>> vary,

        @Says("How the points are laid out: \"full\" takes all combinations, \"latin\" a Latin hypercube, \"sobol\" the"
                + " first points of a Sobol sequence, \"indices\" the points that Sobol indices are told from: (varied + 2) times"
                + " as many as said.")
        @Otherwise("full")
        Layout layout,

        @Says("How many points, where not all combinations are taken.")
        Optional<Integer> points,

        @Says("What chance begins with: the same number, the same points.") @Otherwise("1")
        int seed,

        @Says("What is read of every design.") List<Name> read,

        @Says("Edge length of the elements, where not the design's.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> mesh,

        @Says("What material costs, to put money beside mass.")
        Optional<MoneyText> money,

        @Says("What is wanted at once: \"least mass\", \"most torsional stiffness\". Points between those computed that"
                + " promise most are computed too, and what nothing beats is told.")
        List<Name> front,

        @Says("How many promising points are computed.") @Otherwise("12")
        int verify,

        @Says("What share of the tubs built is to meet each target, where things scatter.") @Otherwise("0.99")
        double share,

        @Says("How materials and hands scatter; many layups are drawn and answered with proved bounds.")
        Optional<LayupScatterText> layupScatter,

        Place place) {
    /** How points are laid out. */
    public enum Layout {
        FULL,
        LATIN,
        SOBOL,
        INDICES
    }
}
