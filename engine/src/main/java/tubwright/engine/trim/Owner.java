// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/** Something whose stiffness the designer chooses. */
public sealed interface Owner {
    /** Its name in the design. */
    String name();

    /** The laminate of a zone of the skin or of a wall. */
    record Zone(String name) implements Owner {}

    /** The plies a patch adds, at all the places where the design lays it. */
    record Patch(String name) implements Owner {
        /** The patch that a patch of the layout ("name" or "name: place") belongs to. */
        static Patch of(String laid) {
            int colon = laid.indexOf(": ");
            return new Patch(colon < 0 ? laid : laid.substring(0, colon));
        }
    }

    /** A joint between pieces, or of a wall with the skin. */
    record Joint(String name) implements Owner {}
}
