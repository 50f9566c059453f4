// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Contours against plane geometry: distances against the nearest of many points, areas against closed forms. */
class ContourTest {
    private static final List<Contour> SOME = List.of(
            Contour.circle(.1, .2, .3),
            Contour.ellipse(-.1, .1, .4, .15),
            Contour.ellipse(.3, .1, .1, .25),
            Contour.rectangle(-.3, .5, -.2, .1, .07),
            Contour.slot(-.2, 0, .3, .2, .15),
            Contour.polygon(List.of(
                    new Polygon.Vertex(0, 0, .02),
                    new Polygon.Vertex(.5, 0, 0),
                    new Polygon.Vertex(.2, .15, .05),
                    new Polygon.Vertex(.5, .4, .03),
                    new Polygon.Vertex(0, .4, 0))));

    @Test
    void distancesAgreeWithTheNearestOfManyPoints() {
        Random random = new Random(3);
        for (Contour c : SOME) {
            double[] points = c.points(2e-4);
            for (int i = 0; i < 200; i++) {
                double u = random.nextDouble(-.6, .8);
                double v = random.nextDouble(-.5, .7);
                double nearest = Double.POSITIVE_INFINITY;
                int winding = 0;
                for (int k = 0; k < points.length; k += 2) {
                    int n = (k + 2) % points.length;
                    nearest = Math.min(nearest, Math.hypot(points[k] - u, points[k + 1] - v));
                    if (points[k + 1] > v != points[n + 1] > v) {
                        double at = points[k]
                                + (v - points[k + 1]) / (points[n + 1] - points[k + 1]) * (points[n] - points[k]);
                        winding += u < at ? 1 : 0;
                    }
                }
                double expected = winding % 2 == 1 ? -nearest : nearest;
                assertEquals(expected, c.distance(u, v), 2e-4, c + " at " + u + ", " + v);
            }
        }
    }

    @Test
    void areasAndPerimetersAreThoseOfPlaneGeometry() {
        assertEquals(Math.PI * .09, SOME.get(0).area(), 1e-14);
        assertEquals(.8 * .3 - (4 - Math.PI) * .0049, SOME.get(3).area(), 1e-14);
        assertEquals(2 * (.8 + .3) - (8 - 2 * Math.PI) * .07, SOME.get(3).perimeter(), 1e-13);
        double l = Math.hypot(.5, .2);
        assertEquals(l * .15 + Math.PI * .075 * .075, SOME.get(4).area(), 1e-13);
        assertEquals(2 * l + Math.PI * .15, SOME.get(4).perimeter(), 1e-13);
        for (Contour c : SOME) {
            double[] p = c.points(1e-4);
            double area = 0;
            double length = 0;
            for (int k = 0; k < p.length; k += 2) {
                int n = (k + 2) % p.length;
                area += (p[k] * p[n + 1] - p[n] * p[k + 1]) / 2;
                length += Math.hypot(p[n] - p[k], p[n + 1] - p[k + 1]);
            }
            assertEquals(area, c.area(), 1e-5);
            assertEquals(length, c.perimeter(), 1e-4 * length);
        }
    }
}
