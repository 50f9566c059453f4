// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Points found on surfaces and straight lines walked over them. */
class PointLocatorTest {
    private static final long SEED = 20261126;

    @Test
    void theNearestPointOfASphereLiesBelowTheOneAskedFor() {
        TriangleSurface sphere = Bodies.sphere(5);
        PointLocator locator = new PointLocator(sphere);
        Random random = new Random(SEED);
        double[] p = new double[3];
        for (int i = 0; i < 300; i++) {
            double[] d = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double far = 0.5 + random.nextDouble();
            double l = Space.length(d);
            PointLocator.Found found = locator.nearest(far * d[0] / l, far * d[1] / l, far * d[2] / l);
            assertEquals(Math.abs(far - 1), found.distance(), 2e-3, "seed " + SEED);
            sphere.position(
                    found.point().triangle(), found.point().x(), found.point().y(), p);
            assertEquals(1, Space.dot(p, d) / l / Space.length(p), 2e-3, "seed " + SEED);
        }
    }

    @Test
    void weightsOfAPointGiveThePointBack() {
        TriangleSurface cone = Bodies.cone(0.4, 2.5, 10, 0.3, 0.9, 5);
        SurfacePoint p = cone.at(17, 0.2, 0.5);
        double[] w = cone.weights(p);
        assertEquals(0.2, w[0], 1e-12);
        assertEquals(0.5, w[1], 1e-12);
    }

    /** Once round a unit sphere, straight on, leads back to where one began. */
    @Test
    void aStraightLineRoundASphereClosesAfterTwoPi() {
        TriangleSurface sphere = Bodies.sphere(6);
        SurfacePoint start = new PointLocator(sphere).nearest(0.3, -0.5, 0.8).point();
        double[] from = new double[3];
        double[] to = new double[3];
        sphere.position(start.triangle(), start.x(), start.y(), from);
        Walker walker = new Walker(sphere);
        walker.stand(start.triangle(), start.x(), start.y(), 1.1);
        assertTrue(walker.walk(2 * Math.PI));
        sphere.position(walker.triangle, walker.x, walker.y, to);
        for (int i = 0; i < 3; i++) {
            assertEquals(from[i], to[i], 0.03);
        }
    }

    @Test
    void aWalkEndsAtTheRim() {
        TriangleSurface tube = Bodies.cylinder(0.2, 2.5, 20, 0.5, 8);
        SurfacePoint start = new PointLocator(tube)
                .nearest(0.2 * Math.cos(1), 0.2 * Math.sin(1), 0.1)
                .point();
        Walker walker = new Walker(tube);
        walker.stand(start.triangle(), start.x(), start.y(), tube.angle(start.triangle(), new double[] {0, 0, 1}));
        assertFalse(walker.walk(1));
        assertEquals(0.4, walker.walked, 2e-3);
    }

    @Test
    void anEdgeOfThreeTrianglesAndATriangleWithoutAreaAreRefused() {
        double[] points = {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 1};
        assertThrows(
                IllegalArgumentException.class,
                () -> TriangleSurface.of(points, new int[] {0, 1, 2, 1, 0, 3, 0, 1, 4}));
        assertThrows(IllegalArgumentException.class, () -> TriangleSurface.of(points, new int[] {0, 1, 1}));
    }

    /** The sphere's faces inward of it are spheres; a depth beyond its centre is held short of it. */
    @Test
    void facesInwardOfASphereAreSpheres() {
        TriangleSurface sphere = Bodies.sphere(4);
        MeshSurface surface =
                new MeshSurface(sphere, new int[0], new int[0], sphere.points().clone());
        double[] depth = new double[sphere.pointCount()];
        for (double d : new double[] {0.1, 0.5, 1.5}) {
            java.util.Arrays.fill(depth, d);
            double[] moved = surface.inward(depth).points();
            for (int p = 0; p < moved.length; p += 3) {
                double r = Math.sqrt(moved[p] * moved[p] + moved[p + 1] * moved[p + 1] + moved[p + 2] * moved[p + 2]);
                assertEquals(Math.max(1 - d, 0.25), r, 1e-9);
            }
        }
    }
}
