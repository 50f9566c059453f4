// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** One worked panel, figures computed apart: faces 60 GPa, .6 mm; aluminium core 517/152 MPa, 20 mm, 4.76 mm cells. */
class SandwichFailureTest {
    private static final double MPA = 1e6;

    private final SandwichFailure panel = new SandwichFailure(60e9, 0.3, 0.6e-3, 517e6, 152e6, 20e-3);

    @Test
    void wrinklingOnASolidCore() {
        assertEquals(838, panel.wrinklingOnSolidCore(SandwichFailure.DESIGN_SOLID) / MPA, 0.5);
        assertEquals(1056, panel.wrinklingOnSolidCore(0.63) / MPA, 0.5);
        assertEquals(1526, panel.wrinklingOnSolidCore(SandwichFailure.THEORY_SOLID) / MPA, 0.5);
        assertEquals(12.0e-3, panel.thickCoreLimit(), 0.05e-3);
    }

    @Test
    void wrinklingOnHoneycomb() {
        assertEquals(318, panel.wrinklingOnHoneycomb(SandwichFailure.DESIGN_HONEYCOMB) / MPA, 0.5);
        assertEquals(791, panel.wrinklingOnHoneycomb(SandwichFailure.THEORY_HONEYCOMB) / MPA, 0.5);
        assertEquals(560, panel.wrinklingWithWaviness(0.05e-3, 2e6) / MPA, 0.5);
        assertEquals(433, panel.wrinklingWithWaviness(0.1e-3, 2e6) / MPA, 0.5);
    }

    @Test
    void dimplingCrimpingAndCrushing() {
        assertEquals(2095, panel.dimpling(4.76e-3) / MPA, 0.5);
        assertEquals(3225e3, panel.crimpingForce(), 0.5e3);
        assertEquals(.0388, panel.crushingByCurvature(200 * MPA, Double.POSITIVE_INFINITY) / MPA, 5e-5);
        assertEquals(.060, panel.crushingByCurvature(200 * MPA, 2) / MPA, 5e-5);
    }

    @Test
    void twoEqualCompressionsTakeTheCubeRootOfTwo() {
        assertEquals(Math.cbrt(2), SandwichFailure.inTwoDirections(1, 1), 1e-15);
    }
}
