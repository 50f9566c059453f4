// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;
import java.util.Locale;
import tubwright.engine.shape.ShapeException.Subject;

/** Whether an opening fits its strips, and how much skin it takes away. */
final class OpeningChecks {
    private OpeningChecks() {}

    static void check(TubShape shape, Opening opening) {
        if (opening.strips().isEmpty()) {
            throw fail(opening, "names no strip to cut");
        }
        int low = Integer.MAX_VALUE;
        int high = -1;
        for (String name : opening.strips()) {
            int k = shape.strip(name)
                    .orElseThrow(() -> fail(opening, "cuts strip \"" + name + "\", which does not exist"));
            low = Math.min(low, k);
            high = Math.max(high, k);
        }
        if (high - low + 1 != opening.strips().size()) {
            throw fail(opening, "cuts strips that are not neighbours");
        }
        if (opening.view() == View.FRONT) {
            throw fail(opening, "is drawn in front view; openings in the skin are drawn in plan or side view");
        }
        if (opening.side() == Side.CENTRE && opening.view() != View.PLAN) {
            throw fail(opening, "lies across the centreline, so it must be drawn in plan view");
        }
        boolean touchesCentre = low == 0 || high == shape.strips().size() - 1;
        if (opening.side() == Side.CENTRE && !touchesCentre) {
            throw fail(opening, "lies across the centreline, but none of its strips reaches it");
        }
        double[] b = opening.contour().bounds();
        if (b[0] <= shape.front() || b[1] >= shape.rear()) {
            throw fail(
                    opening,
                    String.format(
                            Locale.ROOT,
                            "runs from x = %.1f to %.1f mm and leaves the tub, which runs from %.1f to %.1f mm",
                            b[0] * 1e3,
                            b[1] * 1e3,
                            shape.front() * 1e3,
                            shape.rear() * 1e3));
        }
        double step = Math.max(b[1] - b[0], b[3] - b[2]) / 100;
        double[] points = opening.contour().points(step);
        for (int i = 0; i < points.length; i += 2) {
            inStrips(shape, opening, low, high, points[i], points[i + 1]);
        }
        notFolded(shape, opening, low, high, b);
    }

