// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.View;

/**
 * What has to go into a tub.
 *
 * @param driver if one is asked for
 * @param tank if one is asked for
 * @param kept volumes kept free: pedals, steering column, belts
 * @param room least distance wanted to the inner skin, m
 */
public record Cabin(Optional<Driver> driver, Optional<Tank> tank, List<Solid> kept, double room) {
    /** Nothing asked for. */
    public static final Cabin NONE = new Cabin(Optional.empty(), Optional.empty(), List.of(), 0);

    public Cabin {
        kept = List.copyOf(kept);
    }

    /** Whether nothing is asked for. */
    public boolean isEmpty() {
        return driver.isEmpty() && tank.isEmpty() && kept.isEmpty();
    }

    /**
     * Where something comes nearest to the inner skin.
     *
     * @param what its name
     * @param distance m; negative where it sticks through
     * @param at x, y, z of that point of it, m
     */
    public record Nearest(String what, double distance, double[] at) {}

    /**
     * Something in the way of something else.
     *
     * @param one name
     * @param other name
     */
    public record Clash(String one, String other) {}

    /**
     * What was found.
     *
     * @param nearest one a solid, the tightest first
     * @param clashes kept volumes that stick into the driver or each other
     * @param tankRoom m³; 0 without a tank
     */
    public record Fit(List<Nearest> nearest, List<Clash> clashes, double tankRoom) {
        public Fit {
            nearest = List.copyOf(nearest);
            clashes = List.copyOf(clashes);
        }
    }

    /**
     * Holds everything against the shape. Where an opening cuts the skin above something, that skin is not there: points
     * that lie below an opening seen from above, in the upper half of the tub, are not held against it.
     *
     * @param skin thickness of the skin at a station, m
     */
    public Fit in(TubShape shape, DoubleUnaryOperator skin) {
        List<Solid> all = new ArrayList<>();
        driver.ifPresent(d -> all.addAll(d.limbs()));
        all.addAll(kept);
        List<Nearest> nearest = new ArrayList<>();
        for (Solid solid : all) {
            Nearest least = new Nearest(solid.name(), Double.POSITIVE_INFINITY, solid.from());
            for (double[] p : solid.surface()) {
                double distance = distance(shape, skin, p);
                if (distance < least.distance) {
                    least = new Nearest(solid.name(), distance, p);
                }
            }
            nearest.add(least);
        }
        nearest.sort(java.util.Comparator.comparingDouble(Nearest::distance));
        return new Fit(nearest, clashes(all), tank.map(t -> t.room(shape, skin)).orElse(0.0));
    }

    /** The limbs of one driver overlap by their nature and are not held against each other. */
    private List<Clash> clashes(List<Solid> all) {
        List<Clash> clashes = new ArrayList<>();
        int limbs = all.size() - kept.size();
        for (int i = limbs; i < all.size(); i++) {
            for (int j = 0; j < i; j++) {
                Solid one = all.get(i);
                Solid other = all.get(j);
                if (one.surface().stream().anyMatch(other::holds)
                        || other.surface().stream().anyMatch(one::holds)) {
                    clashes.add(new Clash(one.name(), other.name()));
                }
            }
        }
        return clashes;
    }

    private static double distance(TubShape shape, DoubleUnaryOperator skin, double[] p) {
        if (p[0] < shape.front() || p[0] > shape.rear()) {
            return Math.min(p[0] - shape.front(), shape.rear() - p[0]);
        }
        var section = shape.section(p[0]);
        if (p[2] > (section.bottom() + section.top()) / 2 && belowOpening(shape, p)) {
            return Double.POSITIVE_INFINITY;
        }
        return -section.distance(p[1], p[2]) - skin.applyAsDouble(p[0]);
    }

    private static boolean belowOpening(TubShape shape, double[] p) {
        for (Opening opening : shape.openings()) {
            if (opening.view() == View.PLAN && opening.contour().distance(p[0], p[1]) < 0) {
                return true;
            }
        }
        return false;
    }
}
