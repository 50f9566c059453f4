// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tubwright.engine.make.surface.Bodies;
import tubwright.engine.make.surface.PointLocator;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** What holds of every net whatever it lies on (make-reference §1.3 A and D). */
class NetLawsTest {
    private static final Ladder UNROLLED =
            Ladder.of(Family.DRAPE, "what unrolls takes cloth without shear (theorema egregium)", Mark.EXACT);
    private static final Ladder CURVATURE = Ladder.of(
            Family.DRAPE,
            "shear at the corners of a patch is its whole curvature (Hazzidakis; Gauss and Bonnet)",
            Mark.EXACT);

    /** Anything that unrolls takes cloth at any angle without shear, and the flat is what unrolling gives. */
    @TestFactory
    Stream<DynamicTest> whatUnrollsTakesClothWithoutShear() {
        return Stream.of(0.0, 0.3, Math.PI / 4, 1.2)
                .flatMap(warp -> Stream.of(
                        DynamicTest.dynamicTest("cylinder, " + warp, () -> {
                            double r = 0.2;
                            TriangleSurface tube = Bodies.cylinder(r, 2.5, 40, 0.6, 20);
                            unrolled("cylinder", tube, warp, new double[] {r * Math.cos(1.2), r * Math.sin(1.2), 0.31});
                        }),
                        DynamicTest.dynamicTest("cone, " + warp, () -> {
                            TriangleSurface cone = Bodies.cone(0.4, 2.5, 40, 0.3, 0.9, 20);
                            double d = 0.61;
                            unrolled("cone", cone, warp, new double[] {
                                d * Math.sin(0.4) * Math.cos(1.2), d * Math.sin(0.4) * Math.sin(1.2), d * Math.cos(0.4)
                            });
                        })));
    }

    /**
     * The triangles laid into the plane one beside the other are the unrolled body, independently of the net: distances of
     * any two crossings there are those of their places in the flat cloth.
     */
    private static void unrolled(String body, TriangleSurface surface, double warp, double[] start) {
        SurfacePoint at =
                new PointLocator(surface).nearest(start[0], start[1], start[2]).point();
        ClothNet net = ClothNet.lay(surface, Bodies.all(surface), at, warp, NetSettings.of(0.011));
        assertTrue(net.nodeCount() > 1000, () -> net.nodeCount() + " crossings");
        double most = 0;
        for (int c = 0; c < net.cellCount(); c++) {
            most = Math.max(most, Math.abs(net.shear(c)));
        }
        UNROLLED.vanishes(
                String.format(Locale.ROOT, "largest shear in degrees, %s, warp at %.0f°", body, Math.toDegrees(warp)),
                net.nodeCount() + " crossings",
                Math.toDegrees(most),
                1e-6);
        double[] laid = laidOut(surface);
        double[] origin = place(net, laid, net.node(0, 0));
        double[] unit = place(net, laid, net.node(1, 0));
        double cos = (unit[0] - origin[0]) / net.spacing();
        double sin = (unit[1] - origin[1]) / net.spacing();
        for (int n = 0; n < net.nodeCount(); n++) {
            double u = net.warpSteps(n) * net.spacing();
            double v = net.weftSteps(n) * net.spacing();
            double[] p = place(net, laid, n);
            assertEquals(origin[0] + cos * u - sin * v, p[0], 1e-9);
            assertEquals(origin[1] + sin * u + cos * v, p[1], 1e-9);
        }
    }

    /** Plane coordinates of every triangle's three corners, neighbour laid against neighbour. */
    private static double[] laidOut(TriangleSurface s) {
        double[] laid = new double[6 * s.triangles()];
        boolean[] done = new boolean[s.triangles()];
        int[] queue = new int[s.triangles()];
        double[] lengths = new double[3];
        int tail = 1;
        done[0] = true;
        sides(s, 0, lengths);
        double cos = (lengths[0] * lengths[0] + lengths[2] * lengths[2] - lengths[1] * lengths[1])
                / (2 * lengths[0] * lengths[2]);
        laid[2] = lengths[0];
        laid[4] = lengths[2] * cos;
        laid[5] = lengths[2] * Math.sqrt(1 - cos * cos);
        for (int head = 0; head < tail; head++) {
            int t = queue[head];
            for (int k = 0; k < 3; k++) {
                int o = s.across(t, k);
                if (o >= 0 && !done[o]) {
                    done[o] = true;
                    queue[tail++] = o;
                    int m = 0;
                    while (s.corners()[3 * o + m] != s.corners()[3 * t + (k + 1) % 3]) {
                        m++;
                    }
                    sides(s, o, lengths);
                    double ax = laid[6 * t + 2 * ((k + 1) % 3)];
                    double ay = laid[6 * t + 2 * ((k + 1) % 3) + 1];
                    double bx = laid[6 * t + 2 * k];
                    double by = laid[6 * t + 2 * k + 1];
                    double l = lengths[m];
                    double a = lengths[(m + 2) % 3];
                    double b = lengths[(m + 1) % 3];
                    double x = (l * l + a * a - b * b) / (2 * l);
                    double y = Math.sqrt(a * a - x * x);
                    double ux = (bx - ax) / l;
                    double uy = (by - ay) / l;
                    laid[6 * o + 2 * m] = ax;
                    laid[6 * o + 2 * m + 1] = ay;
                    laid[6 * o + 2 * ((m + 1) % 3)] = bx;
                    laid[6 * o + 2 * ((m + 1) % 3) + 1] = by;
                    laid[6 * o + 2 * ((m + 2) % 3)] = ax + x * ux - y * uy;
                    laid[6 * o + 2 * ((m + 2) % 3) + 1] = ay + x * uy + y * ux;
                }
            }
        }
        return laid;
    }

