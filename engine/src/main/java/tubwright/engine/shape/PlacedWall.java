// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.shape.ShapeException.Subject;

/**
 * A wall in its place: a plane with coordinates (a, b) and limits. For a wall across the car a is y and b the distance up
 * the wall from its low end's point on the centreline; for a wall along the car a is x and b is z.
 */
public final class PlacedWall {
    private static final int ROWS = 2000;

    /** Steps along a line of the panel, as far apart as what of a section may be missed. */
    private static final int SAMPLES = 64;

    private final TubShape shape;
    private final Wall wall;
    private final boolean left;
    private final double[] origin;
    private final double[] alongA;
    private final double[] alongB;
    private final double[] normal;
    /** Limits {a0, a1, b0, b1}; a range of a or b that runs to the skin is bounded by the tub's own extent. */
    private final double[] bounds;

    private final double givenTop;

    private PlacedWall(
            TubShape shape,
            Wall wall,
            boolean left,
            double[] origin,
            double[] alongA,
            double[] alongB,
            double[] normal,
            double[] limits) {
        this.shape = shape;
        this.wall = wall;
        this.left = left;
        this.origin = origin;
        this.alongA = alongA;
        this.alongB = alongB;
        this.normal = normal;
        this.bounds = limits.clone();
        givenTop = limits[3];
        shrink();
        WallHoles.check(this);
    }

    /** The wall as designed. */
    public Wall wall() {
        return wall;
    }

    /** Whether this is the left-hand twin of a wall along the car. */
    public boolean left() {
        return left;
    }

    /** Whether the wall lies across the car, and so is its own mirror image but for its holes. */
    public boolean across() {
        return wall instanceof Wall.Across;
    }

    /** Unit normal: forward (up for a level shelf) for walls across, outboard for walls along the car. */
    public double[] normal() {
        return normal.clone();
    }

    /** Unit vector of coordinate a. */
    public double[] alongA() {
        return alongA.clone();
    }

    /** Unit vector of coordinate b. */
    public double[] alongB() {
        return alongB.clone();
    }

    /** Bounds {a0, a1, b0, b1} of the panel, m. */
    public double[] bounds() {
        return bounds.clone();
    }

    /** Whether the panel ends below in a straight line short of the skin. */
    public boolean straightBottom() {
        return switch (wall) {
            case Wall.Across across -> across.low().z().isPresent() && bounds[2] == 0;
            case Wall.Along along -> along.bottom().isPresent();
        };
    }

    /** Whether the panel ends above in a straight line short of the skin. */
    public boolean straightTop() {
        return switch (wall) {
            case Wall.Across across -> across.high().z().isPresent() && bounds[3] == givenTop;
            case Wall.Along along -> along.top().isPresent();
        };
    }

    /** The point at (a, b), m. */
    public double[] position(double a, double b) {
        return new double[] {
            origin[0] + a * alongA[0] + b * alongB[0],
            origin[1] + a * alongA[1] + b * alongB[1],
            origin[2] + a * alongA[2] + b * alongB[2]
        };
    }

    /** (a, b) of a point of the plane given in the view of the wall's holes. */
    public double[] fromView(double u, double v) {
        return switch (wall.holeView()) {
            case FRONT -> new double[] {u, (v - origin[2]) / alongB[2]};
            case PLAN -> new double[] {v, (u - origin[0]) / alongB[0]};
            case SIDE -> new double[] {u, v};
        };
    }

    /** True area per area in the view of the wall's holes. */
    public double areaPerViewArea() {
        return switch (wall.holeView()) {
            case FRONT -> 1 / Math.abs(alongB[2]);
            case PLAN -> 1 / Math.abs(alongB[0]);
            case SIDE -> 1;
        };
    }

    /** Whether the point at (a, b) is inside the panel's outer edge; a negative margin widens it. */
    public boolean contains(double a, double b, double margin) {
        return edgeDistance(a, b) <= -margin;
    }

    /**
     * Level set of the panel's outer edge: negative inside, zero on the edge, of the size of the distance near it. The
     * larger of the skin's distance in its section plane and the distances from the limits.
     */
    public double edgeDistance(double a, double b) {
        return Math.max(skinDistance(a, b), limitDistance(a, b));
    }

    /** Distance from the skin in the section's plane at (a, b), m; negative inside. */
    public double skinDistance(double a, double b) {
        double[] p = position(a, b);
        return shape.distance(p[0], p[1], p[2]);
    }

    /** Distance from the straight limits, m; negative inside. */
    public double limitDistance(double a, double b) {
        return Math.max(Math.max(bounds[0] - a, a - bounds[1]), Math.max(bounds[2] - b, b - bounds[3]));
    }

