// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.List;
import tubwright.engine.material.Provenance;

/**
 * A cure cycle as written on a sheet: the air is brought to a temperature and held there, step by step.
 *
 * @param name by which it is asked for
 * @param description one line for a reader
 * @param start temperature at which all begins, K
 * @param steps in order, at least one
 * @param provenance where the cycle comes from
 */
public record Cycle(String name, String description, double start, List<Step> steps, Provenance provenance) {
    /** Refuses a cycle without steps. */
    public Cycle {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new CureException("the cycle '" + name + "' has no steps");
        }
        double before = start;
        for (Step step : steps) {
            if (!(step.rate > 0) || step.hold < 0 || step.hold == 0 && step.to == before) {
                throw new CureException("the cycle '" + name + "' has a step to " + Math.round(step.to - 273.15)
                        + " °C whose rate is not above zero or that does nothing at all");
            }
            before = step.to;
        }
    }

    /** When the clock of a hold starts. */
    public enum HoldFrom {
        /** When the air has arrived. */
        AIR,
        /** When the last place of the part has come within {@link #LAGGING_WITHIN} of it. */
        LAGGING
    }

    /** A hold that waits for the part starts when its last place is this near, K (common practice, no source). */
    public static final double LAGGING_WITHIN = 5;

    /**
     * One step: a ramp, then a hold.
     *
     * @param to temperature of the air, K
     * @param rate of the ramp, K/s, greater than zero
     * @param hold s
     * @param from when the hold starts
     * @param pressure of the autoclave above the room's, Pa, from the beginning of the step
     * @param bag absolute pressure in the bag, Pa
     */
    public record Step(double to, double rate, double hold, HoldFrom from, double pressure, double bag) {}

    /** Highest temperature of the air, K. */
    public double hottest() {
        return steps.stream().mapToDouble(Step::to).max().orElse(start);
    }

    /** Highest pressure above the room's, Pa. */
    public double highestPressure() {
        return steps.stream().mapToDouble(Step::pressure).max().orElse(0);
    }
}
