// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.safety.rules.Finding;
import tubwright.engine.safety.rules.PanelTest;
import tubwright.engine.safety.rules.RuleSet;

/**
 * A tub held against rules.
 *
 * @param tub name
 * @param sets one a rule set
 * @param meshSize m, of the pushes
 * @param stamp time
 * @param version of the program
 */
public record RulesAnswer(String tub, List<Held> sets, double meshSize, String stamp, String version) {
    /** How to read it. */
    public static final String ASIDE =
            "\"Met\" says that these figures keep to that clause as it was read here, and no more. Clauses marked \"from memory\""
                    + " were not compared with any text. The sanctioning body's text in force and its scrutineers decide; what a"
                    + " clause wants tested is met by the test alone.";

    public RulesAnswer {
        sets = List.copyOf(sets);
    }

    /**
     * One rule set.
     *
     * @param name as the designer calls it
     * @param set the rules
     * @param findings clause by clause
     * @param panels test panels foretold
     */
    public record Held(String name, RuleSet set, List<Finding> findings, List<PanelTest> panels) {
        public Held {
            findings = List.copyOf(findings);
            panels = List.copyOf(panels);
        }

        /** How many clauses come to what, in words. */
        public String count() {
            return findings.size() + " clauses: " + count(Finding.Verdict.MET) + " met, "
                    + count(Finding.Verdict.NOT_MET) + " not met, " + count(Finding.Verdict.NOT_CHECKED)
                    + " not checked.";
        }

        /** How many clauses come to a verdict. */
        public long count(Finding.Verdict verdict) {
            return findings.stream().filter(f -> f.verdict() == verdict).count();
        }
    }

    /** Verdict with how it was found or what is needed. */
    public static String comesTo(Finding f) {
        return f.verdict().words()
                + (f.needs().isEmpty()
                        ? f.how().isEmpty() ? "" : " (" + f.how() + ")"
                        : ": needs " + String.join("; ", f.needs()));
    }
}
