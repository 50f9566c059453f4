// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/** The drawing view in which a contour is given. */
public enum View {
    /** From above: u is x, v is y. */
    PLAN,
    /** From the side: u is x, v is z. */
    SIDE,
    /** Along the car: u is y, v is z. For holes in walls only. */
    FRONT;

    /** The view's u of a point. */
    public double u(double x, double y, double z) {
        return this == FRONT ? y : x;
    }

    /** The view's v of a point. */
    public double v(double x, double y, double z) {
        return this == PLAN ? y : z;
    }
}
