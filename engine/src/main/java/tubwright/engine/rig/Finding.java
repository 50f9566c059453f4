// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

/**
 * Something the reader of a test must know before trusting its number.
 *
 * @param kind what sort of thing
 * @param place file and line, or "" where it has none
 * @param words what was found and what to do
 */
public record Finding(Kind kind, String place, String words) {
    /** Sorts of finding. */
    public enum Kind {
        /** A gauge that stands alone at its station. */
        ONE_SIDED,
        /** A gauge that was never read, or a pair read too seldom. */
        UNREAD,
        /** Gauges that seem to be exchanged or to have the wrong sign. */
        DOUBTFUL_GAUGE,
        /** A reading far from the others. */
        OUTLIER,
        /** Loads that do not return to zero. */
        NO_ZERO,
        /** How the set-up limits the answer. */
        SET_UP
    }

    @Override
    public String toString() {
        return place.isEmpty() ? words : place + ": " + words;
    }
}
