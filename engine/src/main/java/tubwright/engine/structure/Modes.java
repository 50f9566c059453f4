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

    /**
     * The lowest mode that a motion leads, or, if it leads none of these, the lowest in which it has a good part: open
     * tubs twist about an axis far below them, so torsion may hide in sideways bending.
     */
    public Optional<Mode> first(Mode.Motion motion) {
        return modes.stream()
                .filter(m -> m.motion() == motion)
                .findFirst()
                .or(() -> elastic().stream()
                        .filter(m -> m.share(motion) > SectionMotion.GOOD_PART)
                        .findFirst());
    }

    /** Modes that are not rigid motions. */
    public List<Mode> elastic() {
        return modes.stream().filter(m -> m.motion() != Mode.Motion.RIGID).toList();
    }
}
