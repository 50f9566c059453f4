// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Areas, lengths and volumes against the closed forms of elementary solid geometry. */
class ClosedFormTest {
    @Test
    void aCylinderHasTheAreaAndVolumeOfACylinder() {
        TubShape tub = Tubs.cylinder(0.3, 2);
        assertEquals(2 * Math.PI * 0.3 * 2, tub.skinArea(), 1e-12);
        assertEquals(Math.PI * 0.09 * 2, tub.volume(0, 2), 1e-12);
        assertEquals(2 * Math.PI * 0.3, tub.section(1).perimeter(), 1e-13);
    }

    @Test
    void aConeHasTheAreaAndVolumeOfACone() {
        double r0 = 0.1;
        double r1 = 0.4;
        double l = 1.5;
        TubShape tub = Tubs.cone(r0, r1, l);
        assertEquals(Math.PI * (r0 + r1) * Math.hypot(l, r1 - r0), tub.skinArea(), 1e-12);
        assertEquals(Math.PI * l / 3 * (r0 * r0 + r0 * r1 + r1 * r1), tub.volume(0, l), 1e-12);
    }

    @Test
    void aTriangularPrismHasPlaneFaces() {
        TubShape tub = Tubs.triangle(0.3, 0.4, 2);
        assertEquals(2 * (0.3 + 0.5) * 2, tub.skinArea(), 1e-12);
        assertEquals(0.3 * 0.4 * 2, tub.volume(0, 2), 1e-12);
        assertEquals(0.5 * 2, tub.stripArea(1, 0, 2), 1e-12);
    }

    @Test
    void aCircularOpeningInAFlatFlankTakesACircleAway() {
        Opening hole = new Opening("hole", List.of("flank"), View.SIDE, Side.RIGHT, Contour.circle(1, 0.05, 0.1));
        TubShape tub = Tubs.prism(0.3, 0.25, 2, List.of(hole), List.of());
        assertEquals(Math.PI * 0.01, tub.openingArea("hole"), 1e-7);
    }

    @Test
    void aRoundedRectangleAcrossTheCentrelineTakesItsAreaAway() {
        Opening cockpit = new Opening(
                "cockpit", List.of("deck"), View.PLAN, Side.CENTRE, Contour.rectangle(0.6, 1.4, -0.2, 0.2, 0.08));
        TubShape tub = Tubs.prism(0.3, 0.25, 2, List.of(cockpit), List.of());
        double area = 0.8 * 0.4 - (4 - Math.PI) * 0.0064;
        assertEquals(area, cockpit.contour().area(), 1e-13);
        assertEquals(area, tub.openingArea("cockpit"), 1e-5 * area);
    }

    @Test
    void anInclinedWallInAPrismIsALongerRectangle() {
        Wall wall = new Wall.Across("seat back", Wall.End.atSkin(0.8), Wall.End.atSkin(1.1), List.of());
        TubShape tub = Tubs.prism(0.3, 0.25, 2, List.of(), List.of(wall));
        assertEquals(0.6 * Math.hypot(0.5, 0.3), tub.placedWalls().getFirst().area(), 1e-6);
    }

    @Test
    void anInclinedWallInACylinderIsAnEllipse() {
        double r = 0.3;
        Wall wall = new Wall.Across("slant", Wall.End.atSkin(0.8), Wall.End.atSkin(1.2), List.of());
        TubShape tub = TubShape.of(
                List.of(Tubs.circle(0, r), Tubs.circle(2, r)), Tubs.THREE, Loft.SMOOTH, List.of(), List.of(wall));
        assertEquals(
                Math.PI * r * Math.hypot(0.3, 0.2), tub.placedWalls().getFirst().area(), 2e-6);
    }

    @Test
    void theSingleSeatTubIsAccepted() {
        TubShape tub = Tubs.singleSeat();
        assertEquals(6, tub.placedWalls().size());
    }
}
