// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/** How the skin runs from frame to frame. */
public enum Loft {
    /**
     * Every corner follows a cubic in x with continuous slope that passes through all frames and never overshoots them
     * (Steffen 1990).
     */
    SMOOTH,
    /** Every corner runs straight from frame to frame; the skin is creased at the frames. */
    RULED
}