    private static void inStrips(TubShape shape, Opening opening, int low, int high, double x, double v) {
        Section s = shape.section(x);
        boolean centre = opening.side() == Side.CENTRE;
        if (!centre && opening.view() == View.PLAN && v < 0) {
            throw fail(
                    opening,
                    String.format(
                            Locale.ROOT,
                            "reaches y = %.1f mm, over the centreline; draw it as the right-hand one or put it on the centre",
                            v * 1e3));
        }
        double target = centre ? Math.abs(v) : v;
        double[] range = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int k = low; k <= high; k++) {
            double[] r = Locator.range(s, k, opening.view());
            range[0] = Math.min(range[0], r[0]);
            range[1] = Math.max(range[1], r[1]);
        }
        if (range[1] - range[0] < 1e-6) {
            throw edgeOn(opening);
        }
        // On the centreline both numbers are zero but for rounding.
        boolean fromCentre = centre && target < 1e-9 && range[0] < 1e-9;
        boolean ok = target < range[1] && (target > range[0] || fromCentre);
        if (!ok) {
            throw fail(
                    opening,
                    String.format(
                            Locale.ROOT,
                            "is larger than %s: at x = %.1f mm it reaches %s = %.1f mm, but there the strip%s from %.1f to "
                                    + "%.1f mm",
                            opening.strips().size() == 1
                                    ? "its strip \"" + opening.strips().getFirst() + "\""
                                    : "its strips",
                            x * 1e3,
                            opening.view() == View.PLAN ? "y" : "z",
                            v * 1e3,
                            opening.strips().size() == 1 ? " runs" : "s run",
                            range[0] * 1e3,
                            range[1] * 1e3));
        }
    }

    /** In the view, every strip cut must be seen once only, over the contour's length. */
    private static void notFolded(TubShape shape, Opening opening, int low, int high, double[] b) {
        SkinPoint p = new SkinPoint();
        double vLow = opening.side() == Side.CENTRE ? 0 : b[2];
        double vHigh = opening.side() == Side.CENTRE ? Math.max(Math.abs(b[2]), b[3]) : b[3];
        for (int i = 0; i <= 16; i++) {
            Section s = shape.section(b[0] + (b[1] - b[0]) * i / 16);
            int way = 0;
            double last = Double.NaN;
            for (int k = low; k <= high; k++) {
                for (int j = 0; j <= 48; j++) {
                    s.at(k, j / 48.0, p);
                    double v = opening.view().v(p.x, p.y, p.z);
                    boolean inside = v >= vLow && v <= vHigh && last >= vLow && last <= vHigh;
                    if (inside && Math.abs(v - last) > 1e-9) {
                        int now = v > last ? 1 : -1;
                        if (way != 0 && now != way) {
                            throw fail(
                                    opening,
                                    "cannot be drawn in "
                                            + (opening.view() == View.PLAN ? "plan" : "side")
                                            + " view: its strips fold under themselves there; use the other view");
                        }
                        way = now;
                    }
                    last = v;
                }
            }
            if (way == 0 && i > 0 && i < 16) {
                throw edgeOn(opening);
            }
        }
    }

    /** No two openings that could meet may overlap in their common view. */
    static void apart(List<Opening> openings) {
        for (int i = 0; i < openings.size(); i++) {
            for (int j = i + 1; j < openings.size(); j++) {
                Opening a = openings.get(i);
                Opening b = openings.get(j);
                boolean meet = a.view() == b.view()
                        && a.strips().stream().anyMatch(b.strips()::contains)
                        && (a.side().covers(false) && b.side().covers(false)
                                || a.side().covers(true) && b.side().covers(true));
                if (meet && overlap(a, b)) {
                    throw fail(b, "overlaps opening \"" + a.name() + "\"");
                }
            }
        }
    }

    private static boolean overlap(Opening a, Opening b) {
        boolean fold = a.side() == Side.CENTRE || b.side() == Side.CENTRE;
        double[] pa = a.contour().points(a.contour().perimeter() / 200);
        double[] pb = b.contour().points(b.contour().perimeter() / 200);
        for (int i = 0; i < pa.length; i += 2) {
            if (b.contour().distance(pa[i], pa[i + 1]) <= 0
                    || fold && b.contour().distance(pa[i], -pa[i + 1]) <= 0) {
                return true;
            }
        }
        for (int i = 0; i < pb.length; i += 2) {
            if (a.contour().distance(pb[i], pb[i + 1]) <= 0
                    || fold && a.contour().distance(pb[i], -pb[i + 1]) <= 0) {
                return true;
            }
        }
        return false;
    }

    /**
     * Area on the surface: over x, the girth between the places where the contour's chord in the view begins and ends,
     * weighted with the surface's stretch. Chords by bisection on a fine grid of the strip; midpoint rule in x with the
     * end singularity (vertical tangents) removed by x = centre - half cos(a).
     */
    static double area(TubShape shape, Opening opening) {
        double sum = 0;
        for (String strip : opening.strips()) {
            sum += area(shape, opening, shape.strip(strip).orElseThrow());
        }
        return sum;
    }

    /** The part of it that lies in one strip. */
    static double area(TubShape shape, Opening opening, int k) {
        double[] b = opening.contour().bounds();
        int nx = 400;
        int nt = 200;
        double sum = 0;
        SkinPoint p = new SkinPoint();
        double mid = (b[0] + b[1]) / 2;
        double half = (b[1] - b[0]) / 2;
        for (int i = 0; i < nx; i++) {
            double angle = Math.PI * (i + 0.5) / nx;
            double x = mid - half * Math.cos(angle);
            double w = half * Math.sin(angle) * Math.PI / nx;
            Section s = shape.section(x);
            sum += w * insideGirth(s, k, opening, 1, nt, p);
            if (opening.side() == Side.CENTRE) {
                sum += w * insideGirth(s, k, opening, -1, nt, p);
            }
        }
        return opening.side() == Side.BOTH ? 2 * sum : sum;
    }

    private static double insideGirth(Section s, int k, Opening opening, double sign, int nt, SkinPoint p) {
        double sum = 0;
        double fa = distance(s, k, 0, opening, sign, p);
        double ga = p.stretch;
        for (int j = 0; j < nt; j++) {
            double fb = distance(s, k, (j + 1.0) / nt, opening, sign, p);
            double gb = p.stretch;
            double part = 0;
            if (fa <= 0 && fb <= 0) {
                part = 1;
            } else if ((fa < 0) != (fb < 0)) {
                double lo = (double) j / nt;
                double hi = (j + 1.0) / nt;
                for (int it = 0; it < 30; it++) {
                    double m = (lo + hi) / 2;
                    if ((distance(s, k, m, opening, sign, p) < 0) == (fa < 0)) {
                        lo = m;
                    } else {
                        hi = m;
                    }
                }
                double cut = (lo + hi) / 2 * nt - j;
                part = fa < 0 ? cut : 1 - cut;
            }
            sum += part * (ga + gb) / 2;
            fa = fb;
            ga = gb;
        }
        return sum * s.length(k) / nt;
    }

    private static double distance(Section s, int k, double t, Opening opening, double sign, SkinPoint p) {
        s.at(k, t, p);
        return opening.contour().distance(p.x, opening.view() == View.PLAN ? sign * p.y : p.z);
    }

    private static ShapeException edgeOn(Opening opening) {
        return fail(
                opening,
                "cannot be drawn in " + (opening.view() == View.PLAN ? "plan" : "side")
                        + " view: its strips are seen edge-on there; use the other view");
    }

    private static ShapeException fail(Opening opening, String message) {
        return ShapeException.about(Subject.OPENING, opening.name(), "opening \"" + opening.name() + "\" " + message);
    }
}
