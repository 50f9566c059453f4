// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.shape.Contour;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Tubs;
import tubwright.engine.shape.View;
import tubwright.engine.shape.Wall;

/** Meshes of bodies whose areas are closed forms of elementary geometry. */
class ElementaryBodiesMeshTest {
    private static Mesh mesh(TubShape tub, double size) {
        Mesh mesh = Mesher.mesh(tub, SurfaceLayout.plain(), MeshSettings.of(size));
        MeshChecks.assertSound(mesh, 15, "size " + size);
        return mesh;
    }

    private static double skin(Mesh mesh) {
        return MeshChecks.area(mesh, e -> mesh.region(e).surface() == Region.Surface.SKIN);
    }

    @Test
    void aPrismIsMeshedExactly() {
        assertEquals(4 * (0.3 + 0.25) * 2, skin(mesh(Tubs.prism(0.3, 0.25, 2, List.of(), List.of()), 0.04)), 1e-12);
        assertEquals(2 * (0.3 + 0.5) * 2, skin(mesh(Tubs.triangle(0.3, 0.4, 2), 0.04)), 1e-12);
    }

    @Test
    void aCylinderConvergesWithTheSquareOfTheSize() {
        double exact = 2 * Math.PI * 0.3 * 2;
        double coarse = 1 - skin(mesh(Tubs.cylinder(0.3, 2), 0.04)) / exact;
        double fine = 1 - skin(mesh(Tubs.cylinder(0.3, 2), 0.02)) / exact;
        // A regular polygon of n sides in a circle is short by (π/n)²/6.
        assertTrue(coarse > 0 && coarse < 1.2e-3, "" + coarse);
        assertEquals(4, coarse / fine, 0.3);
    }

    @Test
    void aConeConvergesWithTheSquareOfTheSize() {
        double exact = Math.PI * (0.1 + 0.4) * Math.hypot(1.5, 0.3);
        TubShape cone = Tubs.cone(0.1, 0.4, 1.5);
        double coarse = 1 - skin(mesh(cone, 0.04)) / exact;
        double fine = 1 - skin(mesh(cone, 0.02)) / exact;
        assertTrue(coarse > 0 && coarse < 2e-3, "" + coarse);
        assertEquals(4, coarse / fine, 0.4);
    }

    @Test
    void aCircleCutOutOfAFlatFlankIsAPolygonInIt() {
        Opening hole = new Opening("hole", List.of("flank"), View.SIDE, Side.RIGHT, Contour.circle(1, 0.05, 0.1));
        TubShape tub = Tubs.prism(0.3, 0.25, 2, List.of(hole), List.of());
        double whole = 4 * (0.3 + 0.25) * 2;
        double coarse = whole - skin(mesh(tub, 0.04)) - Math.PI * 0.01;
        double fine = whole - skin(mesh(tub, 0.02)) - Math.PI * 0.01;
        assertTrue(coarse < 0 && coarse > -0.02 * Math.PI * 0.01, "" + coarse);
        assertTrue(fine < 0 && fine > coarse / 2.5, coarse + " then " + fine);
    }

    @Test
    void aRectangularOpeningWithSharpCornersIsCutExactlyWhateverTheGrid() {
        Opening hole = new Opening(
                "hole", List.of("flank"), View.SIDE, Side.BOTH, Contour.rectangle(0.613, 0.981, -0.117, 0.139, 0));
        TubShape tub = Tubs.prism(0.3, 0.25, 2, List.of(hole), List.of());
        double exact = 4 * (0.3 + 0.25) * 2 - 2 * 0.368 * 0.256;
        assertEquals(exact, skin(mesh(tub, 0.04)), 1e-9);
        assertEquals(exact, skin(mesh(tub, 0.027)), 1e-9);
    }

