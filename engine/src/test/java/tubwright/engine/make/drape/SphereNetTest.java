// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.surface.Bodies;
import tubwright.engine.make.surface.PointLocator;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Cloth on a unit sphere. With both first threads straight through the pole the net's equation ω_uv = −K sin ω has a
 * solution of s = uv alone: s γ'' + γ' = cos γ, γ(0) = 0, γ'(0) = 1 (derived in make-reference §1.3 B, with its table).
 */
class SphereNetTest {
    private static final Ladder NET = Ladder.of(
            Family.DRAPE,
            "net on a unit sphere, threads straight through the pole: s γ'' + γ' = cos γ, s = uv, solved in the test",
            Mark.EXACT);
    private static final Ladder TRELLIS = Ladder.of(
            Family.DRAPE, "trellis on a surface of revolution: r / sin ψ constant (Mack and Taylor 1956)", Mark.EXACT);

    /** s = uv and the shear there in degrees: make-reference §1.3 B. */
    private static final double[][] TABLE = {
        {0.1, 5.726}, {0.25, 14.274}, {0.5, 28.257}, {0.75, 41.680}, {1.0, 54.318}, {1.25, 66.004}
    };

    @Test
    void theEquationSolvedHereGivesTheTable() {
        for (double[] row : TABLE) {
            assertEquals(row[1], Math.toDegrees(exact(row[0])), 0.001);
        }
    }

    @Test
    void shearOnASphereIsThatOfTheNetsEquation() {
        ClothNet net = net(6, 0.05);
        int[][] places = {{2, 20}, {10, 10}, {10, 20}, {15, 20}, {20, 20}, {-20, -20}};
        for (int[] place : places) {
            double s = place[0] * place[1] * 0.05 * 0.05;
            double shear = net.shearAt(net.node(place[0], place[1]));
            NET.equal(
                    String.format(Locale.ROOT, "shear in degrees at crossing (%d, %d)", place[0], place[1]),
                    Math.toDegrees(exact(s)),
                    Math.toDegrees(shear),
                    0.25);
        }
    }

    /** Where the bias through the pole meets the equator: s = 0.9805², 52.425° (make-reference §1.3 B, its second table). */
    @Test
    void onTheBiasClothShearsByMoreThanHalfARightAngleAtTheEquator() {
        ClothNet net = net(6, 0.05);
        double[] p = new double[3];
        double heightBefore = 1;
        double shearBefore = 0;
        for (int k = 1; ; k++) {
            int n = net.node(k, k);
            net.position(n, p);
            double shear = Math.toDegrees(net.shearAt(n));
            if (p[2] < 0) {
                double there = shearBefore + (shear - shearBefore) * heightBefore / (heightBefore - p[2]);
                assertEquals(52.425, there, 0.25);
                return;
            }
            heightBefore = p[2];
            shearBefore = shear;
        }
    }

    @Test
    void quadrantsAlternateInSign() {
        ClothNet net = net(5, 0.05);
        assertTrue(net.shearAt(net.node(10, 10)) > 0 && net.shearAt(net.node(-10, -10)) > 0);
        assertTrue(net.shearAt(net.node(-10, 10)) < 0 && net.shearAt(net.node(10, -10)) < 0);
    }

    /**
     * Halving triangles and spacing leaves a quarter of the mean error. Single cells scatter about it, since a surface of
     * triangles has its curvature in points; the scatter falls with the power 3/2 at least, as points along a rim do.
     */
    @Test
    void theNetIsOfSecondOrder() {
        double[] coarse = error(net(4, 0.2), 0.2);
        double[] middle = error(net(5, 0.1), 0.1);
        double[] fine = error(net(6, 0.05), 0.05);
        assertTrue(
                coarse[0] / middle[0] > 3.6 && middle[0] / fine[0] > 3.6,
                () -> coarse[0] + " " + middle[0] + " " + fine[0]);
        assertTrue(
                coarse[1] / middle[1] > 2.8 && middle[1] / fine[1] > 2.8,
                () -> coarse[1] + " " + middle[1] + " " + fine[1]);
        assertTrue(Math.toDegrees(fine[0]) < 0.01, () -> "mean error of " + Math.toDegrees(fine[0]) + "°");
    }

