// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.structure.Case;

/**
 * A rule set with what its places are on this tub.
 *
 * @param name as the designer calls it
 * @param set the rules
 * @param file beside the design that they were read from; empty for a shipped set
 * @param places by the rule set's names
 * @param hold how the tub is held while it is pushed; empty as a body free in space
 */
public record RuledTub(
        String name, RuleSet set, Optional<String> file, Map<String, Place> places, List<Case.Support> hold) {
    public RuledTub {
        places = Map.copyOf(places);
        hold = List.copyOf(hold);
    }

    /** What a rule's place is on the tub, where the design says. */
    public Optional<Place> place(String name) {
        return Optional.ofNullable(places.get(name));
    }

    /**
     * A place.
     *
     * @param zones whose laminates count
     * @param height of the panel across its bending, m; empty where it does not count
     * @param points hardpoints or nodes
     * @param middle of a pad, m, 3 numbers; empty where none is pushed
     * @param on strips or walls under the pad; empty for whatever lies there
     * @param tested what tests of the design's own found
     */
    public record Place(
            List<String> zones,
            OptionalDouble height,
            List<String> points,
            Optional<double[]> middle,
            List<String> on,
            Tested tested) {
        public Place {
            zones = List.copyOf(zones);
            points = List.copyOf(points);
            on = List.copyOf(on);
        }
    }

    /**
     * What tests found.
     *
     * @param bending EI of the panel, N·m²
     * @param punched force that punched the panel through, N
     * @param carried force that a point bore, N
     * @param source which tests
     */
    public record Tested(OptionalDouble bending, OptionalDouble punched, OptionalDouble carried, String source) {}
}
