// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;

/** Mass against stiffness of one variant. */
@Meaning(
        "Mass against stiffness: the lightest layup found for a row of stiffness targets, and what nothing is lighter than")
public record ExchangeView(
        @Meaning("whose; empty while there is no curve") String variant,
        @Meaning("of the file it was drawn from") String revision,
        @Meaning("the case whose stiffness is asked for") String loading,
        AnswerView.Kind kind,

        @Meaning("in rising order of the stiffness asked for")
        List<PointView> points,

        @Meaning("the tub it was drawn from and the design's other variants, as they are")
        List<MarkView> marks) {

    /** No curve yet. */
    static final ExchangeView NONE = new ExchangeView("", "", "", AnswerView.Kind.TORSION, List.of(), List.of());

    /** One target. */
    @Meaning("One stiffness target and the lightest layup found for it")
    public record PointView(
            @Meaning("least stiffness between the hardpoints, N·m/rad or N/m")
            double asked,

            @Meaning("of the layup found, proved for the mesh, same unit")
            LedgerView.BoundsView reached,

            @Meaning("kg") double mass,

            @Meaning("no layup that may be chosen is lighter, kg")
            double bound) {}

    /** A tub that is there. */
    @Meaning("A tub as it is")
    public record MarkView(
            @Meaning("of the variant") String name,
            @Meaning("kg") double mass,

            @Meaning("between the hardpoints, N·m/rad or N/m")
            double stiffness) {}

    /** A curve asked for. */
    @Meaning("Which curve to draw")
    public record ExchangeRequest(
            String variant,

            @Meaning("share of the present stiffness asked of the softest point")
            double from,

            @Meaning("of the stiffest") double to,
            @Meaning("2 to 40") int points,
            @Meaning("s to spend on all points together") double seconds) {}

    /** A point to be laid into a draft. */
    @Meaning("Which point of the curve a draft is to become")
    public record LayRequest(
            @Meaning("its place in the curve, from 0") int point) {}
}