    /** Mean of the error over all cells, and root of the mean square, rad. */
    private static double[] error(ClothNet net, double spacing) {
        double total = 0;
        double sum = 0;
        int count = 0;
        for (int c = 0; c < net.cellCount(); c++) {
            int low = net.cell(c)[0];
            double s = (net.warpSteps(low) + 0.5) * (net.weftSteps(low) + 0.5) * spacing * spacing;
            if (Math.abs(s) > 0.01 && Math.abs(s) < 0.8) {
                double off = Math.signum(s) * net.shear(c) - exact(Math.abs(s));
                total += off;
                sum += off * off;
                count++;
            }
        }
        return new double[] {Math.abs(total / count), Math.sqrt(sum / count)};
    }

    /** Threads at ±ψ to the meridian keep r / sin ψ: Mack & Taylor's kind of first integral (make-reference §1.3 C). */
    @Test
    void aTrellisRoundTheSphereKeepsRadiusOverSine() {
        TriangleSurface sphere = Bodies.sphere(6);
        PointLocator locator = new PointLocator(sphere);
        double apart = Math.PI / 120;
        List<SurfacePoint> equator = new ArrayList<>();
        for (int k = 0; k <= 120; k++) {
            equator.add(
                    locator.nearest(Math.cos(k * apart), Math.sin(k * apart), 0).point());
        }
        ClothNet net = ClothNet.layAlong(sphere, Bodies.all(sphere), equator, NetSettings.of(apart / Math.sqrt(2)));
        double[] p = new double[3];
        int seen = 0;
        // Up the middle meridian of the row: crossings (60 + k, −60 + k).
        for (int k = 0; k < 50; k++) {
            int n = net.node(60 + k, -60 + k);
            net.position(n, p);
            double colatitude = Math.acos(p[2] / Math.sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]));
            if (colatitude < Math.toRadians(32)) {
                break;
            }
            double psi = Math.asin(Math.sin(colatitude) / Math.sqrt(2));
            if (k % 10 == 0) {
                TRELLIS.equal(
                        String.format(Locale.ROOT, "shear in degrees %.1f° from the pole", Math.toDegrees(colatitude)),
                        90 - 2 * Math.toDegrees(psi),
                        Math.toDegrees(net.shearAt(n)),
                        0.6);
            }
            assertEquals(90 - 2 * Math.toDegrees(psi), Math.toDegrees(net.shearAt(n)), 0.6, "at " + colatitude);
            seen++;
        }
        assertTrue(seen > 30, "only " + seen + " crossings");
    }

    private static ClothNet net(int halvings, double spacing) {
        TriangleSurface sphere = Bodies.sphere(halvings);
        SurfacePoint pole = new PointLocator(sphere).nearest(0, 0, 1).point();
        boolean[] north = new boolean[sphere.triangles()];
        double[] p = new double[3];
        for (int t = 0; t < north.length; t++) {
            sphere.position(t, 0, 0, p);
            north[t] = p[2] > -0.2;
        }
        return ClothNet.lay(sphere, north, pole, 0.4, NetSettings.of(spacing));
    }

    /** By Runge & Kutta from the series s − s³/18. */
    private static double exact(double to) {
        double s = 1e-3;
        double g = s - s * s * s / 18;
        double d = 1 - s * s / 6;
        int steps = 400;
        double h = (to - s) / steps;
        for (int i = 0; i < steps; i++) {
            double k1 = (Math.cos(g) - d) / s;
            double d2 = d + h / 2 * k1;
            double k2 = (Math.cos(g + h / 2 * d) - d2) / (s + h / 2);
            double d3 = d + h / 2 * k2;
            double k3 = (Math.cos(g + h / 2 * d2) - d3) / (s + h / 2);
            double d4 = d + h * k3;
            double k4 = (Math.cos(g + h * d3) - d4) / (s + h);
            g += h / 6 * (d + 2 * d2 + 2 * d3 + d4);
            d += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
            s += h;
        }
        return g;
    }
}
