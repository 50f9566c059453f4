// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.List;
import java.util.Optional;

/**
 * One laminate through its cures.
 *
 * @param name of the laminate
 * @param thickness m
 * @param stages its cures in order; none if cure data are missing
 * @param missing what is missing to compute it, one thing each
 * @param springIn of its bends (of its outer skin, where it has a core); empty where the data are missing
 */
public record LaminateCure(
        String name, double thickness, List<Stage> stages, List<String> missing, Optional<Bend> springIn) {

    /**
     * One time in the autoclave.
     *
     * @param title what is cured
     * @param cycle by which
     * @param history what happened; empty if the cycle never got to its end
     * @param checks what was looked at
     * @param standsInFor resins whose kinetics are not known and for which others stand in
     */
    public record Stage(
            String title,
            Cycle cycle,
            Optional<CureHistory> history,
            List<CureCheck> checks,
            List<String> standsInFor) {
        /** Whether nothing was missed. */
        public boolean met() {
            return checks.stream().noneMatch(c -> c.verdict() == CureCheck.Verdict.MISSED);
        }
    }

    /**
     * How bends of this laminate close.
     *
     * @param formula with its four numbers
     * @param change of temperature from freezing to use, K
     * @param source where the numbers come from
     */
    public record Bend(SpringIn formula, double change, String source) {
        /** Closing of a right angle, rad. */
        public double ofRightAngle() {
            return formula.total(Math.PI / 2, change);
        }
    }

    /** Keeps lists of its own. */
    public LaminateCure {
        stages = List.copyOf(stages);
        missing = List.copyOf(missing);
    }
}
