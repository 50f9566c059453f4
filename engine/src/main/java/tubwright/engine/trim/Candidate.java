// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;

/** What a zone, a patch or a joint may become. */
public sealed interface Candidate {
    /** The layup with this candidate in an owner's place. */
    Layup in(Layup layup, Owner owner);

    /** A stack for a zone. */
    record Stack(Laminate laminate) implements Candidate {
        @Override
        public Layup in(Layup layup, Owner owner) {
            return layup.withZone(owner.name(), laminate);
        }
    }

    /** Plies of a patch, perhaps none. */
    record Plies(List<Layer> plies) implements Candidate {
        public Plies {
            plies = List.copyOf(plies);
        }

        @Override
        public Layup in(Layup layup, Owner owner) {
            return layup.withPatch(owner.name(), plies);
        }
    }

    /**
     * A joint made narrower: its stiffness and what it weighs go with its width.
     *
     * @param share of the designed stiffness, above 0
     * @param mass kg more than as designed; negative where it weighs less
     */
    record Bond(double share, double mass) implements Candidate {
        @Override
        public Layup in(Layup layup, Owner owner) {
            return layup.withJoint(owner.name(), share);
        }
    }
}
