// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.ArrayList;
import java.util.List;

/**
 * A closed curve in a drawing view, coordinates u and v in m. {@link #distance} is the whole of what cutting needs: it is
 * negative inside, zero on the curve, and exact.
 */
public sealed interface Contour permits Ellipse, Polygon {
    /** Signed distance of a point from the curve, m; negative inside. */
    double distance(double u, double v);

    /** Bounds {u0, u1, v0, v1}, m. */
    double[] bounds();

    /** Enclosed area, m². */
    double area();

    /** Length of the curve, m. */
    double perimeter();

    /** Points on the curve, in order, at most {@code step} apart: u and v alternating. Sharp corners are among them. */
    double[] points(double step);

    /** Sharp corners of the curve: u and v alternating. */
    double[] sharpCorners();

    /** Smallest radius of curvature away from sharp corners, m; infinite where all sides are straight. */
    double smallestRadius();

    /** The same contour mirrored in v: v becomes -v. */
    Contour mirroredInV();

    /** The same contour mirrored in u: u becomes -u. */
    Contour mirroredInU();

    /** A rectangle with sides along u and v and rounded corners. */
    static Contour rectangle(double u0, double u1, double v0, double v1, double radius) {
        return new Polygon(List.of(
                new Polygon.Vertex(u0, v0, radius),
                new Polygon.Vertex(u1, v0, radius),
                new Polygon.Vertex(u1, v1, radius),
                new Polygon.Vertex(u0, v1, radius)));
    }

    /** A circle. */
    static Contour circle(double u, double v, double radius) {
        return new Ellipse(u, v, radius, radius);
    }

    /** An ellipse with half axes a along u and b along v. */
    static Contour ellipse(double u, double v, double a, double b) {
        return new Ellipse(u, v, a, b);
    }

    /** A slot of a width, with round ends about two centres. */
    static Contour slot(double u0, double v0, double u1, double v1, double width) {
        double length = Math.hypot(u1 - u0, v1 - v0);
        if (!(length > 0)) {
            throw new IllegalArgumentException("the two centres of a slot must differ; use a circle");
        }
        double r = width / 2;
        double du = (u1 - u0) / length * r;
        double dv = (v1 - v0) / length * r;
        List<Polygon.Vertex> vertices = new ArrayList<>();
        vertices.add(new Polygon.Vertex(u0 - du + dv, v0 - dv - du, r));
        vertices.add(new Polygon.Vertex(u1 + du + dv, v1 + dv - du, r));
        vertices.add(new Polygon.Vertex(u1 + du - dv, v1 + dv + du, r));
        vertices.add(new Polygon.Vertex(u0 - du - dv, v0 - dv + du, r));
        return new Polygon(vertices);
    }

    /** A polygon with a radius at every corner. */
    static Contour polygon(List<Polygon.Vertex> vertices) {
        return new Polygon(vertices);
    }
}
