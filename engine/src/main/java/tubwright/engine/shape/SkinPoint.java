// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/**
 * A point of the skin's right half with its first derivatives: a reusable holder for hot loops, filled by
 * {@link Section#at}. Mirror y for the left half.
 */
public final class SkinPoint {
    /** Position, m. */
    public double x;

    public double y;
    public double z;
    /** Unit tangent along the outline, upwards round the section. */
    public double tangentY;

    public double tangentZ;
    /** Rate of change of y and z with x at fixed fraction of the strip. */
    public double rateY;

    public double rateZ;
    /** Unit outward normal of the surface. */
    public double normalX;

    public double normalY;
    public double normalZ;
    /** Unit vector in the surface closest to +x: pointing aft. */
    public double aftX;

    public double aftY;
    public double aftZ;
    /** Arc length of the strip at this station, m: dS/dt has this length. */
    public double length;
    /** True area per area dx times arc length: at least 1. */
    public double stretch;
    /** Curvature of the section, 1/m; positive where the outline is convex. */
    public double curvature;

    void finish() {
        double outY = tangentZ;
        double outZ = -tangentY;
        double v = rateY * outY + rateZ * outZ;
        stretch = Math.sqrt(1 + v * v);
        normalX = -v / stretch;
        normalY = outY / stretch;
        normalZ = outZ / stretch;
        // +x less its part along the normal, of length 1/stretch.
        aftX = 1 / stretch;
        aftY = v * outY / stretch;
        aftZ = v * outZ / stretch;
    }
}
