// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Tubs;

/** A tub with all that real ones have: nose, chines, scuttle, cockpit, holes, inclined wall, pieces, zones, patches. */
class SingleSeatMeshTest {
    private static final TubShape TUB = Tubs.singleSeat();

    private static SurfaceLayout layout() {
        return new SurfaceLayout(
                List.of(new SurfaceLayout.Zone(
                        "nose",
                        List.of(new SurfaceLayout.OnStrips(Tubs.FIVE, Double.NEGATIVE_INFINITY, 0.3, Side.BOTH)))),
                List.of(
                        new SurfaceLayout.Patch(
                                "rim",
                                List.of(SurfaceLayout.OnStrips.whole(List.of("deck", "shoulder"))),
                                new SurfaceLayout.AroundOpening("cockpit", 0.04)),
                        new SurfaceLayout.Patch(
                                "pad R",
                                List.of(SurfaceLayout.OnStrips.whole(List.of("flank"))),
                                new SurfaceLayout.AroundPoint(new double[] {0.45, 0.19, 0.3}, 0.05))),
                List.of(
                        new SurfaceLayout.Piece(
                                "lower shell",
                                List.of(SurfaceLayout.OnStrips.whole(List.of("floor", "chine", "flank")))),
                        new SurfaceLayout.Piece(
                                "upper shell", List.of(SurfaceLayout.OnStrips.whole(List.of("shoulder", "deck"))))));
    }

    @Test
    void theMeshIsSoundAndSymmetric() {
        for (double size : new double[] {0.05, 0.02}) {
            Mesh mesh = Mesher.mesh(TUB, SurfaceLayout.plain(), MeshSettings.of(size));
            MeshChecks.assertSound(mesh, 15, "size " + size);
            MeshChecks.assertSymmetric(mesh, "size " + size);
        }
        Mesh mesh = Mesher.mesh(TUB, layout(), MeshSettings.of(0.02));
        MeshChecks.assertSound(mesh, 12, "with pieces");
        MeshChecks.assertSymmetric(mesh, "with pieces");
    }

    @Test
    void theSameInputGivesTheSameMesh() {
        Mesh a = Mesher.mesh(TUB, layout(), MeshSettings.of(0.03));
        Mesh b = Mesher.mesh(TUB, layout(), MeshSettings.of(0.03));
        assertArrayEquals(a.nodes(), b.nodes());
        assertArrayEquals(a.elementNodes(), b.elementNodes());
        assertEquals(a.regions(), b.regions());
    }

    @Test
    void areasOfSkinAndWallsConvergeWithTheSquareOfTheSize() {
        double exact = TUB.skinArea() - TUB.openingArea("cockpit") - TUB.openingArea("access");
        double[] error = new double[2];
        double wall = TUB.placedWalls().stream().mapToDouble(PlacedWall::area).sum();
        double[] wallError = new double[2];
        for (int i = 0; i < 2; i++) {
            Mesh mesh = Mesher.mesh(
                    TUB, SurfaceLayout.plain(), MeshSettings.of(0.03).refined(1 << i));
            error[i] =
                    Math.abs(MeshChecks.area(mesh, e -> mesh.region(e).surface() == Region.Surface.SKIN) / exact - 1);
            wallError[i] =
                    Math.abs(MeshChecks.area(mesh, e -> mesh.region(e).surface() == Region.Surface.WALL) / wall - 1);
        }
        assertTrue(error[0] < 2e-3, "relative error " + error[0]);
        assertTrue(error[1] < error[0] / 2.8, error[0] + " then " + error[1]);
        assertTrue(wallError[0] < 5e-3, "relative error " + wallError[0]);
        assertTrue(wallError[1] < wallError[0] / 2.5, wallError[0] + " then " + wallError[1]);
    }

    @Test
    void piecesHaveTheirOwnNodesAlongTheSeam() {
        Mesh mesh = Mesher.mesh(TUB, layout(), MeshSettings.of(0.03));
        MeshLine seam = mesh.lines().stream()
                .filter(l -> l.kind() == MeshLine.Kind.SEAM)
                .findFirst()
                .orElseThrow();
        assertEquals("lower shell / upper shell", seam.name());
        assertEquals(2, seam.chains().size());
        boolean[] lower = new boolean[mesh.nodeCount()];
        boolean[] upper = new boolean[mesh.nodeCount()];
        for (int e = 0; e < mesh.elementCount(); e++) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                int n = mesh.elementNodes()[4 * e + i];
                lower[n] |= mesh.region(e).piece().equals("lower shell");
                upper[n] |= mesh.region(e).piece().equals("upper shell");
            }
        }
        for (int n = 0; n < mesh.nodeCount(); n++) {
            assertTrue(!(lower[n] && upper[n]));
        }
        seam.chains().forEach(chain -> {
            for (int n : chain) {
                assertTrue(lower[n]);
            }
        });
    }

    @Test
    void wallEdgesLieOnTheSkin() {
        Mesh mesh = Mesher.mesh(TUB, SurfaceLayout.plain(), MeshSettings.of(0.03));
        MeshLine edge = mesh.lines().stream()
                .filter(l -> l.name().equals("seat back edge"))
                .findFirst()
                .orElseThrow();
        assertEquals(1, edge.chains().size());
        for (int n : edge.chains().getFirst()) {
            assertEquals(0, TUB.distance(mesh.nodes()[3 * n], mesh.nodes()[3 * n + 1], mesh.nodes()[3 * n + 2]), 1e-9);
        }
    }

    @Test
    void zonesAndPatchesCoverWhatTheySay() {
        Mesh mesh = Mesher.mesh(TUB, layout(), MeshSettings.of(0.02));
        double nose = 0;
        for (int k = 0; k < 5; k++) {
            nose += 2 * TUB.stripArea(k, 0, 0.3);
        }
        assertEquals(nose, MeshChecks.area(mesh, e -> mesh.region(e).zone().equals("nose")), 2e-3 * nose);
        double pad = MeshChecks.area(mesh, e -> mesh.region(e).patches().contains("pad R"));
        // A ball of 50 mm about a point on a nearly flat flank marks off about a circle.
        assertEquals(Math.PI * 0.0025, pad, 0.05 * Math.PI * 0.0025);
        for (int e = 0; e < mesh.elementCount(); e++) {
            Region r = mesh.region(e);
            assertTrue(!r.patches().contains("pad R") || !r.mirrored());
        }
    }
}
