// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Limit;

/**
 * What the tub must reach, in SI units.
 *
 * @param torsionalStiffness N·m/rad between the stations of the torsion case
 * @param mass kg
 * @param bendingStiffness N/m in the bending case
 */
public record Targets(Optional<Limit> torsionalStiffness, Optional<Limit> mass, Optional<Limit> bendingStiffness) {
    /** No targets. */
    public static final Targets NONE = new Targets(Optional.empty(), Optional.empty(), Optional.empty());

    static Targets of(Optional<TargetsText> text) {
        return text.map(t -> new Targets(t.torsionalStiffness(), t.mass(), t.bendingStiffness()))
                .orElse(NONE);
    }

    /** Whether a value keeps to a limit. */
    public static boolean met(Limit limit, double si) {
        return limit.atLeast() ? si >= limit.si() : si <= limit.si();
    }
}
