// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;

class SurfaceLocatorTest {
    private static final Mesh TUBE = TestMeshes.tube(0.3, 1.5, 20, 24);

    @Test
    void aPointOffTheTubeLandsRadiallyBelowItself() {
        SurfaceLocator locator = new SurfaceLocator(TUBE, e -> true);
        long seed = 20260711;
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            double angle = 2 * Math.PI * random.nextDouble();
            double x = 1.5 * random.nextDouble();
            double[] p = {x, 0.31 * Math.cos(angle), 0.31 * Math.sin(angle)};
            SurfaceLocator.Spot spot = locator.closest(p, 0.1).orElseThrow();
            double[] q = spot.point();
            // Facets of a 24-gon lie between R cos(π/24) and R from the axis.
            double radius = Math.hypot(q[1], q[2]);
            assertTrue(radius <= 0.3 + 1e-12 && radius >= 0.3 * Math.cos(Math.PI / 24) - 1e-12, "seed " + seed);
            assertEquals(x, q[0], 1e-9, "seed " + seed);
            double sum = 0;
            for (double w : spot.weights()) {
                sum += w;
                assertTrue(w >= -1e-12, "weights stay inside the element, seed " + seed);
            }
            assertEquals(1, sum, 1e-12);
        }
    }

    @Test
    void noOtherElementIsCloserThanTheOneFound() {
        SurfaceLocator locator = new SurfaceLocator(TUBE, e -> true);
        long seed = 42;
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            double[] p = {2 * random.nextDouble() - 0.2, random.nextDouble() - 0.5, random.nextDouble() - 0.5};
            double found = locator.closest(p, 1).orElseThrow().distance();
            double least = Double.POSITIVE_INFINITY;
            for (int e = 0; e < TUBE.elementCount(); e++) {
                int only = e;
                least = Math.min(
                        least,
                        new SurfaceLocator(TUBE, candidate -> candidate == only)
                                .closest(p, 2)
                                .orElseThrow()
                                .distance());
            }
            assertEquals(least, found, 1e-9, "seed " + seed + " point " + i);
        }
    }

    @Test
    void nothingIsFoundBeyondReach() {
        SurfaceLocator locator = new SurfaceLocator(TUBE, e -> true);
        assertTrue(locator.closest(new double[] {0.7, 0, 0.36}, 0.05).isEmpty());
    }
}
