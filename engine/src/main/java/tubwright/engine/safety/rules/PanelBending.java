// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import tubwright.engine.laminate.Laminate;

/**
 * Flat panels in bending as rule books count them: EI about the laminate's own neutral axis, curvature ignored, the strain across
 * free.
 */
public final class PanelBending {
    /**
     * Predicted over measured stiffness of 38 student sandwich panels in three-point bending (public set, five groups): nine of ten
     * lay above this, nine of ten below {@link #HIGH}. So a panel may measure as little as its prediction over {@link #HIGH}.
     */
    public static final double LOW = 0.76;

    /** See {@link #LOW}. */
    public static final double HIGH = 1.30;

    private PanelBending() {}

    /** EI per height of a panel bent along the laminate's own axis, N·m: 1/d₁₁ of the inverse of A, B, D. */
    public static double along(Laminate laminate) {
        return 1 / laminate.stiffness().compliance()[8 * 3 + 3];
    }

    /** The same bent across it. */
    public static double across(Laminate laminate) {
        return 1 / laminate.stiffness().compliance()[8 * 4 + 4];
    }

    /** EI of a round tube of steel, N·m²: E = 200 GPa as the rules take it. */
    public static double tube(double outside, double wall) {
        double inside = outside - 2 * wall;
        return 200e9 * Math.PI / 64 * (Math.pow(outside, 4) - Math.pow(inside, 4));
    }
}
