// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** The project as it lies open. */
@Meaning("The project that lies open: the design file as it was last read")
public record ProjectView(
        @Meaning("name of the tub, or of the folder while the file cannot be read")
        String tub,

        @Meaning("who designs it and notes of the file") String about,
        @Meaning("name of the folder") String folder,
        @Meaning("name of the design file") String file,

        @Meaning("fingerprint of the file's text; changes when the file does")
        String revision,

        @Meaning("the design as written first; as they last could be read")
        List<VariantView> variants,

        @Meaning("what the design asks for") List<TargetView> targets,
        @Meaning("what to know before trusting a number") List<String> warnings,

        @Meaning("what is wrong with the file, where it cannot be read")
        Optional<ProblemView> problem,

        @Meaning("variants that have no answer, and why") List<TroubleView> troubles,

        @Meaning("what keeps the logbook from being kept, where something does")
        Optional<String> logbookTrouble,

        @Meaning("of the program") String version,
        @Meaning("the usual caution") String caution) {

    /** One way to build the tub. */
    @Meaning("One way to build the tub")
    public record VariantView(
            @Meaning("unique") String name,
            @Meaning("in a few words") String construction,

            @Meaning("torsion and bending cases, in the order of the file")
            List<String> cases) {}

    /** A limit that the design sets. */
    @Meaning("A limit that the design sets")
    public record TargetView(
            @Meaning("quantity") WhatTarget what,
            @Meaning("true for a lower limit") boolean atLeast,
            @Meaning("N·m/rad, N/m or kg") double limit) {}

    /** What a limit can be set on. */
    public enum WhatTarget {
        TORSIONAL_STIFFNESS,
        BENDING_STIFFNESS,
        MASS
    }

    /** Why a variant has no answer. */
    @Meaning("Why a variant has no answer")
    public record TroubleView(
            @Meaning("whose") String variant,

            @Meaning("what is wrong, and what would be right")
            String words) {}

    /** Why the file cannot be read. */
    @Meaning("Why the file cannot be read")
    public record ProblemView(
            @Meaning("every fault, with its place") String message,

            @Meaning("of the first fault, from 1; 0 for the file as a whole")
            int line,

            @Meaning("of the first fault, from 1") int column) {}
}
