// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Place;
import tubwright.engine.laminate.LayupAdvice.Severity;

/**
 * Something in a design that can be built but should be looked at.
 *
 * @param place where it stands
 * @param severity how much it matters
 * @param text what it is
 * @param rule the published rule or the assumption it is held against
 */
public record Warning(Place place, Severity severity, String text, String rule) {
    Warning(Place place, String text, String rule) {
        this(place, Severity.WARNING, text, rule);
    }

    /** The same, found in a variant only: its text begins with the variant's name. */
    Warning in(String variant) {
        return variant.equals(Design.AS_DESIGNED)
                ? this
                : new Warning(place, severity, "variant \"" + variant + "\": " + text, rule);
    }

    @Override
    public String toString() {
        return place + ": " + text + (rule.isEmpty() ? "" : " (" + rule + ")");
    }
}
