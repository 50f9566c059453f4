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
public record Polygon(List<Vertex> vertices) implements Contour {
    /**
     * A corner of the polygon before it is rounded.
     *
     * @param u m
     * @param v m
     * @param radius m
     */
    public record Vertex(double u, double v, double radius) {}

    /**
     * @throws IllegalArgumentException when there are fewer than 3 corners, a value is not finite, a radius does not fit,
     *     or the sides cross
     */
    public Polygon {
        vertices = anticlockwise(List.copyOf(vertices));
        check(vertices);
    }

    @Override
    public double distance(double u, double v) {
        int n = vertices.size();
        double best = Double.POSITIVE_INFINITY;
        boolean inside = false;
        for (int i = 0; i < n; i++) {
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % n);
            if ((a.v > v) != (b.v > v) && u < a.u + (v - a.v) / (b.v - a.v) * (b.u - a.u)) {
                inside = !inside;
            }
        }
        for (int i = 0; i < n; i++) {
            Vertex a = vertices.get(i);
            Vertex b = vertices.get((i + 1) % n);
            double du = b.u - a.u;
            double dv = b.v - a.v;
            double length = Math.hypot(du, dv);
            du /= length;
            dv /= length;
            double from = tangentLength(i);
            double to = length - tangentLength((i + 1) % n);
            double along = (u - a.u) * du + (v - a.v) * dv;
            double s = Math.clamp(along, from, Math.max(from, to));
            double d = Math.hypot(u - a.u - s * du, v - a.v - s * dv);
            best = Math.min(best, d);
            double t = from;
            if (a.radius > 0 && t > 0) {
                // Fillet at a: centre lies square to this side at its first tangent point.
                double turn = Math.signum(turn(i));
                double pu = a.u + t * du;
                double pv = a.v + t * dv;
                double cu = pu - turn * dv * a.radius;
                double cv = pv + turn * du * a.radius;
                double half = Math.abs(turn(i)) / 2;
                double mu = a.u - cu;
                double mv = a.v - cv;
                double m = Math.hypot(mu, mv);
                double qu = u - cu;
                double qv = v - cv;
                double q = Math.hypot(qu, qv);
                boolean inSector = q > 0 && (qu * mu + qv * mv) >= q * m * Math.cos(half) - 1e-15;
                if (inSector) {
                    best = Math.min(best, Math.abs(q - a.radius));
                    // The cap between arc and corner belongs to the other side than the sharp polygon says; it is the
                    // part of the sector beyond the arc and within the two sides.
                    if (q > a.radius && inCap(u, v, i)) {
                        inside = turn < 0;
                    }
                }
            }
        }
        return inside ? -best : best;
    }

    private boolean inCap(double u, double v, int i) {
        int n = vertices.size();
        Vertex p = vertices.get((i + n - 1) % n);
        Vertex a = vertices.get(i);
        Vertex b = vertices.get((i + 1) % n);
        double turn = Math.signum(turn(i));
        double left1 = (a.u - p.u) * (v - a.v) - (a.v - p.v) * (u - a.u);
        double left2 = (b.u - a.u) * (v - a.v) - (b.v - a.v) * (u - a.u);
        return left1 * turn >= 0 && left2 * turn >= 0;
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
