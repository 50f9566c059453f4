// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Mass against stiffness: the lightest layup found for each of a row of stiffness targets, and the mass below which none
 * exists. Read the other way round it says how stiff a tub of a given mass can be.
 *
 * @param points in rising order of what is asked
 */
public record ExchangeCurve(List<Point> points) {
    public ExchangeCurve {
        points =
                points.stream().sorted(Comparator.comparingDouble(Point::asked)).toList();
    }

    /**
     * One target.
     *
     * @param asked stiffness, N·m/rad or N/m between loaded and held hardpoints
     * @param found lightest layup that has it; the first of its stiffnesses is the one asked for
     */
    public record Point(double asked, Lightened found) {
        /** Stiffness of the layup found. */
        public Interval reached() {
            return found.stiffness().getFirst();
        }
    }

    /**
     * How stiff a mass can be.
     *
     * @param mass kg
     * @param stiffest point of the curve that is no heavier; empty where the curve begins above that mass
     * @param atMost no choice of that mass or less is as stiff as this; infinite where the curve does not say
     */
    public record Reading(double mass, Optional<Point> stiffest, double atMost) {}

    /** Hears how the curve gets on, and of the search for each point. */
    public interface Listener extends Lighten.Listener {
        /** Nobody. */
        Listener NONE = new Listener() {};

        /**
         * The search for a point begins.
         *
         * @param number from 1, the stiffest first
         * @param all points asked for
         */
        default void point(int number, int all) {
            stage("point " + number + " of " + all);
        }
    }

    /**
     * Computes the curve on one problem, from the stiffest target down, so that fields solved for one serve the next.
     *
     * @param problem what may be chosen
     * @param tub under the case whose stiffness is asked for, one of the problem's
     * @param asked stiffness targets
     * @param others targets that hold at every point
     * @param budget for each point
     * @param listener hears of it; what is finished when it stops the search is the answer
     * @throws OutOfReach where not even the least of the targets can be met
     */
    public static ExchangeCurve of(
            LightenProblem problem,
            LoadedTub tub,
            List<Double> asked,
            List<Lighten.Target> others,
            Lighten.Budget budget,
            Listener listener) {
        List<Point> points = new ArrayList<>();
        List<Double> falling = asked.stream().sorted(Comparator.reverseOrder()).toList();
        for (int k = 0; k < falling.size() && !listener.stop(); k++) {
            double target = falling.get(k);
            listener.point(k + 1, falling.size());
            List<Lighten.Target> targets = new ArrayList<>(List.of(new Lighten.Target(tub, target)));
            targets.addAll(others);
            try {
                points.add(new Point(target, Lighten.run(problem, targets, budget, listener)));
            } catch (OutOfReach beyond) {
                if (k == falling.size() - 1) {
                    throw beyond;
                }
            }
        }
        return monotone(points);
    }

    /**
     * Lets points learn from each other: a layup that meets a harder target meets the easier too, and what nothing beats
     * for an easier target nothing beats for a harder one.
     */
    private static ExchangeCurve monotone(List<Point> falling) {
        List<Point> points = new ArrayList<>();
        for (Point point : falling) {
            Lightened best = point.found;
            for (Point harder : falling) {
                if (harder.asked >= point.asked && harder.found.mass() < best.mass()) {
                    best = harder.found;
                }
            }
            double bound = point.found.bound();
            for (Point easier : falling) {
                if (easier.asked <= point.asked) {
                    bound = Math.max(bound, easier.found.bound());
                }
            }
            points.add(new Point(point.asked, best.withBound(bound)));
        }
        return new ExchangeCurve(points);
    }

    /** The curve read at a mass. */
    public Reading at(double mass) {
        Optional<Point> stiffest = points.stream()
                .filter(p -> p.found.mass() <= mass)
                .max(Comparator.comparingDouble(p -> p.reached().low()));
        double atMost = points.stream()
                .filter(p -> p.found.bound() > mass)
                .mapToDouble(Point::asked)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        return new Reading(mass, stiffest, atMost);
    }
}
