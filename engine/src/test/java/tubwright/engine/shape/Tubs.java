// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;
import java.util.OptionalDouble;

/** Shapes for tests: bodies with closed forms, and one that has what real tubs have. */
public final class Tubs {
    private Tubs() {}

    public static Frame frame(double x, double... yzr) {
        OutlineCorner[] corners = new OutlineCorner[yzr.length / 3];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = new OutlineCorner(yzr[3 * i], yzr[3 * i + 1], yzr[3 * i + 2]);
        }
        return new Frame(x, List.of(corners));
    }

    /** A circular section of radius r about the x axis. */
    public static Frame circle(double x, double r) {
        return frame(x, 0, -r, 0, r, -r, r, r, r, r, 0, r, 0);
    }

    /** A rectangle of half width w and half height h. */
    public static Frame box(double x, double w, double h) {
        return frame(x, 0, -h, 0, w, -h, 0, w, h, 0, 0, h, 0);
    }

    public static final List<String> THREE = List.of("floor", "flank", "deck");

    public static TubShape cylinder(double r, double length) {
        return TubShape.of(List.of(circle(0, r), circle(length, r)), THREE, Loft.SMOOTH, List.of(), List.of());
    }

    public static TubShape cone(double r0, double r1, double length) {
        return TubShape.of(List.of(circle(0, r0), circle(length, r1)), THREE, Loft.RULED, List.of(), List.of());
    }

    public static TubShape prism(double w, double h, double length, List<Opening> openings, List<Wall> walls) {
        return TubShape.of(List.of(box(0, w, h), box(length, w, h)), THREE, Loft.SMOOTH, openings, walls);
    }

    /** Two corners and a ridge: the half section is a triangle. */
    public static TubShape triangle(double w, double h, double length) {
        return TubShape.of(
                List.of(frame(0, 0, 0, 0, w, 0, 0, 0, h, 0), frame(length, 0, 0, 0, w, 0, 0, 0, h, 0)),
                List.of("floor", "flank"),
                Loft.RULED,
                List.of(),
                List.of());
    }

    public static final List<String> FIVE = List.of("floor", "chine", "flank", "shoulder", "deck");

    /** A single-seat tub: tapering nose, chines, raised scuttle, cockpit, bulkheads with leg hole, inclined seat back. */
    public static TubShape singleSeat() {
        List<Frame> frames = List.of(
                frame(0, 0, .16, 0, .09, .16, .02, .13, .20, .03, .13, .32, .03, .09, .36, .04, 0, .37, 0),
                frame(.45, 0, .10, 0, .14, .10, .02, .19, .16, .04, .19, .38, .04, .14, .44, .05, 0, .46, 0),
                frame(.95, 0, .06, 0, .19, .06, .02, .25, .13, .05, .26, .42, .05, .21, .53, .06, 0, .57, 0),
                frame(1.15, 0, .05, 0, .21, .05, .02, .27, .12, .05, .29, .42, .05, .25, .51, .06, 0, .53, 0),
                frame(1.75, 0, .05, 0, .22, .05, .02, .29, .12, .05, .31, .43, .05, .27, .53, .06, 0, .55, 0),
                frame(2.05, 0, .06, 0, .20, .06, .02, .26, .13, .05, .28, .46, .05, .22, .60, .06, 0, .63, 0));
        List<Opening> openings = List.of(
                new Opening(
                        "cockpit",
                        List.of("deck"),
                        View.PLAN,
                        Side.CENTRE,
                        Contour.rectangle(1.05, 1.72, -.20, .20, .09)),
                new Opening("access", List.of("flank"), View.SIDE, Side.BOTH, Contour.ellipse(.70, .27, .07, .05)));
        List<Wall> walls = List.of(
                Wall.Across.station(
                        "front bulkhead",
                        0,
                        List.of(new Wall.Hole("leg hole", Contour.rectangle(-.07, .07, .20, .32, .03)))),
                Wall.Across.station(
                        "dash", .95, List.of(new Wall.Hole("leg hole", Contour.rectangle(-.17, .17, .10, .40, .08)))),
                new Wall.Across("seat back", Wall.End.atSkin(1.55), Wall.End.atSkin(1.85), List.of()),
                Wall.Across.station("rear bulkhead", 2.05, List.of()),
                new Wall.Along(
                        "sill", .20, 1.0, 1.5, OptionalDouble.empty(), OptionalDouble.of(.3), Side.BOTH, List.of()));
        return TubShape.of(frames, FIVE, Loft.SMOOTH, openings, walls);
    }
}
