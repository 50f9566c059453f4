// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A closed polygon with a fillet at every corner (radius 0 leaves it sharp). Stored anticlockwise whatever the order
 * given. Signed distance: nearest of its straight sides and arcs, with the sign from the winding of the sides and the
 * fillets' corner caps.
 */
public final class Polygon implements Contour {
    /**
     * A corner of the polygon before it is rounded.
     *
     * @param u m
     * @param v m
     * @param radius m
     */
    public record Vertex(double u, double v, double radius) {}

    private final List<Vertex> vertices;
    /** Per corner: u, v, direction of the side after it, its tangent points along the side, its length. */
    private final double[] side;
    /** Per corner: centre of the fillet, radius, unit vector from centre to corner, cosine of half the arc, sense. */
    private final double[] arc;

    /**
     * @throws IllegalArgumentException when there are fewer than 3 corners, a value is not finite, a radius does not fit,
     *     or the sides cross
     */
    public Polygon(List<Vertex> given) {
        vertices = anticlockwise(List.copyOf(given));
        check(vertices);
        int n = vertices.size();
        side = new double[6 * n];
        arc = new double[7 * n];
        for (int i = 0; i < n; i++) {
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % n);
            double length = Math.hypot(b.u - a.u, b.v - a.v);
            double du = (b.u - a.u) / length;
            double dv = (b.v - a.v) / length;
            double from = tangentLength(i);
            System.arraycopy(
                    new double[] {a.u, a.v, du, dv, from, Math.max(from, length - tangentLength((i + 1) % n))},
                    0,
                    side,
                    6 * i,
                    6);
            double sense = from > 0 ? Math.signum(turn(i)) : 0;
            double cu = a.u + from * du - sense * dv * a.radius;
            double cv = a.v + from * dv + sense * du * a.radius;
            double m = Math.max(Math.hypot(a.u - cu, a.v - cv), 1e-300);
            System.arraycopy(
                    new double[] {
                        cu, cv, a.radius, (a.u - cu) / m, (a.v - cv) / m, Math.cos(Math.abs(turn(i)) / 2), sense
                    },
                    0,
                    arc,
                    7 * i,
                    7);
        }
    }

    /** The corners, anticlockwise. */
    public List<Vertex> vertices() {
        return vertices;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Polygon p && p.vertices.equals(vertices);
    }

    @Override
    public int hashCode() {
        return vertices.hashCode();
    }

    @Override
    public String toString() {
        return "Polygon" + vertices;
    }

    @Override
    public double distance(double u, double v) {
        int n = side.length / 6;
        double best = Double.POSITIVE_INFINITY;
        boolean inside = false;
        for (int i = 0, s = 0; i < n; i++, s += 6) {
            double nextV = side[(s + 7) % side.length];
            double ru = u - side[s];
            double rv = v - side[s + 1];
            if (rv < 0 != nextV > v) {
                inside ^= ru < rv / side[s + 3] * side[s + 2];
            }
            double along = ru * side[s + 2] + rv * side[s + 3];
            along = along < side[s + 4] ? side[s + 4] : along > side[s + 5] ? side[s + 5] : along;
            double eu = ru - along * side[s + 2];
            double ev = rv - along * side[s + 3];
            best = Math.min(best, eu * eu + ev * ev);
        }
        best = Math.sqrt(best);
        for (int i = 0, s = 0; i < n; i++, s += 7) {
            double sense = arc[s + 6];
            if (sense == 0) {
                continue;
            }
            double qu = u - arc[s];
            double qv = v - arc[s + 1];
            double q = Math.sqrt(qu * qu + qv * qv);
            if (q > 0 && qu * arc[s + 3] + qv * arc[s + 4] >= q * arc[s + 5] - 1e-15) {
                best = Math.min(best, Math.abs(q - arc[s + 2]));
                // The cap between arc and corner is on the other side than the sharp polygon says.
                if (q > arc[s + 2] && inCap(u, v, i)) {
                    inside = sense < 0;
                }
            }
        }
        return inside ? -best : best;
    }

    private boolean inCap(double u, double v, int i) {
        int n = side.length / 6;
        int b = 6 * i;
        int a = 6 * ((i + n - 1) % n);
        double ru = u - side[b];
        double rv = v - side[b + 1];
        double sense = arc[7 * i + 6];
        return (side[a + 2] * rv - side[a + 3] * ru) * sense >= 0 && (side[b + 2] * rv - side[b + 3] * ru) * sense >= 0;
    }

    /** Angle by which the outline turns at corner i, positive anticlockwise. */
    private double turn(int i) {
        return turn(vertices, i);
    }

    private double tangentLength(int i) {
        return vertices.get(i).radius * Math.tan(Math.abs(turn(i)) / 2);
    }

    @Override
    public double[] bounds() {
        double[] p =
                points(smallestRadius() == Double.POSITIVE_INFINITY ? Double.POSITIVE_INFINITY : perimeter() / 400);
        double[] b = {p[0], p[0], p[1], p[1]};
        for (int i = 0; i < p.length; i += 2) {
            b[0] = Math.min(b[0], p[i]);
            b[1] = Math.max(b[1], p[i]);
            b[2] = Math.min(b[2], p[i + 1]);
            b[3] = Math.max(b[3], p[i + 1]);
        }
        return b;
    }

    @Override
    public double area() {
        double area = shoelace(vertices);
        for (int i = 0; i < vertices.size(); i++) {
            double r = vertices.get(i).radius;
            double t = turn(i);
            // Between tangents and arc: r² (tan(θ/2) - θ/2), taken off at convex corners, added at hollow ones.
            area -= Math.signum(t) * r * r * (Math.tan(Math.abs(t) / 2) - Math.abs(t) / 2);
        }
        return area;
    }

    @Override
    public double perimeter() {
        double length = 0;
        int n = vertices.size();
        for (int i = 0; i < n; i++) {
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % n);
            length += Math.hypot(b.u - a.u, b.v - a.v) - 2 * tangentLength(i) + a.radius * Math.abs(turn(i));
        }
        return length;
    }

    @Override
    public double[] points(double step) {
        List<double[]> out = new ArrayList<>();
        int n = vertices.size();
        for (int i = 0; i < n; i++) {
            Vertex p = vertices.get((i + n - 1) % n);
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % n);
            double t = tangentLength(i);
            double inAngle = Math.atan2(a.v - p.v, a.u - p.u);
            double du = Math.cos(inAngle);
            double dv = Math.sin(inAngle);
            double turn = turn(i);
            double sign = Math.signum(turn);
            if (t > 0) {
                double cu = a.u - t * du - sign * dv * a.radius;
                double cv = a.v - t * dv + sign * du * a.radius;
                int parts = Math.max(8, (int) Math.ceil(a.radius * Math.abs(turn) / step));
                for (int k = 0; k <= parts; k++) {
                    double angle = inAngle + turn * k / parts - sign * Math.PI / 2;
                    out.add(new double[] {cu + a.radius * Math.cos(angle), cv + a.radius * Math.sin(angle)});
                }
            } else {
                out.add(new double[] {a.u, a.v});
            }
            double length = Math.hypot(b.u - a.u, b.v - a.v);
            double from = t;
            double to = length - tangentLength((i + 1) % n);
            int parts = Math.max(1, (int) Math.ceil((to - from) / step));
            for (int k = 1; k < parts; k++) {
                double s = (from + (to - from) * k / parts) / length;
                out.add(new double[] {a.u + s * (b.u - a.u), a.v + s * (b.v - a.v)});
            }
        }
        double[] flat = new double[2 * out.size()];
        for (int i = 0; i < out.size(); i++) {
            flat[2 * i] = out.get(i)[0];
            flat[2 * i + 1] = out.get(i)[1];
        }
        return flat;
    }

    @Override
    public double[] sharpCorners() {
        return vertices.stream()
                .filter(a -> a.radius == 0)
                .flatMapToDouble(a -> java.util.stream.DoubleStream.of(a.u, a.v))
                .toArray();
    }

    @Override
    public double smallestRadius() {
        return vertices.stream()
                .mapToDouble(Vertex::radius)
                .filter(r -> r > 0)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    @Override
    public Contour mirroredInV() {
        return new Polygon(
                vertices.stream().map(a -> new Vertex(a.u, -a.v, a.radius)).toList());
    }

    @Override
    public Contour mirroredInU() {
        return new Polygon(
                vertices.stream().map(a -> new Vertex(-a.u, a.v, a.radius)).toList());
    }

    private static double turn(List<Vertex> vertices, int i) {
        int n = vertices.size();
        Vertex p = vertices.get((i + n - 1) % n);
        Vertex a = vertices.get(i);
        Vertex b = vertices.get((i + 1) % n);
        double cross = (a.u - p.u) * (b.v - a.v) - (a.v - p.v) * (b.u - a.u);
        double dot = (a.u - p.u) * (b.u - a.u) + (a.v - p.v) * (b.v - a.v);
        return Math.atan2(cross, dot);
    }

    private static double shoelace(List<Vertex> vertices) {
        double area = 0;
        for (int i = 0; i < vertices.size(); i++) {
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % vertices.size());
            area += (a.u * b.v - b.u * a.v) / 2;
        }
        return area;
    }

    /** The same corners in anticlockwise order. */
    private static List<Vertex> anticlockwise(List<Vertex> given) {
        return shoelace(given) < 0 ? given.reversed() : given;
    }

    private static void check(List<Vertex> vertices) {
        int n = vertices.size();
        if (n < 3) {
            throw new IllegalArgumentException("a polygon needs at least 3 corners, not " + n);
        }
        for (Vertex a : vertices) {
            if (!Double.isFinite(a.u) || !Double.isFinite(a.v) || !Double.isFinite(a.radius) || a.radius < 0) {
                throw new IllegalArgumentException("contour corner " + a + " must be finite, with no negative radius");
            }
        }
        if (!(shoelace(vertices) > 0)) {
            throw new IllegalArgumentException("the contour encloses no area");
        }
        for (int i = 0; i < n; i++) {
            for (int j = i + 2; j < n; j++) {
                if ((j + 1) % n != i
                        && OutlineChecks.cross(
                                vertices.get(i).u,
                                vertices.get(i).v,
                                vertices.get(i + 1).u,
                                vertices.get(i + 1).v,
                                vertices.get(j).u,
                                vertices.get(j).v,
                                vertices.get((j + 1) % n).u,
                                vertices.get((j + 1) % n).v)) {
                    throw new IllegalArgumentException(
                            "the contour crosses itself: side " + (i + 1) + " meets side " + (j + 1));
                }
            }
        }
        for (int i = 0; i < n; i++) {
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % n);
            double length = Math.hypot(b.u - a.u, b.v - a.v);
            double ta = Math.tan(Math.abs(turn(vertices, i)) / 2);
            double tb = Math.tan(Math.abs(turn(vertices, (i + 1) % n)) / 2);
            double need = a.radius * ta + b.radius * tb;
            if (!(length > 0)) {
                throw new IllegalArgumentException("two neighbouring corners of the contour coincide");
            }
            if (need > length * (1 + 1e-9)) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "the corner radii %.1f mm and %.1f mm do not fit on a side of %.1f mm; the largest equal radius "
                                + "that fits is %.1f mm",
                        a.radius * 1e3,
                        b.radius * 1e3,
                        length * 1e3,
                        length / (ta + tb) * 1e3));
            }
        }
    }
}
