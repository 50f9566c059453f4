// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * A remark on a layup against published practice.
 *
 * @param severity how much it matters
 * @param rule short name of the rule
 * @param text what was found, with numbers, and what the rule asks for
 * @param source where the rule is published
 */
public record LayupAdvice(Severity severity, String rule, String text, String source) {
    /** How much a remark matters. */
    public enum Severity {
        /** Worth knowing. */
        NOTE,
        /** Against common practice: change it or have a reason. */
        WARNING
    }
}