    /** Points where sharp corners of the skin pierce the wall: 3 coordinates each; right half for walls across. */
    public double[] sharpCorners() {
        int n = shape.frames().getFirst().corners().size();
        double[] out = new double[3 * n * shape.frames().size()];
        int count = 0;
        for (int k = 0; k < n; k++) {
            for (int bay = 0; bay + 1 < shape.frames().size(); bay++) {
                double from = shape.frames().get(bay).x();
                double to = shape.frames().get(bay + 1).x();
                double fa = offPlane(from, bay, k);
                double fb = offPlane(to, bay, k);
                boolean lastBay = bay + 2 == shape.frames().size();
                boolean pierced = fa == 0 || fa * fb < 0 || lastBay && fb == 0;
                if (!pierced) {
                    continue;
                }
                double lo = from;
                double hi = to;
                for (int it = 0; it < 60; it++) {
                    double m = (lo + hi) / 2;
                    if ((offPlane(m, bay, k) < 0) == (fa < 0)) {
                        lo = m;
                    } else {
                        hi = m;
                    }
                }
                double x = fa == 0 ? from : lastBay && fb == 0 ? to : (lo + hi) / 2;
                Section s = shape.section(x, bay);
                if (s.radius(k) < 1e-3 && Math.abs(s.turn(k)) > Math.toRadians(8)) {
                    out[count++] = x;
                    out[count++] = across() ? s.cornerY(k) : origin[1];
                    out[count++] = s.cornerZ(k);
                }
            }
        }
        return java.util.Arrays.copyOf(out, count);
    }

    private double offPlane(double x, int bay, int corner) {
        Section s = shape.section(x, bay);
        return (x - origin[0]) * normal[0]
                + (s.cornerY(corner) - Math.abs(origin[1])) * Math.abs(normal[1])
                + (s.cornerZ(corner) - origin[2]) * normal[2];
    }

    /** Exact area of the panel, holes taken out, m². */
    public double area() {
        double sum = 0;
        for (int i = 0; i < ROWS; i++) {
            // x = centre - half cos: takes the square-root ends of round sections out of the midpoint rule.
            double angle = Math.PI * (i + 0.5) / ROWS;
            double c = -Math.cos(angle);
            double w = Math.sin(angle) * Math.PI / ROWS;
            int by = across() ? 2 : 0;
            double half = (bounds[by + 1] - bounds[by]) / 2;
            double at = (bounds[by] + bounds[by + 1]) / 2 + half * c;
            sum += w * half * chord(at);
        }
        for (Wall.Hole hole : wall.holes()) {
            sum -= hole.contour().area() * areaPerViewArea();
        }
        return sum;
    }

    /** Length inside the skin and limits of the line b = at (walls across) or a = at (walls along). */
    private double chord(double at) {
        double[] p = across() ? position(0, at) : position(at, 0);
        if (p[0] < shape.front() - 1e-9 || p[0] > shape.rear() + 1e-9) {
            return 0;
        }
        Section s = shape.section(Math.clamp(p[0], shape.front(), shape.rear()));
        double from = across() ? 0 : bounds[2];
        double to = across() ? bounds[1] : bounds[3];
        double sum = 0;
        double before = inside(s, p, from);
        for (int j = 0; j < SAMPLES; j++) {
            double q0 = from + (to - from) * j / SAMPLES;
            double q1 = from + (to - from) * (j + 1) / SAMPLES;
            double now = inside(s, p, q1);
            if (before <= 0 && now <= 0) {
                sum += q1 - q0;
            } else if ((before <= 0) != (now <= 0)) {
                double lo = q0;
                double hi = q1;
                for (int it = 0; it < 30; it++) {
                    double m = (lo + hi) / 2;
                    if ((inside(s, p, m) <= 0) == (before <= 0)) {
                        lo = m;
                    } else {
                        hi = m;
                    }
                }
                sum += before <= 0 ? (lo + hi) / 2 - q0 : q1 - (lo + hi) / 2;
            }
            before = now;
        }
        return across() ? 2 * sum : sum;
    }

    /** Whether that line meets the panel: whether {@link #chord} is greater than zero, without its length. */
    private boolean meets(double at) {
        double[] p = across() ? position(0, at) : position(at, 0);
        if (p[0] < shape.front() - 1e-9 || p[0] > shape.rear() + 1e-9) {
            return false;
        }
        Section s = shape.section(Math.clamp(p[0], shape.front(), shape.rear()));
        double from = across() ? 0 : bounds[2];
        double to = across() ? bounds[1] : bounds[3];
        if (across() && s.clear(p[2])) {
            return false;
        }
        for (int j = 0; j <= SAMPLES; j++) {
            if (inside(s, p, from + (to - from) * j / SAMPLES) <= 0) {
                return true;
            }
        }
        return false;
    }

