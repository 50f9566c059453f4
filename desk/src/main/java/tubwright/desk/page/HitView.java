// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** What the tub carries when a patch is gone. */
@Meaning("What the tub carries when a patch is gone, by linear theory, on the page's mesh")
public record HitView(
        @Meaning("whose") String variant,
        @Meaning("of the file it was computed from") String revision,
        @Meaning("middle of the patch, m, 3 numbers") double[] place,
        @Meaning("zone or wall it lies in") String zone,
        @Meaning("m²") double area,
        @Meaning("barely visible, visible or hole") String degree,
        @Meaning("stiffness by case") List<StiffnessView> stiffness,
        @Meaning("load cases, weakest first") List<LoadView> loads,

        @Meaning("what else there is to say: loads without a path, ties lost")
        String aside,

        @Meaning("what such an answer is and is not") String about) {

    /** A stiffness before and after. */
    @Meaning("Stiffness of one case")
    public record StiffnessView(
            @Meaning("the case") String loading,

            @Meaning("share of it that is lost, 0 to 1; none where part of its load acted on what is gone")
            Optional<Double> lost) {}

    /** A load case before and after. */
    @Meaning("Lowest reserve factor near the patch in one load case")
    public record LoadView(
            @Meaning("the case") String loading,
            @Meaning("whether a path is left for its loads") boolean carried,

            @Meaning("before; none where nothing pushes there")
            Optional<Double> before,

            @Meaning("after") Optional<Double> after,
            @Meaning("what gives way, and where") String how) {}

    /** What is asked. */
    @Meaning("A patch to take away")
    public record HitRequest(
            @Meaning("of which variant") String variant,
            @Meaning("m, 3 numbers, on skin or wall") double[] place,
            @Meaning("diameter, m") double size,
            @Meaning("barely visible, visible or hole") String degree) {}
}
