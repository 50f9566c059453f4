// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

/** One line of the logbook. */
@Meaning("One line of the logbook")
public record LogView(
        long id,
        @Meaning("ISO 8601") String stamp,
        @Meaning("run, choice, test or note") String kind,
        String words,
        @Meaning("of the file at that time") String revision) {

    /** A line to be written by hand. */
    @Meaning("A line to be written by hand")
    public record NoteRequest(String words) {}
}
