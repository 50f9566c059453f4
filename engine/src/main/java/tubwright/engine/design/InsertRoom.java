// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Locale;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Named;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.Spot;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.View;
import tubwright.engine.shape.Wall;

/**
 * Refuses inserts that reach over an edge: of an opening, a hole, a wall, or the end of the tub. Distances seen in a drawing
 * are foreshortened on a sloping skin; they are judged by the least true distance they may stand for, so that no insert that
 * fits is refused. One that fits but stands near an edge loses strength in its reserve factor.
 */
final class InsertRoom {
    private InsertRoom() {}

    static void check(TubShape shape, Named<HardpointText> named, Spot spot, double radius) {
        double[] p = spot.position();
        double[] n = spot.normal();
        if (spot.onWall()) {
            onWall(shape, named, spot, radius);
            return;
        }
        double slope = Math.sqrt(Math.max(0, 1 - n[0] * n[0]));
        refuse(named, "the front end of the tub", p[0] - shape.front(), radius, slope);
        refuse(named, "the rear end of the tub", shape.rear() - p[0], radius, slope);
        for (Opening opening : shape.openings()) {
            boolean mirrored = opening.side() != Side.CENTRE && spot.left();
            double v = opening.view().v(p[0], mirrored ? -p[1] : p[1], p[2]);
            if (opening.strips().contains(named.value().on().text())
                    && opening.side().covers(spot.left())) {
                double flat = Math.abs(opening.view() == View.PLAN ? n[2] : n[1]);
                refuse(
                        named,
                        "the opening \"" + opening.name() + "\"",
                        opening.contour().distance(p[0], v),
                        radius,
                        flat);
            }
        }
    }

    /** What is bonded to the skin may not reach beyond the footprint, over which the load is taken to enter. */
    static void checkFlange(Named<HardpointText> named, InsertText insert) {
        double footprint = named.value().footprint().si();
        insert.flange().filter(f -> f.si() > footprint * (1 + 1e-9)).ifPresent(f -> {
            throw new DesignError(
                    f.place(),
                    String.format(
                            Locale.ROOT,
                            "hardpoint \"%s\": its flange of %s reaches beyond its footprint of %.0f mm",
                            named.name(),
                            f.text(),
                            footprint * 1e3),
                    "the footprint is all that presses on the skin or is bonded to it: make it as large as the flange");
        });
    }

    private static void onWall(TubShape shape, Named<HardpointText> named, Spot spot, double radius) {
        double[] p = spot.position();
        for (PlacedWall placed : shape.placedWalls()) {
            Wall wall = placed.wall();
            boolean twin = !placed.across() && placed.left() != spot.left();
            if (!wall.name().equals(named.value().on().text()) || twin) {
                continue;
            }
            double u = wall.holeView().u(p[0], p[1], p[2]);
            double v = wall.holeView().v(p[0], p[1], p[2]);
            double flat = 1 / placed.areaPerViewArea();
            for (Wall.Hole hole : wall.holes()) {
                refuse(named, "the hole \"" + hole.name() + "\"", hole.contour().distance(u, v), radius, flat);
            }
            double[] at = placed.fromView(u, v);
            // The wall's own edge is known as a level set that is a distance only close by: half of it is asked for.
            refuse(named, "the wall", -placed.edgeDistance(at[0], at[1]), radius, 0.5);
        }
    }

    private static void refuse(
            Named<HardpointText> named, String what, double distance, double radius, double foreshortening) {
        if (distance >= radius * foreshortening) {
            return;
        }
        throw new DesignError(
                named.name().place(),
                String.format(
                        Locale.ROOT,
                        "hardpoint \"%s\": its insert reaches over the edge of %s, %.0f mm from its middle; its radius is %.0f mm",
                        named.name(),
                        what,
                        Math.max(0, distance) * 1e3,
                        radius * 1e3),
                "move it away from the edge, or give it a smaller footprint");
    }
}
