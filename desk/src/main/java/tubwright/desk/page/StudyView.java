// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;

/** A study as it was run last. */
@Meaning("A study as it was run last: many designs of one tub")
public record StudyView(
        @Meaning("its name") String name,
        @Meaning("what it asks, in words") String about,

        @Meaning("whether design and study are still those it was run with")
        boolean current,

        @Meaning("whether all its designs are there") boolean complete,

        @Meaning("what is varied, then what was read and what follows from it")
        List<AxisView> axes,

        @Meaning("the designs, by variant") List<RowsView> variants) {

    /** One thing that differs from design to design. */
    @Meaning("One thing that differs from design to design")
    public record AxisView(
            @Meaning("its name") String name,

            @Meaning("unit its numbers are in; empty for none")
            String unit,

            @Meaning("whether it is varied, not read") boolean varied,

            @Meaning("names of 0, 1, 2... where words are varied")
            List<String> words) {}

    /** The designs of a variant. */
    @Meaning("The designs of a variant")
    public record RowsView(
            @Meaning("the variant") String variant,
            @Meaning("its designs") List<StudyPointView> points) {}

    /** A design. */
    @Meaning("A design of a study")
    public record StudyPointView(
            @Meaning("a number for each axis; only those of what is varied where it could not be computed")
            double[] numbers,

            @Meaning("whether nothing beats it in the study's aims")
            boolean unbeaten,

            @Meaning("why it could not be computed; empty where it could")
            String reason) {}

    /** What is asked. */
    @Meaning("A design of a study to put into the file as a variant")
    public record OpenPointRequest(
            @Meaning("the study") String study,
            @Meaning("of which variant") String variant,
            @Meaning("number of the design there, from 0") int point,
            @Meaning("name of the variant to add") String name) {}
}
