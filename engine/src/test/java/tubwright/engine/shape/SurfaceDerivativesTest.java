// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The surface's derivatives against central differences, its normal against geometry. */
class SurfaceDerivativesTest {
    @Test
    void ratesAlongTheCarAgreeWithDifferences() {
        TubShape tub = Tubs.singleSeat();
        Random random = new Random(7);
        SkinPoint p = new SkinPoint();
        SkinPoint a = new SkinPoint();
        SkinPoint b = new SkinPoint();
        double h = 1e-6;
        for (int i = 0; i < 500; i++) {
            double x = 0.01 + 2 * random.nextDouble();
            int k = random.nextInt(5);
            double t = random.nextDouble();
            int bay = tub.bay(x);
            tub.section(x, bay).at(k, t, p);
            tub.section(x - h, bay).at(k, t, a);
            tub.section(x + h, bay).at(k, t, b);
            assertEquals((b.y - a.y) / (2 * h), p.rateY, 2e-7, "seed 7, draw " + i);
            assertEquals((b.z - a.z) / (2 * h), p.rateZ, 2e-7, "seed 7, draw " + i);
        }
    }

    @Test
    void tangentsRunAlongTheOutlineAtUnitSpeedOfArcLength() {
        TubShape tub = Tubs.singleSeat();
        Random random = new Random(8);
        SkinPoint p = new SkinPoint();
        SkinPoint a = new SkinPoint();
        SkinPoint b = new SkinPoint();
        double h = 1e-6;
        for (int i = 0; i < 500; i++) {
            Section s = tub.section(2 * random.nextDouble());
            int k = random.nextInt(5);
            double t = 0.001 + 0.998 * random.nextDouble();
            s.at(k, t, p);
            s.at(k, t - h, a);
            s.at(k, t + h, b);
            assertEquals((b.y - a.y) / (2 * h), p.tangentY * p.length, 1e-5);
            assertEquals((b.z - a.z) / (2 * h), p.tangentZ * p.length, 1e-5);
        }
    }

    @Test
    void theNormalOfACylinderIsRadial() {
        TubShape tub = Tubs.cylinder(0.3, 2);
        SkinPoint p = new SkinPoint();
        for (int k = 0; k < 3; k++) {
            for (double t : new double[] {0.01, 0.2, 0.49, 0.9, 0.99}) {
                tub.section(0.7).at(k, t, p);
                assertEquals(p.y / 0.3, p.normalY, 1e-12);
                assertEquals(p.z / 0.3, p.normalZ, 1e-12);
                assertEquals(1 / 0.3, p.curvature, 1e-9);
            }
        }
    }

    @Test
    void theDistanceFromTheSkinIsNegativeInsideAndZeroOnIt() {
        TubShape tub = Tubs.singleSeat();
        SkinPoint p = new SkinPoint();
        Random random = new Random(9);
        for (int i = 0; i < 500; i++) {
            Section s = tub.section(2 * random.nextDouble());
            s.at(random.nextInt(5), random.nextDouble(), p);
            double out = Math.hypot(p.tangentY, p.tangentZ);
            assertEquals(0, s.distance(p.y, p.z), 1e-12);
            assertEquals(-1e-4, s.distance(p.y - 1e-4 * p.tangentZ / out, p.z + 1e-4 * p.tangentY / out), 1e-9);
            assertEquals(1e-4, s.distance(p.y + 1e-4 * p.tangentZ / out, p.z - 1e-4 * p.tangentY / out), 1e-9);
        }
    }

    @Test
    void aSmoothLoftPassesTheFramesAndDoesNotOvershootThem() {
        TubShape tub = Tubs.singleSeat();
        List<Frame> frames = tub.frames();
        for (Frame frame : frames) {
            Section s = tub.section(frame.x());
            for (int k = 0; k < frame.corners().size(); k++) {
                assertEquals(frame.corners().get(k).y(), s.y[k], 1e-13);
                assertEquals(frame.corners().get(k).z(), s.z[k], 1e-13);
            }
        }
        for (int i = 0; i + 1 < frames.size(); i++) {
            for (int j = 1; j < 20; j++) {
                double x = frames.get(i).x()
                        + (frames.get(i + 1).x() - frames.get(i).x()) * j / 20;
                Section s = tub.section(x);
                for (int k = 0; k < s.n; k++) {
                    double a = frames.get(i).corners().get(k).z();
                    double b = frames.get(i + 1).corners().get(k).z();
                    assertTrue(s.z[k] >= Math.min(a, b) - 1e-12 && s.z[k] <= Math.max(a, b) + 1e-12);
                }
            }
        }
    }
}
