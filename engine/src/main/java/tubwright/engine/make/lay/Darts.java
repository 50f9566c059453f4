// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Sheets;

/**
 * Darts cut into a cloth's pattern where it would shear beyond its lock. By the law of every net (Hazzidakis, Gauss and
 * Bonnet: shear is the curvature gathered between the threads) a wedge of angle Δ with its tip before the locked place takes
 * Δ off the shear beyond it: so Δ is what the shear has too much, and a little. On a dome cloth is left over and the wedge is
 * cut out; on a saddle it is short, a slit is cut and opens by the wedge, to be filled. The net is not laid anew.
 */
final class Darts {
    /** Taken off besides what is too much, rad. */
    private static final double SPARE = Math.toRadians(2);

    private static final double WIDEST = Math.toRadians(30);
    /** Shorter ones are a snip of the scissors, m. */
    private static final double SHORTEST = 0.020;
    /** Width of a slit at its mouth, m. */
    private static final double SLIT = 0.001;

    private Darts() {}

    /** A pattern and what was cut into it, in words. */
    record Cut(FlatPattern flat, List<String> words) {}

    /**
     * Cuts a dart for every locked spot that is reached from the outline.
     *
     * @param shears shear of each element, rad
     * @param placeOf where an element lies in the flat, 2 coordinates; empty where the net does not reach
     */
    static Cut into(
            FlatPattern flat,
            List<Advice.Spot> spots,
            IntFunction<double[]> shears,
            IntFunction<double[]> placeOf,
            double locking) {
        FlatPattern now = flat;
        List<String> words = new ArrayList<>();
        for (Advice.Spot spot : spots) {
            double[] tip = {};
            double[] worst = {};
            double most = 0;
            for (int e : spot.elements()) {
                double[] at = placeOf.apply(e);
                double[] shear = shears.apply(e);
                if (at.length == 0 || shear.length == 0) {
                    continue;
                }
                if (tip.length == 0 || Math.abs(at[0] * at[1]) < Math.abs(tip[0] * tip[1])) {
                    tip = at;
                }
                if (Math.abs(shear[0]) > Math.abs(most)) {
                    most = shear[0];
                    worst = at;
                }
            }
            if (worst.length == 0 || now.outlines().isEmpty() || now.overlapsItself()) {
                continue;
            }
            double[] mouth = nearest(now, worst);
            double length = Math.hypot(mouth[0] - tip[0], mouth[1] - tip[1]);
            double angle = Math.min(WIDEST, Math.abs(most) - locking + SPARE);
            if (length < SHORTEST) {
                continue;
            }
            // In the flat y runs against the weft, so a dome has shear and x y of opposite sign.
            boolean dome = most * worst[0] * worst[1] < 0;
            double open = 2 * length * Math.tan(angle / 2);
            double half = (dome ? open : SLIT) / 2;
            double ex = (mouth[0] - tip[0]) / length;
            double ey = (mouth[1] - tip[1]) / length;
            double past = 1.2;
            double mx = tip[0] + past * length * ex;
            double my = tip[1] + past * length * ey;
            FlatPattern cut = Sheets.without(now, new double[] {
                tip[0],
                tip[1],
                mx + past * half * ey,
                my - past * half * ex,
                mx - past * half * ey,
                my + past * half * ex
            });
            if (cut != now) {
                now = cut;
                words.add(String.format(
                        Locale.ROOT,
                        dome
                                ? "a dart %.0f mm deep and %.0f mm wide is cut into its pattern for %s"
                                : "a slit %.0f mm deep is cut into its pattern for %3$s; it opens by %2$.0f mm, to be filled",
                        1e3 * length,
                        1e3 * open,
                        spot.part()));
            }
        }
        return new Cut(now, words);
    }

    /** The point of the outlines nearest to a point. */
    private static double[] nearest(FlatPattern flat, double[] p) {
        double best = Double.POSITIVE_INFINITY;
        double[] found = p;
        for (double[] o : flat.outlines()) {
            for (int i = 0; i < o.length; i += 2) {
                double away = Math.hypot(o[i] - p[0], o[i + 1] - p[1]);
                if (away < best) {
                    best = away;
                    found = new double[] {o[i], o[i + 1]};
                }
            }
        }
        return found;
    }
}
