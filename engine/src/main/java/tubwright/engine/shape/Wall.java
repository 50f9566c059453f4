// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A flat panel inside the tub: bulkhead, dash, seat back, sill wall, tunnel wall. Its outer edge is the section of the
 * skin by its plane, cut off where the wall is limited.
 */
public sealed interface Wall {
    /** Unique among walls. */
    String name();

    /** Holes cut through it. */
    List<Hole> holes();

    /** The view in which the contours of its holes are drawn. */
    View holeView();

    /**
     * A hole in a wall, drawn in {@link Wall#holeView()}: leg hole, access hole, lightening hole.
     *
     * @param name unique in its wall
     * @param contour closed contour, m
     */
    record Hole(String name, Contour contour) {}

    /**
     * One end of a wall as seen from the side.
     *
     * @param x station, m
     * @param z height at which the wall stops, m; empty where it runs on to the skin
     */
    record End(double x, OptionalDouble z) {
        /** An end at the skin. */
        public static End atSkin(double x) {
            return new End(x, OptionalDouble.empty());
        }

        /** An end short of the skin, at a height. */
        public static End at(double x, double z) {
            return new End(x, OptionalDouble.of(z));
        }
    }

    /**
     * A wall across the car: its plane contains the y direction. Seen from the side it runs from {@code low} to
     * {@code high}; an end without height lies on the skin at the centreline: the floor for {@code low}, the deck for
     * {@code high}. Its normal points forward (up for a level shelf given from front to rear). Holes are drawn in front
     * view (u = y, v = z), or in plan view (u = x, v = y) when the wall lies flatter than 45 degrees.
     */
    record Across(String name, End low, End high, List<Hole> holes) implements Wall {
        public Across {
            holes = List.copyOf(holes);
        }

        /** A bulkhead at a station: floor to deck, vertical. */
        public static Across station(String name, double x, List<Hole> holes) {
            return new Across(name, End.atSkin(x), End.atSkin(x), holes);
        }

        @Override
        public View holeView() {
            boolean flat = low.z().isPresent()
                    && high.z().isPresent()
                    && Math.abs(high.z().getAsDouble() - low.z().getAsDouble()) < Math.abs(high.x() - low.x());
            return flat ? View.PLAN : View.FRONT;
        }
    }

    /**
     * A wall along the car in the plane y = const: sill wall, tunnel wall. Its normal points outboard (to the right on
     * the centreline). Holes are drawn in side view (u = x, v = z).
     *
     * @param y distance from the centreline, m; not negative
     * @param fromX front end, m
     * @param toX rear end, m
     * @param bottom height at which it stops below, m; empty where it runs on to the skin
     * @param top height at which it stops above, m; empty where it runs on to the skin
     * @param side CENTRE needs y = 0; BOTH makes a wall on each side
     */
    record Along(
            String name,
            double y,
            double fromX,
            double toX,
            OptionalDouble bottom,
            OptionalDouble top,
            Side side,
            List<Hole> holes)
            implements Wall {
        public Along {
            holes = List.copyOf(holes);
        }

        @Override
        public View holeView() {
            return View.SIDE;
        }
    }
}
