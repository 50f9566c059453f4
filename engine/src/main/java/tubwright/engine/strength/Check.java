// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.List;

/** Outcome of one strength check. */
public sealed interface Check {
    /** What was looked at, in the trade's words: "face wrinkling". */
    String mode();

    /**
     * A check that was made.
     *
     * @param mode what was looked at
     * @param reserveFactor load at failure over present load; infinite where nothing pushes that way
     * @param applied the quantity compared, SI
     * @param allowable what it may reach, SI
     * @param basis formula, constants and source, in one line
     */
    record Reserve(String mode, double reserveFactor, double applied, double allowable, String basis)
            implements Check {}

    /**
     * A check that could not be made: no pass.
     *
     * @param mode what should have been looked at
     * @param needs what is missing, each in words a user can act on; at least one
     */
    record NotChecked(String mode, List<String> needs) implements Check, PreparedCriterion {
        public NotChecked {
            needs = List.copyOf(needs);
            if (needs.isEmpty()) {
                throw new IllegalArgumentException("a check that was not made must say what it needs: " + mode);
            }
        }

        @Override
        public String toString() {
            return mode + " not checked: needs " + String.join(", ", needs);
        }
    }

    /**
     * Reserve of a quantity that grows in proportion to the load.
     *
     * @param applied magnitude, SI; nothing, or a negative number (pushing the harmless way), never fails
     */
    static Reserve proportional(String mode, double applied, double allowable, String basis) {
        double factor = applied > 0 ? allowable / applied : Double.POSITIVE_INFINITY;
        return new Reserve(mode, factor, applied, allowable, basis);
    }
}
