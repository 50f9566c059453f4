// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tubwright.engine.strength.Plies.MPA;

import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.laminate.Laminate;

/** First cracks of the glass laminates of Soden, Hinton and Kaddour 1998 (data from memory), computed apart. */
class GlassLaminateFailureTest {
    private static final Laminate CROSS_PLY = Plies.stack(Plies.GLASS_MY750, 0.26e-3, 0, 90, 90, 0);
    private static final Laminate PLUS_MINUS_45 = Plies.stack(Plies.GLASS_MY750, 0.25e-3, 45, -45, -45, 45);
    private static final Laminate PLUS_MINUS_55 = Plies.stack(Plies.GLASS_MY750, 0.25e-3, 55, -55, -55, 55);

    @Test
    void theCrossPly() {
        assertEquals(77.8, crack(CROSS_PLY, Criterion.MAXIMUM_STRESS, Climate.NONE, 1, 0), 0.05);
        assertEquals(77.5, crack(CROSS_PLY, Criterion.TSAI_WU, Climate.NONE, 1, 0), 0.05);
        assertEquals(42.2, crack(CROSS_PLY, Criterion.TSAI_WU, new Climate(-95, 0), 1, 0), 0.05);
    }

    @Test
    void theAnglePlyUnderEqualTension() {
        assertEquals(68.4, crack(PLUS_MINUS_45, Criterion.MAXIMUM_STRESS, Climate.NONE, 1, 1), 0.05);
        assertEquals(73.5, crack(PLUS_MINUS_45, Criterion.TSAI_WU, Climate.NONE, 1, 1), 0.05);
    }

    @Test
    void theWoundTubeUnderInnerPressure() {
        EngineeringConstants c = EngineeringConstants.membrane(PLUS_MINUS_55);
        assertEquals(15.40, c.ex() / 1e9, 0.005);
        assertEquals(23.46, c.ey() / 1e9, 0.005);
        assertEquals(12.67, c.gxy() / 1e9, 0.005);
        assertEquals(0.381, c.nuxy(), 0.0005);
        assertEquals(111.7, crack(PLUS_MINUS_55, Criterion.MAXIMUM_STRESS, Climate.NONE, 0.5, 1), 0.05);
        assertEquals(118.6, crack(PLUS_MINUS_55, Criterion.TSAI_WU, Climate.NONE, 0.5, 1), 0.05);
        assertEquals(109.4, crack(PLUS_MINUS_55, Criterion.PUCK, Climate.NONE, 0.5, 1), 0.05);
    }

    private static double crack(Laminate laminate, Criterion criterion, Climate climate, double x, double y) {
        double h = laminate.thickness() * MPA;
        return FirstPlyFailure.of(
                        laminate,
                        new double[] {x * h, y * h, 0, 0, 0, 0},
                        climate,
                        LayerCriteria.of(criterion, KnockDown.NONE))
                .reserveFactor();
    }
}
