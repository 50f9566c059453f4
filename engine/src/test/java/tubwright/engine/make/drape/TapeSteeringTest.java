// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.surface.Bodies;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Tape along lines whose geodesic curvature is known. */
class TapeSteeringTest {
    private static final Ladder CONE =
            Ladder.of(Family.DRAPE, "a hoop on a cone unrolls to a circle about the apex", Mark.EXACT);

    private static double[] hoops(TriangleSurface s) {
        double[] directions = new double[3 * s.triangles()];
        double[] p = new double[3];
        for (int t = 0; t < s.triangles(); t++) {
            SurfacePoint m = s.at(t, 1 / 3.0, 1 / 3.0);
            s.position(t, m.x(), m.y(), p);
            double r = Math.hypot(p[0], p[1]);
            directions[3 * t] = -p[1] / r;
            directions[3 * t + 1] = p[0] / r;
        }
        return directions;
    }

    /** A hoop on a cone unrolls to a circle about the apex: its radius in the surface is the distance from the apex. */
    @Test
    void aHoopOnAConeIsSteeredToItsDistanceFromTheApex() {
        TriangleSurface cone = Bodies.cone(0.4, 2.5, 80, 0.5, 0.9, 40);
        double[] curvature = TapeSteering.curvatures(cone, hoops(cone));
        double[] p = new double[3];
        int seen = 0;
        for (int t = 0; t < cone.triangles(); t++) {
            SurfacePoint m = cone.at(t, 1 / 3.0, 1 / 3.0);
            cone.position(t, m.x(), m.y(), p);
            double d = p[2] / Math.cos(0.4);
            double a = Math.atan2(p[1], p[0]);
            if (d > 0.55 && d < 0.85 && a > 0.2 && a < 2.3) {
                if (seen % 400 == 0) {
                    CONE.within(
                            0.01,
                            String.format(Locale.ROOT, "curvature of a hoop %.3f m from the apex", d),
                            "80 × 40 cells",
                            1 / d,
                            curvature[t]);
                }
                assertEquals(1 / d, curvature[t], 0.01 / d);
                seen++;
            }
        }
        assertTrue(seen > 1000);
    }

    /** On a cylinder hoops and lengths are straight. */
    @Test
    void aHoopOnACylinderIsStraight() {
        TriangleSurface tube = Bodies.cylinder(0.2, 2.5, 60, 0.3, 20);
        for (double k : TapeSteering.curvatures(tube, hoops(tube))) {
            assertEquals(0, k, 1e-3); // against 5 for the hoop itself; triangles at the rim lean to one side
        }
    }

    /** make-reference §1.5: strain = w / 2ρ; 6.35 mm at 1350 mm is 0.235 %, and at that strain 150 mm wants 32 m. */
    @Test
    void edgeStrainIsWidthOverTwiceTheRadius() {
        LayLimits limits = LayLimits.of(MaterialLibrary.shipped().get("ud-as4-3502"));
        assertEquals(0.00235, limits.strain(), 0.00001);
        assertEquals(31.9, limits.leastRadius(0.150), 0.05);
        assertEquals(0.00635, limits.widestTape(1.350), 1e-9);
    }
}
