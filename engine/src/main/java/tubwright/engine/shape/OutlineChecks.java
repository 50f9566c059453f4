// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;
import java.util.Locale;

/** Checks of frames against each other and of single outlines. */
final class OutlineChecks {
    private OutlineChecks() {}

    /** Whether segments a-b and c-d meet. */
    static boolean cross(double au, double av, double bu, double bv, double cu, double cv, double du, double dv) {
        double o1 = side(au, av, bu, bv, cu, cv);
        double o2 = side(au, av, bu, bv, du, dv);
        double o3 = side(cu, cv, du, dv, au, av);
        double o4 = side(cu, cv, du, dv, bu, bv);
        if (((o1 > 0) != (o2 > 0)) && ((o3 > 0) != (o4 > 0)) && o1 != 0 && o2 != 0 && o3 != 0 && o4 != 0) {
            return true;
        }
        return o1 == 0 && within(au, av, bu, bv, cu, cv)
                || o2 == 0 && within(au, av, bu, bv, du, dv)
                || o3 == 0 && within(cu, cv, du, dv, au, av)
                || o4 == 0 && within(cu, cv, du, dv, bu, bv);
    }

    private static double side(double au, double av, double bu, double bv, double pu, double pv) {
        return (bu - au) * (pv - av) - (bv - av) * (pu - au);
    }

    private static boolean within(double au, double av, double bu, double bv, double pu, double pv) {
        return Math.min(au, bu) <= pu && pu <= Math.max(au, bu) && Math.min(av, bv) <= pv && pv <= Math.max(av, bv);
    }

    /** Order, number of corners, finite numbers, centreline, crossing and fillets of the frames as given. */
    static void frames(List<Frame> frames) {
        if (frames.size() < 2) {
            throw ShapeException.frame(
                    Math.max(0, frames.size() - 1),
                    "a tub needs at least two frames, front and rear; there "
                            + (frames.size() == 1 ? "is one" : "are none"));
        }
        int n = frames.getFirst().corners().size();
        for (int i = 0; i < frames.size(); i++) {
            Frame frame = frames.get(i);
            if (!Double.isFinite(frame.x())) {
                throw ShapeException.frame(i, "the station x of frame " + (i + 1) + " is not a finite number");
            }
            if (frame.corners().size() != n) {
                throw ShapeException.frame(
                        i,
                        "frame " + (i + 1) + " has " + frame.corners().size() + " outline corners, but frame 1 has " + n
                                + "; every frame needs the same number");
            }
            if (n < 3) {
                throw ShapeException.frame(
                        i, "an outline needs at least 3 corners from bottom centre to top centre, not " + n);
            }
            if (i > 0) {
                double gap = frame.x() - frames.get(i - 1).x();
                if (gap <= 0) {
                    throw ShapeException.frame(
                            i,
                            String.format(
                                    Locale.ROOT,
                                    "frame %d at x = %.1f mm %s frame %d at x = %.1f mm; list frames from front to rear",
                                    i + 1,
                                    frame.x() * 1e3,
                                    gap == 0 ? "lies on" : "comes before",
                                    i,
                                    frames.get(i - 1).x() * 1e3));
                }
                if (gap < 1e-3) {
                    throw ShapeException.frame(
                            i, "frames " + i + " and " + (i + 1) + " are less than 1 mm apart; leave one out");
                }
            }
            corners(frame, i);
        }
        for (int k = 1; k < n - 1; k++) {
            for (int i = 0; i < frames.size(); i++) {
                if (frames.get(i).corners().get(k).y() <= 0) {
                    throw ShapeException.corner(
                            i,
                            k,
                            "corner " + (k + 1) + " of frame " + (i + 1)
                                    + " lies on or left of the centreline; give the right half, y greater than zero");
                }
            }
        }
    }

