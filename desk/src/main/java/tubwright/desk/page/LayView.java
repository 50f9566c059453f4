// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;

/** Every ply of a variant as it lies in its mould. */
@Meaning("Every ply of a variant as it lies in its mould, in the order of laying")
public record LayView(
        @Meaning("whose; empty while nothing was laid") String variant,
        @Meaning("of the file it was laid from") String revision,
        List<LaidPieceView> pieces) {

    /** Nothing yet. */
    static final LayView NONE = new LayView("", "", List.of());

    /** A piece. */
    @Meaning("What comes out of one mould")
    public record LaidPieceView(
            String name,

            @Meaning("in the order of laying; plies of one step lie beside each other")
            List<PlyView> plies) {}

    /** A ply. Its pattern travels when it is asked for by itself. */
    @Meaning(
            "A ply; asked for by itself, the arrays beside it are its shear in degrees and the direction of its warp or fibres,"
                    + " 1 and 3 numbers for each element of the tub, not a number where it does not lie")
    public record PlyView(
            @Meaning("by which it is asked for, from 0") int number,
            String name,

            @Meaning("in the order of laying, from 1") int step,
            @Meaning("of the piece") int steps,
            @Meaning("what it is, in words") String words,
            @Meaning("that it runs through") List<String> zones,
            @Meaning("it belongs to; empty for none") String patch,
            @Meaning("on its face, m²") double area,
            @Meaning("kg") double mass,
            @Meaning("whether it is cloth and shears") boolean cloth,
            @Meaning("of cloth, degrees") double largestShear,
            @Meaning("at which its cloth locks, degrees") double locking,

            @Meaning("largest angle of a thread from its nominal direction, degrees")
            double largestTurn,

            @Meaning("what would help where a limit is passed")
            List<String> advice,

            @Meaning("whether to debulk after this step") boolean debulk,

            @Meaning("of the flat pattern: length along the warp and width, m, 2 numbers")
            double[] size,

            @Meaning(
                    "closed outlines of the pattern, the outer one first, then cut-outs; x, y by turns, m; warp along x; only of a ply"
                            + " asked for by itself")
            List<double[]> outlines,

            @Meaning("where laying starts on the pattern, m, 2 numbers")
            double[] start,

            @Meaning("of the reference direction on the pattern at the start, from the warp, rad")
            double reference) {}

    /** Plies asked for. */
    @Meaning("Of which variant to lay them")
    public record LayingRequest(String variant) {}
}
