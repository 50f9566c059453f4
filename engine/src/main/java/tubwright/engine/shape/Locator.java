// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.Locale;
import tubwright.engine.shape.ShapeException.Subject;

/** Finds spots on the skin and on walls from their coordinates in a drawing view. */
final class Locator {
    private static final int SAMPLES = 96;

    private Locator() {}

    static Spot onSkin(TubShape shape, String strip, Side side, View view, double x, double v) {
        int k = shape.strip(strip)
                .orElseThrow(
                        () -> ShapeException.about(Subject.SPOT, strip, "there is no strip called \"" + strip + "\""));
        if (!(x >= shape.front() && x <= shape.rear())) {
            throw ShapeException.about(
                    Subject.SPOT,
                    strip,
                    String.format(
                            Locale.ROOT,
                            "x = %.1f mm is outside the tub, which runs from %.1f to %.1f mm",
                            x * 1e3,
                            shape.front() * 1e3,
                            shape.rear() * 1e3));
        }
        Section s = shape.section(x);
        SkinPoint p = new SkinPoint();
        double[] roots = roots(s, k, view, v);
        if (roots.length == 0) {
            double[] range = range(s, k, view);
            throw ShapeException.about(
                    Subject.SPOT,
                    strip,
                    String.format(
                            Locale.ROOT,
                            "%s = %.1f mm is not on strip \"%s\" at x = %.1f mm, where it runs from %.1f to %.1f mm",
                            view == View.PLAN ? "y" : "z",
                            v * 1e3,
                            strip,
                            x * 1e3,
                            range[0] * 1e3,
                            range[1] * 1e3));
        }
        if (roots.length > 1) {
            throw ShapeException.about(
                    Subject.SPOT,
                    strip,
                    String.format(
                            Locale.ROOT,
                            "strip \"%s\" passes %s = %.1f mm more than once at x = %.1f mm; give %s instead",
                            strip,
                            view == View.PLAN ? "y" : "z",
                            v * 1e3,
                            x * 1e3,
                            view == View.PLAN ? "z" : "y"));
        }
        s.at(k, roots[0], p);
        boolean left = side == Side.LEFT;
        double sign = left ? -1 : 1;
        return new Spot(strip, false, left, new double[] {x, sign * p.y, p.z}, new double[] {
            p.normalX, sign * p.normalY, p.normalZ
        });
    }

    static double[] range(Section s, int strip, View view) {
        SkinPoint p = new SkinPoint();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= SAMPLES; i++) {
            s.at(strip, i / (double) SAMPLES, p);
            double v = view.v(p.x, p.y, p.z);
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        return new double[] {low, high};
    }

    /** Fractions of the strip at which the view's v takes a value; a value at an end within 1e-9 m counts. */
    static double[] roots(Section s, int strip, View view, double v) {
        SkinPoint p = new SkinPoint();
        double[] found = new double[8];
        int n = 0;
        double before = 0;
        for (int i = 0; i <= SAMPLES; i++) {
            double t = i / (double) SAMPLES;
            s.at(strip, t, p);
            double f = view.v(p.x, p.y, p.z) - v;
            // A value met exactly at a sample is no change of sign: seen here, or it would be missed.
            if (f == 0 || Math.abs(f) < 1e-9 && (i == 0 || i == SAMPLES)) {
                if (n == 0 || found[n - 1] < t - 1.5 / SAMPLES) {
                    found[n++] = t;
                }
                f = 0;
            } else if (i > 0 && (f > 0) != (before > 0) && before != 0 && n < found.length) {
                double a = t - 1.0 / SAMPLES;
                double b = t;
                double fa = before;
                for (int it = 0; it < 60; it++) {
                    double m = (a + b) / 2;
                    s.at(strip, m, p);
                    double fm = view.v(p.x, p.y, p.z) - v;
                    if ((fm > 0) == (fa > 0)) {
                        a = m;
                    } else {
                        b = m;
                    }
                }
                found[n++] = (a + b) / 2;
            }
            before = f;
        }
        return java.util.Arrays.copyOf(found, n);
    }

    static Spot onWall(TubShape shape, String name, boolean left, double u, double v) {
        PlacedWall wall = null;
        for (PlacedWall w : shape.placedWalls()) {
            if (w.wall().name().equals(name) && (wall == null || w.left() == left)) {
                wall = w;
            }
        }
        if (wall == null) {
            throw ShapeException.about(Subject.SPOT, name, "there is no wall called \"" + name + "\"");
        }
        double[] at = wall.fromView(u, v);
        double[] position = wall.position(at[0], at[1]);
        if (!wall.contains(at[0], at[1], -1e-6)) {
            throw ShapeException.about(
                    Subject.SPOT,
                    name,
                    String.format(
                            Locale.ROOT,
                            "the point x = %.1f, y = %.1f, z = %.1f mm is outside wall \"%s\"",
                            position[0] * 1e3,
                            position[1] * 1e3,
                            position[2] * 1e3,
                            name));
        }
        for (Wall.Hole hole : wall.wall().holes()) {
            if (hole.contour().distance(u, v) < 0) {
                throw ShapeException.about(
                        Subject.SPOT,
                        name,
                        "the point is inside the hole \"" + hole.name() + "\" of wall \"" + name + "\"");
            }
        }
        return new Spot(name, true, wall.left(), position, wall.normal());
    }
}