    private static void corners(Frame frame, int i) {
        int n = frame.corners().size();
        for (int k = 0; k < n; k++) {
            OutlineCorner c = frame.corners().get(k);
            if (!Double.isFinite(c.y()) || !Double.isFinite(c.z()) || !Double.isFinite(c.radius())) {
                throw ShapeException.corner(
                        i, k, "corner " + (k + 1) + " of frame " + (i + 1) + " holds a number that is not finite");
            }
            if (c.radius() < 0) {
                throw ShapeException.corner(
                        i, k, "the radius at corner " + (k + 1) + " of frame " + (i + 1) + " is negative");
            }
            if ((k == 0 || k == n - 1) && c.y() != 0) {
                throw ShapeException.corner(
                        i,
                        k,
                        String.format(
                                Locale.ROOT,
                                "the %s corner of frame %d must lie on the centreline (y = 0), not at y = %.1f mm",
                                k == 0 ? "first" : "last",
                                i + 1,
                                c.y() * 1e3));
            }
        }
    }

    /**
     * One section of the loft: the outline must be simple, run anticlockwise seen from behind, and have room for its
     * fillets.
     *
     * @param s the section
     * @param frame frame to blame
     * @param where the place in words: "frame 3" or "between frames 3 and 4, at x = 812.0 mm,"
     */
    static void section(Section s, int frame, String where) {
        int n = s.n;
        for (int k = 0; k < n - 1; k++) {
            if (Math.hypot(s.y[k + 1] - s.y[k], s.z[k + 1] - s.z[k]) < 1e-4) {
                throw ShapeException.corner(
                        frame,
                        k,
                        "corners " + (k + 1) + " and " + (k + 2) + " of " + where + " coincide (closer than 0.1 mm)");
            }
        }
        for (int k = 1; k < n - 1; k++) {
            if (s.y[k] <= 1e-6) {
                throw ShapeException.corner(
                        frame, k, "the outline of " + where + " crosses the centreline at corner " + (k + 1));
            }
        }
        for (int i = 0; i < n - 1; i++) {
            for (int j = i + 2; j < n - 1; j++) {
                if (cross(s.y[i], s.z[i], s.y[i + 1], s.z[i + 1], s.y[j], s.z[j], s.y[j + 1], s.z[j + 1])) {
                    throw ShapeException.corner(
                            frame,
                            j,
                            "the outline of " + where + " crosses itself: the side from corner " + (i + 1) + " to "
                                    + (i + 2) + " meets the side from corner " + (j + 1) + " to " + (j + 2));
                }
            }
        }
        for (int k = 0; k < n; k++) {
            if (Math.abs(s.turn[k]) > Math.toRadians(176)) {
                throw ShapeException.corner(
                        frame, k, "the outline of " + where + " folds back on itself at corner " + (k + 1));
            }
        }
        if (!(s.area() > 0)) {
            throw ShapeException.frame(
                    frame,
                    "the outline of " + where
                            + " runs the wrong way round; start at the bottom centre and end at the top centre");
        }
        for (int k = 0; k < n - 1; k++) {
            double room = s.chord[k];
            double need = s.tangent[k] + s.tangent[k + 1];
            if (need > room * (1 + 1e-9)) {
                int worst = s.tangent[k] >= s.tangent[k + 1] ? k : k + 1;
                int other = worst == k ? k + 1 : k;
                double tan = s.tangent[worst] / s.radius[worst];
                double fits = Math.max(0, room - s.tangent[other]) / tan;
                throw ShapeException.corner(
                        frame,
                        worst,
                        String.format(
                                Locale.ROOT,
                                "the radius %.1f mm at corner %d of %s does not fit on the side of %.1f mm from corner %d "
                                        + "to %d; the largest that fits there is %.1f mm",
                                s.radius[worst] * 1e3,
                                worst + 1,
                                where,
                                room * 1e3,
                                k + 1,
                                k + 2,
                                Math.floor(fits * 1e4) / 10));
            }
        }
    }
}
