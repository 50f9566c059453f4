// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.OptionalDouble;

/**
 * One thing looked at in a cure.
 *
 * @param subject what
 * @param verdict how it stands
 * @param value what there is, in the subject's unit (SI)
 * @param limit what it is held against
 * @param words for a reader: what is missing, what would help, what to bear in mind; may be empty
 */
public record CureCheck(Subject subject, Verdict verdict, OptionalDouble value, OptionalDouble limit, String words) {
    /** What is looked at. */
    public enum Subject {
        /** The cycle runs to its end. */
        CYCLE("cycle runs"),
        /** Hottest place of what cures, K, not above the limit. */
        PEAK("peak temperature"),
        /** Least degree of cure at the end, not below the limit. */
        DEGREE("degree of cure"),
        /** Least glass transition at the end, K, not below the limit. */
        GLASS("glass transition"),
        /** Relative humidity of storage, 0 to 1, up to which water makes no voids; not below that of the shop. */
        VOIDS("humidity without voids"),
        /** What presses on the core, Pa, not above the limit. */
        CORE("pressure on core");

        private final String title;

        Subject(String title) {
            this.title = title;
        }

        /** In two or three words. */
        public String title() {
            return title;
        }
    }

    /** How a check stands. */
    public enum Verdict {
        /** Within the limit. */
        MET("met"),
        /** Not within the limit. */
        MISSED("missed"),
        /** Data or a limit are missing: the words say which. */
        NOT_CHECKED("not checked");

        private final String word;

        Verdict(String word) {
            this.word = word;
        }

        /** In a word or two. */
        public String word() {
            return word;
        }
    }

    static CureCheck notAbove(Subject subject, double value, double limit, String words) {
        return of(subject, value <= limit, value, limit, words);
    }

    static CureCheck notBelow(Subject subject, double value, double limit, String words) {
        return of(subject, value >= limit, value, limit, words);
    }

    private static CureCheck of(Subject subject, boolean met, double value, double limit, String words) {
        return new CureCheck(
                subject, met ? Verdict.MET : Verdict.MISSED, OptionalDouble.of(value), OptionalDouble.of(limit), words);
    }

    static CureCheck unknown(Subject subject, OptionalDouble value, String needs) {
        return new CureCheck(subject, Verdict.NOT_CHECKED, value, OptionalDouble.empty(), "needs " + needs);
    }
}
