// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** How one variant buckles and vibrates. */
@Meaning("How one variant buckles and vibrates, by linear theory, on the page's mesh")
public record ModesView(
        @Meaning("whose; empty while nothing was computed") String variant,
        @Meaning("of the file it was computed from") String revision,
        @Meaning("in the order of their numbers") List<ShapeView> shapes,

        @Meaning("cases that do not buckle or could not be answered, in words")
        List<String> notes,

        @Meaning("what a buckling factor is and is not") String aboutBuckling,
        @Meaning("what a frequency is and is not") String aboutVibration) {

    /** Nothing yet. */
    static final ModesView NONE = new ModesView("", "", List.of(), List.of(), "", "");

    /** What a shape is of. */
    public enum ShapeKind {
        BUCKLING,
        FREE,
        HELD
    }

    /** One shape. The movement travels beside it, as an array. */
    @Meaning("One shape; asked for by itself, the array beside it is its displacements, 3 a node, the largest 1")
    public record ShapeView(
            @Meaning("whose") String variant,
            @Meaning("of the file") String revision,
            @Meaning("by which it is asked for, from 0") int number,
            ShapeKind what,

            @Meaning("the case that buckles; empty for a vibration")
            String loading,

            @Meaning("of a vibration, in words") String name,

            @Meaning("factor on the loads of the case, or Hz")
            double value,

            @Meaning("zone, joint or other part with most of the strain energy")
            String part,

            @Meaning("strip or wall with most of the energy of a buckling shape")
            String panel,

            @Meaning("of the energy in the part, 0 to 1; of buckling shapes")
            Optional<Double> share,

            @Meaning("where it moves most, m, 3 numbers") double[] place) {}

    /** Shapes asked for. */
    @Meaning("Of which variant to find them")
    public record ModesRequest(String variant) {}
}
