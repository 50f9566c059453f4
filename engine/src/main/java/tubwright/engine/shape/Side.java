// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/** Side of the car a thing lies on, as the driver sees it. */
public enum Side {
    RIGHT,
    LEFT,
    /** One on each side, mirror images; drawn as the right-hand one. */
    BOTH,
    /** One that lies across the centreline. */
    CENTRE;

    /** Whether something with this side is present on the right half ({@code left == false}) or the left half. */
    public boolean covers(boolean left) {
        return switch (this) {
            case RIGHT -> !left;
            case LEFT -> left;
            case BOTH, CENTRE -> true;
        };
    }
}