    @Test
    void anOpeningMayCrossACornerLineAndAZoneBoundary() {
        Opening hole = new Opening(
                "hole",
                List.of("floor", "flank", "deck"),
                View.SIDE,
                Side.RIGHT,
                Contour.rectangle(0.7, 1.1, -0.1, 0.1, 0.03));
        TubShape tub = TubShape.of(
                // A keel and a ridge, sharp; the opening goes over both fillets of the flank.
                List.of(
                        Tubs.frame(0, 0, -.3, 0, .3, -.05, .02, .32, .05, .02, 0, .3, 0),
                        Tubs.frame(2, 0, -.3, 0, .3, -.05, .02, .32, .05, .02, 0, .3, 0)),
                Tubs.THREE,
                tubwright.engine.shape.Loft.RULED,
                List.of(hole),
                List.of());
        SurfaceLayout layout = new SurfaceLayout(
                List.of(new SurfaceLayout.Zone(
                        "front",
                        List.of(new SurfaceLayout.OnStrips(Tubs.THREE, Double.NEGATIVE_INFINITY, 0.9, Side.BOTH)))),
                List.of(),
                List.of(new SurfaceLayout.Piece("upper", List.of(SurfaceLayout.OnStrips.whole(List.of("deck"))))));
        Mesh mesh = Mesher.mesh(tub, layout, MeshSettings.of(0.03));
        MeshChecks.assertSound(mesh, 10, "hole over two corners");
        TubShape closed = TubShape.of(tub.frames(), tub.strips(), tub.loft(), List.of(), List.of());
        double taken = skin(Mesher.mesh(closed, layout, MeshSettings.of(0.03))) - skin(mesh);
        assertEquals(tub.openingArea("hole"), taken, 0.01 * taken);
    }

    @Test
    void aBoxBulkheadWithACircularHoleHasTheAreaLeft() {
        Wall wall = Wall.Across.station(
                "bulkhead", 1, List.of(new Wall.Hole("leg hole", Contour.circle(0.05, 0.02, 0.12))));
        TubShape tub = Tubs.prism(0.3, 0.25, 2, List.of(), List.of(wall));
        Mesh mesh = mesh(tub, 0.03);
        double area = MeshChecks.area(mesh, e -> mesh.region(e).surface() == Region.Surface.WALL);
        double exact = 0.6 * 0.5 - Math.PI * 0.0144;
        assertEquals(exact, tub.placedWalls().getFirst().area(), 1e-6);
        assertTrue(area > exact && area < exact + 0.01 * Math.PI * 0.0144, area + " of " + exact);
    }

    /** Its outline runs along the lines of the wall's own grid, whatever the size: nothing is cut, and nothing may slip off. */
    @Test
    void aBoxBulkheadKeepsItsWholeEdgeBesideWhatIsRefined() {
        Wall wall = Wall.Across.station("front", 0, List.of());
        TubShape tub = Tubs.prism(0.2, 0.15, 0.9, List.of(), List.of(wall));
        for (int size = 200; size >= 40; size -= 10) {
            MeshSettings plain = MeshSettings.of(size / 1000.0);
            Mesh mesh = Mesher.mesh(
                    tub,
                    SurfaceLayout.plain(),
                    new MeshSettings(
                            plain.size(),
                            plain.cellTurn(),
                            plain.coarsening(),
                            List.of(new MeshSettings.Spot(0, 0.08, 0, 0.02))));
            String at = size + " mm";
            assertEquals(
                    0.4 * 0.3, MeshChecks.area(mesh, e -> mesh.region(e).surface() == Region.Surface.WALL), 1e-12, at);
            MeshLine edge = mesh.lines().stream()
                    .filter(l -> l.name().equals("front edge"))
                    .findFirst()
                    .orElseThrow();
            double length = 0;
            for (int[] chain : edge.chains()) {
                for (int i = 1; i < chain.length; i++) {
                    double[] xyz = mesh.nodes();
                    length += Math.hypot(
                            xyz[3 * chain[i] + 1] - xyz[3 * chain[i - 1] + 1],
                            xyz[3 * chain[i] + 2] - xyz[3 * chain[i - 1] + 2]);
                }
            }
            assertEquals(2 * (0.4 + 0.3), length, 1e-9, at);
        }
    }

    @Test
    void theQualityReportHoldsAreasAgainstTheExactOnes() {
        TubShape tub = Tubs.singleSeat();
        Mesh mesh = Mesher.mesh(tub, SurfaceLayout.plain(), MeshSettings.of(0.02));
        MeshQuality quality = MeshQuality.of(mesh, tub);
        assertEquals(mesh.elementCount(), quality.quads() + quality.triangles());
        assertTrue(quality.quads() > 20 * quality.triangles(), quality.toString());
        assertEquals(10, quality.areas().size());
        for (MeshQuality.PartArea area : quality.areas()) {
            assertTrue(Math.abs(area.errorPercent()) < 0.8, area.toString());
        }
        assertTrue(
                quality.corner().least() > 15,
                "least corner " + quality.corner().least());
        assertTrue(quality.warp().mean() < 2, "mean warp " + quality.warp().mean());
        assertTrue(
                quality.aspect().mean() < 2.5, "mean aspect " + quality.aspect().mean());
    }
}
