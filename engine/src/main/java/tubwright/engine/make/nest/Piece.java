// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.List;

/**
 * A flat pattern to be cut so many times.
 *
 * @param label for a reader
 * @param outline at its own angle: the warp along x
 * @param count how many, at least one
 * @param turns how it may lie
 */
public record Piece(String label, Outline outline, int count, Turns turns) {
    /** How a piece may be turned on the roll. Mirrored it never is: its other face would be up. */
    public enum Turns {
        /** As drawn only: the warp has a direction, or the face a nap. */
        FIXED(List.of(0)),
        /** Half a turn as well: balanced cloth. */
        HALF(List.of(0, 2)),
        /** Quarters of a turn: film, which has no direction. */
        QUARTERS(List.of(0, 1, 2, 3));

        private final List<Integer> quarters;

        Turns(List<Integer> quarters) {
            this.quarters = quarters;
        }

        /** Turns allowed, in quarters. */
        public List<Integer> quarters() {
            return quarters;
        }
    }

    /** Refuses none at all. */
    public Piece {
        if (count < 1) {
            throw new NestException("'" + label + "' is wanted " + count + " times; at least once it must be");
        }
    }
}
