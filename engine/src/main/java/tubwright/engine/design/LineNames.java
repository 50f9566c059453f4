// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

/** Names of the mesh lines that joints and stiffeners follow, as the mesher gives them. */
final class LineNames {
    private LineNames() {}

    /** The boundary between two neighbouring pieces of skin, the lower one first. */
    static String seam(String lower, String upper) {
        return lower + " / " + upper;
    }

    /** The outer edge of a wall. */
    static String wallEdge(String wall) {
        return wall + " edge";
    }

    /** The edge of an opening, or of a hole in a wall ({@code wall/hole}). */
    static String openingEdge(String opening) {
        return opening + " edge";
    }

    /** The corner line between two neighbouring strips, the lower one first. */
    static String corner(String lower, String upper) {
        return lower + " / " + upper + " corner";
    }

    /** The line on the skin at a wall. */
    static String station(String wall) {
        return wall + " station";
    }
}
