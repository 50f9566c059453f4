// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/** How far a value may be trusted; shown to the user wherever the value is shown. */
public enum Trust {
    /** Read in the named publication. */
    PUBLISHED("published", "read in the named source"),
    /** Read in a public transcription of the named publication; the original was not opened. */
    TRANSCRIBED("transcription", "read in a public transcription of the named source; the original was not opened"),
    /** Remembered, not re-read. */
    FROM_MEMORY("from memory", "remembered, not re-read in the named source: check before use"),
    /** Computed from other values by a stated formula. */
    COMPUTED("computed", "computed from other values by the stated formula"),
    /** Assumed by a stated rule because the source does not give it. */
    ASSUMED("assumed", "assumed by the stated rule because the source does not give it"),
    /** Stated by the user of the program. */
    STATED("stated", "stated in the design"),
    /** Invented for the demonstration designs. */
    INVENTED("invented for the demo", "invented for a demonstration; not a real material");

    private final String mark;
    private final String meaning;

    Trust(String mark, String meaning) {
        this.mark = mark;
        this.meaning = meaning;
    }

    /** Short form, as written in material files. */
    public String mark() {
        return mark;
    }

    /** What the mark means. */
    public String meaning() {
        return meaning;
    }
}
