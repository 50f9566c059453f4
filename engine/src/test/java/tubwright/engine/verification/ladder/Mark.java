// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

/** How far a reference value may be trusted. */
public enum Mark {
    READ("read", "read in a stored text of the source"),
    TRANSCRIBED("transcription", "read in a public transcription of the source; the original was not opened"),
    MEMORY("from memory", "remembered from the source, not re-read"),
    MEMORY_CONFIRMED(
            "from memory, computed", "remembered from the source and reproduced by an independent computation"),
    COMPUTED("computed", "computed from a closed form, a series or an independent program"),
    EXACT("exact", "a law of mechanics, or a closed form evaluated in the test itself");

    final String title;
    final String meaning;

    Mark(String title, String meaning) {
        this.title = title;
        this.meaning = meaning;
    }
}