    private double inside(Section s, double[] p, double q) {
        return across() ? s.distance(q, p[2]) : s.distance(origin[1], q);
    }

    /** Draws the bounds in to where the panel is, and checks that it is. */
    private void shrink() {
        int by = across() ? 2 : 0;
        int n = 400;
        double from = bounds[by];
        double to = bounds[by + 1];
        int mid = -1;
        boolean[] some = new boolean[n + 1];
        for (int i = 0; i <= n; i++) {
            some[i] = meets(from + (to - from) * i / n);
            if (some[i] && (mid < 0 || Math.abs(2 * i - n) < Math.abs(2 * mid - n))) {
                mid = i;
            }
        }
        if (mid < 0) {
            throw fail("lies outside the tub");
        }
        int low = mid;
        int high = mid;
        while (low > 0 && some[low - 1]) {
            low--;
        }
        while (high < n && some[high + 1]) {
            high++;
        }
        double start = low == 0 ? from : edge(from + (to - from) * (low - 1) / n, from + (to - from) * low / n);
        double end = high == n ? to : edge(from + (to - from) * (high + 1) / n, from + (to - from) * high / n);
        if (!across() && (low > 0 || high < n)) {
            throw fail(String.format(Locale.ROOT, "lies outside the tub at x = %.1f mm", (low > 0 ? from : to) * 1e3));
        }
        bounds[by] = start;
        bounds[by + 1] = end;
        narrow();
        if (across()) {
            for (int i = 0; i <= n; i++) {
                double[] p = position(0, start + (end - start) * i / n);
                if (p[0] < shape.front() - 1e-9 || p[0] > shape.rear() + 1e-9) {
                    throw fail(leaves(p[0]));
                }
            }
            for (double b : new double[] {start, end}) {
                double[] p = position(0, b);
                boolean atEnd = p[0] < shape.front() + 1e-9 || p[0] > shape.rear() - 1e-9;
                if (atEnd && Math.abs(alongB[0]) > 1e-9 && chord(b) > 1e-3 && !limited(b)) {
                    throw fail(leaves(p[0]));
                }
            }
        }
    }

    /** For a wall across: draws the bounds of a in to the widest place. */
    private void narrow() {
        if (!across()) {
            return;
        }
        double reach = bounds[1];
        double widest = 0;
        int n = 200;
        for (int k = 0; k <= n; k++) {
            int i = (k + n / 2) % (n + 1); // from the middle, which is likely wide
            double[] p = position(0, bounds[2] + (bounds[3] - bounds[2]) * i / n);
            Section s = shape.section(Math.clamp(p[0], shape.front(), shape.rear()));
            double inside = 0;
            // Rows narrower than the widest so far, soon one in the middle, do not count: no need to see how narrow.
            for (int j = 100; inside == 0 && reach * j / 100 > widest - reach / 100 && j > 0; j--) {
                if (s.distance(reach * j / 100, p[2]) <= 0) {
                    inside = reach * j / 100;
                }
            }
            double outside = inside + reach / 100;
            if (inside > widest || inside > widest - reach / 100 && s.distance(Math.nextUp(widest), p[2]) <= 0) {
                for (int it = 0; it < 50; it++) {
                    double m = (inside + outside) / 2;
                    if (s.distance(m, p[2]) <= 0) {
                        inside = m;
                    } else {
                        outside = m;
                    }
                }
                widest = Math.max(widest, inside);
            }
        }
        bounds[0] = -widest;
        bounds[1] = widest;
    }

    private boolean limited(double b) {
        return wall instanceof Wall.Across across
                && (b < 1e-9 && across.low().z().isPresent()
                        || b > 1e-9 && across.high().z().isPresent());
    }

    private double edge(double outside, double inside) {
        double lo = outside;
        double hi = inside;
        for (int i = 0; i < 50; i++) {
            double m = (lo + hi) / 2;
            if (meets(m)) {
                hi = m;
            } else {
                lo = m;
            }
        }
        return hi;
    }

    private String leaves(double x) {
        return String.format(
                Locale.ROOT,
                "runs out of the tub's %s end at x = %.1f mm; the tub runs from %.1f to %.1f mm",
                x < (shape.front() + shape.rear()) / 2 ? "front" : "rear",
                x * 1e3,
                shape.front() * 1e3,
                shape.rear() * 1e3);
    }

    private ShapeException fail(String message) {
        return ShapeException.about(Subject.WALL, wall.name(), "wall \"" + wall.name() + "\" " + message);
    }

    static List<PlacedWall> place(TubShape shape, Wall wall) {
        return switch (wall) {
            case Wall.Across across -> List.of(across(shape, across));
            case Wall.Along along -> along(shape, along);
        };
    }

    private static ShapeException fail(Wall wall, String message) {
        return ShapeException.about(Subject.WALL, wall.name(), "wall \"" + wall.name() + "\" " + message);
    }

