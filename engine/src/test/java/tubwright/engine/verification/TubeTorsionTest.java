// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Thin-walled tubes in torsion, closed and slit, metal and laminated. */
class TubeTorsionTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aBoxTwistsAsBredtAndBathoSay(int elementsPerWall) {
        // GJ = 4A²/∮ds/Gt plus the open part Σ G b t³/3, box .3 × .2 m, t = 4 mm, L = 3 m
        double g = 70e9 / (2 * 1.33);
        double t = .004;
        double gj = g * (4 * .06 * .06 * t + t * t * t / 3);
        double twist = Tubes.box(.3, .2, elementsPerWall, 3, 10, Laminates.isotropic(70e9, .33, t), true);
        assertEquals(1, twist * gj / 3, 5e-4);
    }

    @Test
    void aRoundTubeOfPlanesTwistsAsItsPolygonDoes() {
        // A polygon of n sides encloses less: stiffness falls by (n/π) sin(π/n) cos²(π/n), a closed form of geometry.
        double[] c = Laminates.stack(135e3, 9e3, .3, 5e3, 5e3, .2, 0, 45, -45, 45, -45, -45, 45, -45, 45);
        double exact = 3.566919e-8; // T·a66/(2πR³) with ply data above, computed here
        for (int n : new int[] {16, 32}) {
            double p = Math.PI / n;
            double polygon = n / Math.PI * Math.sin(p) * Math.cos(p) * Math.cos(p);
            assertEquals(1, Tubes.circle(40, n, true, 800, 2 * n, c, true) / exact * polygon, .003);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aBoxWhoseWallsAllShearWhenStretchedDoesNotLock(int elementsPerWall) {
        // Circumferentially uniform stiffness: hoop force condensed out, extension free. Two lengths remove the ends.
        double[] c = Laminates.stack(135e3, 9e3, .3, 5e3, 5e3, .2, 0, 30, 30, 30, 30, 30, 30, 30, 30);
        double a11 = c[0] - c[1] * c[1] / c[9];
        double a16 = c[2] - c[1] * c[10] / c[9];
        double a66 = c[18] - c[10] * c[10] / c[9];
        double b = 120;
        double h = 80;
        double round = 2 * (b + h);
        double coupling = 2 * b * h * a16;
        double gj = a66 * 4 * b * h * b * h / round - coupling * coupling / (a11 * round);
        double shorter = Tubes.box(b, h, elementsPerWall, 1200, 12 * elementsPerWall, c, true);
        double longer = Tubes.box(b, h, elementsPerWall, 2400, 24 * elementsPerWall, c, true);
        assertEquals(1, (longer - shorter) * gj / 1200, .004);
    }

    @Test
    void aSlitTubeTwistsAsSaintVenantSays() {
        // J = 2πRt³/3, R = 50, t = 1, L = 1000
        double exact = 1000 / (70e3 / 2.6 * 2 * Math.PI * 50 / 3);
        assertEquals(1, Tubes.circle(50, 32, false, 1000, 48, Laminates.isotropic(70e3, .3, 1), true) / exact, .015);
    }

    @Test
    void aSlitTubeBuiltInIsNearlyTwoHundredTimesStiffer() {
        // Vlasov: T/GJ [L − tanh(kL)/k], k² = GJ/EΓ, Γ = (2πtR⁵/3)(π² − 6). Vlasov leaves the shear of the warping out;
        // shells come 2.7 % softer.
        double gj = 70e3 / 2.6 * 2 * Math.PI * 50 / 3;
        double gamma = 2 * Math.PI * Math.pow(50, 5) / 3 * (Math.PI * Math.PI - 6);
        double k = Math.sqrt(gj / (70e3 * gamma));
        double exact = (1000 - Math.tanh(k * 1000) / k) / gj;
        assertEquals(1, Tubes.circle(50, 40, false, 1000, 40, Laminates.isotropic(70e3, .3, 1), false) / exact, .04);
    }
}
