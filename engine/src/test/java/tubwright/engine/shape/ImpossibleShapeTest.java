// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What cannot be built is refused, with the thing at fault and what would be right. */
class ImpossibleShapeTest {
    private static ShapeException refused(List<Frame> frames, List<Opening> openings, List<Wall> walls) {
        List<String> strips = List.of("floor", "flank", "deck");
        return assertThrows(ShapeException.class, () -> TubShape.of(frames, strips, Loft.SMOOTH, openings, walls));
    }

    private static ShapeException inBox(Opening opening) {
        return refused(List.of(Tubs.box(0, .3, .25), Tubs.box(2, .3, .25)), List.of(opening), List.of());
    }

    private static ShapeException inBox(Wall wall) {
        return refused(List.of(Tubs.box(0, .3, .25), Tubs.box(2, .3, .25)), List.of(), List.of(wall));
    }

    private static void says(ShapeException e, String... parts) {
        for (String part : parts) {
            assertTrue(e.getMessage().contains(part), e.getMessage());
        }
    }

    @Test
    void aCrossedOutline() {
        Frame crossed = Tubs.frame(1, 0, -.25, 0, .3, .25, 0, .3, -.25, 0, 0, .25, 0);
        ShapeException e = refused(List.of(Tubs.box(0, .3, .25), crossed), List.of(), List.of());
        assertEquals(1, e.index());
        says(e, "frame 2", "crosses itself");
    }

    @Test
    void framesOutOfOrderOrInOnePlace() {
        ShapeException e = refused(
                List.of(Tubs.box(0, .3, .25), Tubs.box(2, .3, .25), Tubs.box(1, .3, .25)), List.of(), List.of());
        assertEquals(2, e.index());
        says(e, "frame 3 at x = 1000.0 mm", "comes before frame 2");
        says(refused(List.of(Tubs.box(1, .3, .25), Tubs.box(1, .3, .25)), List.of(), List.of()), "lies on frame 1");
    }

    @Test
    void aFilletThatDoesNotFit() {
        Frame tight = Tubs.frame(0, 0, -.25, 0, .3, -.25, .35, .3, .25, 0, 0, .25, 0);
        ShapeException e = refused(List.of(tight, Tubs.box(2, .3, .25)), List.of(), List.of());
        assertEquals(0, e.index());
        assertEquals(1, e.corner());
        says(e, "350.0 mm", "largest that fits there is 300.0 mm");
    }

    @Test
    void anOutlineTheWrongWayRound() {
        Frame turned = Tubs.frame(0, 0, .25, 0, .3, .25, 0, .3, -.25, 0, 0, -.25, 0);
        says(refused(List.of(turned, Tubs.box(1, .3, .25)), List.of(), List.of()), "wrong way round");
    }

    @Test
    void numbersThatAreNotFinite() {
        Frame bad = Tubs.frame(0, 0, -.25, 0, Double.NaN, -.25, 0, .3, .25, 0, 0, .25, 0);
        ShapeException e = refused(List.of(bad, Tubs.box(1, .3, .25)), List.of(), List.of());
        says(e, "corner 2 of frame 1", "not finite");
    }

    @Test
    void anEndCornerOffTheCentreline() {
        Frame bad = Tubs.frame(0, .01, -.25, 0, .3, -.25, 0, .3, .25, 0, 0, .25, 0);
        says(
                refused(List.of(bad, Tubs.box(1, .3, .25)), List.of(), List.of()),
                "must lie on the centreline",
                "10.0 mm");
    }

    @Test
    void anOpeningLargerThanItsStrip() {
        ShapeException e = inBox(new Opening(
                "cockpit", List.of("deck"), View.PLAN, Side.CENTRE, Contour.rectangle(.5, 1.5, -.35, .35, .05)));
        assertEquals(ShapeException.Subject.OPENING, e.subject());
        assertEquals("cockpit", e.name());
        says(e, "larger than its strip \"deck\"", "300.0 mm");
    }

    @Test
    void anOpeningThatLeavesTheTub() {
        says(
                inBox(new Opening("hatch", List.of("flank"), View.SIDE, Side.RIGHT, Contour.circle(1.95, 0, .1))),
                "leaves the tub",
                "2050.0 mm");
    }

    @Test
    void anOpeningOnAStripThatIsSeenEdgeOn() {
        says(
                inBox(new Opening("hatch", List.of("floor"), View.SIDE, Side.RIGHT, Contour.circle(1, -.25, .1))),
                "seen edge-on",
                "use the other view");
    }

    @Test
    void openingsThatOverlap() {
        Opening a = new Opening("a", List.of("flank"), View.SIDE, Side.BOTH, Contour.circle(1, 0, .1));
        Opening b = new Opening("b", List.of("flank"), View.SIDE, Side.LEFT, Contour.circle(1.1, 0, .1));
        ShapeException e = refused(List.of(Tubs.box(0, .3, .25), Tubs.box(2, .3, .25)), List.of(a, b), List.of());
        says(e, "\"b\" overlaps opening \"a\"");
    }

    @Test
    void aWallOutsideTheTub() {
        ShapeException e = inBox(Wall.Across.station("bulkhead", 2.4, List.of()));
        assertEquals(ShapeException.Subject.WALL, e.subject());
        says(e, "outside the tub", "2400.0 mm");
        says(inBox(new Wall.Across("shelf", Wall.End.at(.5, .4), Wall.End.at(1, .4), List.of())), "outside the tub");
        Wall sill =
                new Wall.Along("sill", .4, .5, 1, OptionalDouble.empty(), OptionalDouble.empty(), Side.BOTH, List.of());
        says(inBox(sill), "outside the tub");
        assertEquals(
                "seat",
                inBox(new Wall.Across("seat", Wall.End.at(.05, -.2), Wall.End.at(-.1, .1), List.of()))
                        .name());
    }

    @Test
    void aHoleThatLeavesItsWall() {
        ShapeException e = inBox(
                Wall.Across.station("bulkhead", 1, List.of(new Wall.Hole("leg hole", Contour.circle(.25, 0, .1)))));
        assertEquals(ShapeException.Subject.HOLE, e.subject());
        assertEquals("bulkhead/leg hole", e.name());
    }

    @Test
    void aSpotThatIsNotOnItsStrip() {
        TubShape tub = Tubs.prism(.3, .25, 2, List.of(), List.of());
        ShapeException e = assertThrows(ShapeException.class, () -> tub.onSkinAtHeight("flank", Side.RIGHT, 1, .3));
        says(e, "z = 300.0 mm is not on strip \"flank\"", "from -250.0 to 250.0 mm");
        Spot spot = tub.onSkinAtHeight("flank", Side.LEFT, 1, .1);
        assertEquals(-.3, spot.position()[1], 1e-12);
        assertEquals(-1, spot.normal()[1], 1e-12);
    }

    @Test
    void aContourWithARadiusThatDoesNotFitOrThatCrossesItself() {
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> Contour.rectangle(0, 1, 0, .1, .06));
        assertTrue(e.getMessage().contains("largest equal radius that fits is 50.0 mm"), e.getMessage());
        assertThrows(
                IllegalArgumentException.class,
                () -> Contour.polygon(List.of(
                        new Polygon.Vertex(0, 0, 0),
                        new Polygon.Vertex(1, 1, 0),
                        new Polygon.Vertex(1, 0, 0),
                        new Polygon.Vertex(0, 1.5, 0))));
    }
}
