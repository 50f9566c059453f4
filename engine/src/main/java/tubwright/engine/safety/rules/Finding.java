// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.List;

/**
 * What a clause comes to.
 *
 * @param clause which
 * @param verdict for it
 * @param found what was found, in words; empty where nothing was
 * @param reserve found over asked, or asked over found where less is wanted; not a number where there is none
 * @param how computed, predicted or tested, and from what
 * @param needs what is missing; empty where it was checked
 */
public record Finding(
        RuleSet.Clause clause, Verdict verdict, String found, double reserve, String how, List<String> needs) {
    public Finding {
        needs = List.copyOf(needs);
        if (verdict == Verdict.NOT_CHECKED && needs.isEmpty()) {
            throw new IllegalArgumentException("what was not checked says what it needs: " + clause.number());
        }
    }

    /** Outcome. "Met" says that these figures keep to that clause, and no more. */
    public enum Verdict {
        MET("met"),
        NOT_MET("not met"),
        NOT_CHECKED("not checked");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** For a reader. */
        public String words() {
            return words;
        }
    }
}
