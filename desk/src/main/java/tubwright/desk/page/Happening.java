// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

/** Something happened that the page should look at. */
@Meaning("Something happened that the page should look at")
public record Happening(
        What what,
        @Meaning("of the file it belongs to") String revision,
        @Meaning("variant or draft; may be empty") String subject) {

    /** What to ask for again. */
    public enum What {
        /** The design file. */
        PROJECT,
        /** The answers of a variant. */
        ANSWERS,
        /** How far the run has come. */
        RUN,
        /** The ledger of a variant. */
        LEDGER,
        /** A draft. */
        DRAFT,
        /** The logbook. */
        LOGBOOK,
        /** The curve of mass against stiffness, and how far it has come. */
        EXCHANGE,
        /** Shapes of buckling and vibration, and how far their search has come. */
        MODES,
        /** The test explained last, and how far the next explanation has come. */
        TEST,
        /** Plies as they lie, and how far laying has come. */
        LAYING
    }
}