    private static void sides(TriangleSurface s, int t, double[] lengths) {
        for (int k = 0; k < 3; k++) {
            int p = 3 * s.corners()[3 * t + k];
            int q = 3 * s.corners()[3 * t + (k + 1) % 3];
            lengths[k] = Math.hypot(
                    Math.hypot(s.points()[p] - s.points()[q], s.points()[p + 1] - s.points()[q + 1]),
                    s.points()[p + 2] - s.points()[q + 2]);
        }
    }

    private static double[] place(ClothNet net, double[] laid, int node) {
        SurfacePoint p = net.place(node);
        double[] w = net.surface().weights(p);
        int t = 6 * p.triangle();
        return new double[] {
            (1 - w[0] - w[1]) * laid[t] + w[0] * laid[t + 2] + w[1] * laid[t + 4],
            (1 - w[0] - w[1]) * laid[t + 1] + w[0] * laid[t + 3] + w[1] * laid[t + 5]
        };
    }

    /** γ at the corners of a patch of net, +γ where signs are equal: the patch's whole curvature (Hazzidakis). */
    @Test
    void shearAtTheCornersOfAPatchIsItsCurvature() {
        // A saddle z = xy/a: K = −1/(a² (1 + (x² + y²)/a²)²), area element √(1 + (x² + y²)/a²).
        double a = 0.4;
        TriangleSurface saddle =
                Bodies.grid(-0.25, 0.25, 120, -0.25, 0.25, 120, (x, y) -> new double[] {x, y, x * y / a});
        SurfacePoint centre = new PointLocator(saddle).nearest(0.003, 0.002, 0).point();
        ClothNet net = ClothNet.lay(saddle, Bodies.all(saddle), centre, 0.2, NetSettings.of(0.005));
        double[] p = new double[3];
        for (int[] patch : new int[][] {{0, 0, 30, 30}, {-28, -28, 28, 28}, {5, -25, 25, 10}}) {
            double corners = net.shearAt(net.node(patch[2], patch[3]))
                    - net.shearAt(net.node(patch[2], patch[1]))
                    - net.shearAt(net.node(patch[0], patch[3]))
                    + net.shearAt(net.node(patch[0], patch[1]));
            double curvature = 0;
            for (int i = patch[0]; i < patch[2]; i++) {
                for (int j = patch[1]; j < patch[3]; j++) {
                    double x = 0;
                    double y = 0;
                    for (int[] c : new int[][] {{0, 0}, {1, 0}, {1, 1}, {0, 1}}) {
                        net.position(net.node(i + c[0], j + c[1]), p);
                        x += p[0] / 4;
                        y += p[1] / 4;
                    }
                    // The cell's area is that of a rhombus of its shear.
                    double shear = net.shearAt(net.node(i, j)) / 2 + net.shearAt(net.node(i + 1, j + 1)) / 2;
                    double area = net.spacing() * net.spacing() * Math.cos(shear);
                    double q = 1 + (x * x + y * y) / (a * a);
                    curvature -= area / (a * a * q * q);
                }
            }
            assertTrue(curvature < -0.05, "a saddle's curvature is negative");
            CURVATURE.equal(
                    "saddle, patch " + Arrays.toString(patch), curvature, corners, 0.01 * Math.abs(curvature) + 0.001);
        }
    }

    @Test
    void aNetStopsWhereItsThreadsWouldLock() {
        TriangleSurface sphere = Bodies.sphere(5);
        SurfacePoint pole = new PointLocator(sphere).nearest(0, 0, 1).point();
        double lock = Math.toRadians(40);
        ClothNet net = ClothNet.lay(sphere, Bodies.all(sphere), pole, 0, new NetSettings(0.05, lock));
        assertTrue(net.locked() > 0);
        for (int c = 0; c < net.cellCount(); c++) {
            assertTrue(Math.abs(net.shear(c)) < lock + 0.05);
        }
    }

    @Test
    void aNetRoundATubeStopsWhereItComesUponItself() {
        int n = 60;
        double[] points = new double[6 * n];
        int[] corners = new int[6 * n];
        for (int k = 0; k < n; k++) {
            double u = 2 * Math.PI * k / n;
            int next = (k + 1) % n;
            double[] pair = {0.1 * Math.cos(u), 0.1 * Math.sin(u), 0, 0.1 * Math.cos(u), 0.1 * Math.sin(u), 0.3};
            System.arraycopy(pair, 0, points, 6 * k, 6);
            int[] two = {2 * k, 2 * next, 2 * next + 1, 2 * k, 2 * next + 1, 2 * k + 1};
            System.arraycopy(two, 0, corners, 6 * k, 6);
        }
        TriangleSurface tube = TriangleSurface.of(points, corners);
        SurfacePoint at = new PointLocator(tube).nearest(-0.1, 0.002, 0.15).point();
        ClothNet net = ClothNet.lay(tube, Bodies.all(tube), at, 0.5, NetSettings.of(0.01));
        assertTrue(net.overItself() > 0);
        double whole = 2 * n * 0.1 * Math.sin(Math.PI / n) * 0.3;
        double covered = net.cellCount() * 1e-4;
        assertTrue(covered < whole && covered > 0.8 * whole, () -> covered + " m² of " + whole);
    }

    @Test
    void anImpossibleNetIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> NetSettings.of(0));
        assertThrows(IllegalArgumentException.class, () -> new NetSettings(0.01, Math.PI));
    }
}