    private static PlacedWall across(TubShape shape, Wall.Across wall) {
        double[] low = end(shape, wall, wall.low(), true);
        double[] high = end(shape, wall, wall.high(), false);
        double dx = high[0] - low[0];
        double dz = high[1] - low[1];
        double length = Math.hypot(dx, dz);
        if (!(length > 1e-3)) {
            throw fail(wall, "has its two ends in the same place");
        }
        double mx = dx / length;
        double mz = dz / length;
        if (mz < 0) {
            throw fail(wall, "is upside down: its low end lies above its high end");
        }
        double reach = 0;
        for (Frame frame : shape.frames()) {
            for (OutlineCorner c : frame.corners()) {
                reach = Math.max(reach, c.y());
            }
        }
        // An end at the skin is open: away from the centreline the skin may lie lower or higher than there.
        double open = shape.rear() - shape.front() + 2 * reach;
        double from = wall.low().z().isPresent() ? 0 : -Math.min(open, room(shape, low[0], -mx));
        double to = wall.high().z().isPresent() ? length : length + Math.min(open, room(shape, high[0], mx));
        return new PlacedWall(
                shape,
                wall,
                false,
                new double[] {low[0], 0, low[1]},
                new double[] {0, 1, 0},
                new double[] {mx, 0, mz},
                new double[] {-mz, 0, mx},
                new double[] {-1.01 * reach, 1.01 * reach, from, to});
    }

    /** How far one can go from x, at a rate mx, before the tub ends. */
    private static double room(TubShape shape, double x, double mx) {
        return Math.abs(mx) < 1e-12 ? Double.POSITIVE_INFINITY : ((mx > 0 ? shape.rear() : shape.front()) - x) / mx;
    }

    private static double[] end(TubShape shape, Wall wall, Wall.End end, boolean low) {
        if (!Double.isFinite(end.x())
                || end.z().isPresent() && !Double.isFinite(end.z().getAsDouble())) {
            throw fail(wall, "holds a number that is not finite");
        }
        if (end.x() < shape.front() - 1e-9 || end.x() > shape.rear() + 1e-9) {
            throw fail(
                    wall,
                    String.format(
                            Locale.ROOT,
                            "lies outside the tub: x = %.1f mm, but the tub runs from %.1f to %.1f mm",
                            end.x() * 1e3,
                            shape.front() * 1e3,
                            shape.rear() * 1e3));
        }
        double x = Math.clamp(end.x(), shape.front(), shape.rear());
        Section s = shape.section(x);
        return new double[] {x, end.z().orElseGet(() -> low ? s.bottom() : s.top())};
    }

    private static List<PlacedWall> along(TubShape shape, Wall.Along wall) {
        if (!Double.isFinite(wall.y()) || !(wall.toX() > wall.fromX())) {
            throw fail(wall, "needs a finite y and a rear end behind its front end");
        }
        if (wall.y() < 0
                || wall.side() == Side.CENTRE && wall.y() != 0
                || wall.side() != Side.CENTRE && wall.y() == 0) {
            throw fail(wall, "needs y greater than zero, or y = 0 and the centre as its side");
        }
        if (wall.fromX() < shape.front() - 1e-9 || wall.toX() > shape.rear() + 1e-9) {
            throw fail(
                    wall,
                    String.format(
                            Locale.ROOT,
                            "lies outside the tub: it runs from x = %.1f to %.1f mm, the tub from %.1f to %.1f mm",
                            wall.fromX() * 1e3,
                            wall.toX() * 1e3,
                            shape.front() * 1e3,
                            shape.rear() * 1e3));
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Frame frame : shape.frames()) {
            for (OutlineCorner c : frame.corners()) {
                low = Math.min(low, c.z());
                high = Math.max(high, c.z());
            }
        }
        OptionalDouble bottom = wall.bottom();
        OptionalDouble top = wall.top();
        double margin = 0.01 * (high - low);
        List<PlacedWall> out = new ArrayList<>();
        for (boolean left : new boolean[] {false, true}) {
            boolean wanted = wall.side() == Side.CENTRE ? !left : wall.side().covers(left);
            if (wanted) {
                double sign = left ? -1 : 1;
                out.add(new PlacedWall(
                        shape,
                        wall,
                        left,
                        new double[] {0, sign * wall.y(), 0},
                        new double[] {1, 0, 0},
                        new double[] {0, 0, 1},
                        new double[] {0, sign, 0},
                        new double[] {
                            Math.max(wall.fromX(), shape.front()),
                            Math.min(wall.toX(), shape.rear()),
                            bottom.orElse(low - margin),
                            top.orElse(high + margin)
                        }));
            }
        }
        return out;
    }
}
