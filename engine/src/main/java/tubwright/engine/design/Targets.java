// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Limit;
import tubwright.engine.response.StabilityAsk;

/**
 * What the tub must reach, in SI units.
 *
 * @param torsionalStiffness N·m/rad between the stations of the torsion case
 * @param mass kg
 * @param bendingStiffness N/m in the bending case
 * @param bucklingFactor lowest over the load cases
 * @param firstTorsionFrequency Hz, free in space
 * @param firstBendingFrequency Hz, vertical, free in space
 * @param reserveFactor in all load cases, spots at inserts left out
 */
public record Targets(
        Optional<Limit> torsionalStiffness,
        Optional<Limit> mass,
        Optional<Limit> bendingStiffness,
        Optional<Limit> bucklingFactor,
        Optional<Limit> firstTorsionFrequency,
        Optional<Limit> firstBendingFrequency,
        Optional<Limit> reserveFactor) {
    /** No targets. */
    public static final Targets NONE = new Targets(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    static Targets of(Optional<TargetsText> text) {
        return text.map(t -> new Targets(
                        t.torsionalStiffness(),
                        t.mass(),
                        t.bendingStiffness(),
                        t.bucklingFactor(),
                        t.firstTorsionFrequency(),
                        t.firstBendingFrequency(),
                        t.reserveFactor()))
                .orElse(NONE);
    }

    /** What is asked of stability with what these targets need. */
    StabilityAsk completed(StabilityAsk ask) {
        boolean frequency = firstTorsionFrequency.isPresent() || firstBendingFrequency.isPresent();
        return new StabilityAsk(
                bucklingFactor.isPresent() ? Math.max(1, ask.factors()) : ask.factors(),
                frequency && ask.frequencies() == 0 ? StabilityAsk.USUAL.frequencies() : ask.frequencies(),
                ask.hold());
    }

    /** Whether a value keeps to a limit. */
    public static boolean met(Limit limit, double si) {
        return limit.atLeast() ? si >= limit.si() : si <= limit.si();
    }
}
