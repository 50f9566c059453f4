// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import java.util.Optional;
import tubwright.numerics.eigen.InertiaCount;

/**
 * The lowest natural modes.
 *
 * @param modes frequencies rising, rigid motions first
 * @param mass of all that moves, kg
 * @param count proof that no mode was missed; its bound is ω² in (rad/s)²
 */
public record Modes(List<Mode> modes, double mass, InertiaCount count) {
    public Modes {
        modes = List.copyOf(modes);
    }

    /** The lowest mode of a kind, if there is one among these. */
    public Optional<Mode> first(Mode.Motion motion) {
        return modes.stream().filter(m -> m.motion() == motion).findFirst();
    }

    /** Modes that are not rigid motions. */
    public List<Mode> elastic() {
        return modes.stream().filter(m -> m.motion() != Mode.Motion.RIGID).toList();
    }
}
