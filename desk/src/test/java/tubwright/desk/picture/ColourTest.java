// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ColourTest {
    /** White is (1, 0, 0) by the definition of the space (Ottosson 2020). */
    @Test
    void whiteIsAllLightness() {
        assertArrayEquals(new double[] {1, 0, 0}, Colour.toLab(0xffffff), 1e-6);
    }

    /** Oklab of pure red, (0.628, 0.225, 0.126) as commonly published (from memory). */
    @Test
    void redLiesWhereItIsPublished() {
        assertArrayEquals(new double[] {0.628, 0.225, 0.126}, Colour.toLab(0xff0000), 5e-4);
    }

    @Test
    void coloursComeBackFromLightnessChromaAndHue() {
        for (int rgb : new int[] {0x3366cc, 0xb5562a, 0x808080, 0xefe3c4, 0x102030}) {
            double[] lab = Colour.toLab(rgb);
            double chroma = Math.hypot(lab[1], lab[2]);
            double hue = Math.toDegrees(Math.atan2(lab[2], lab[1]));
            assertEquals(rgb, Colour.ofLightnessChromaHue(lab[0], chroma, hue), () -> Integer.toHexString(rgb));
        }
    }

    @Test
    void theRampFallsEvenlyInLightness() {
        int[] ramp = Palette.ramp();
        double fall = Colour.toLab(ramp[0])[0] - Colour.toLab(ramp[255])[0];
        for (int i = 16; i < 256; i += 16) {
            double step = Colour.toLab(ramp[i - 16])[0] - Colour.toLab(ramp[i])[0];
            assertEquals(fall * 16 / 255, step, 0.008, "from step " + (i - 16));
        }
    }

    /** In a space where distance is difference, no stretch of the ramp hides a step or makes up an edge. */
    @Test
    void neighboursOnTheRampDifferByAboutTheSame() {
        int[] ramp = Palette.ramp();
        double least = Double.MAX_VALUE;
        double most = 0;
        for (int i = 16; i < 256; i += 16) {
            double[] a = Colour.toLab(ramp[i - 16]);
            double[] b = Colour.toLab(ramp[i]);
            double d = Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
            least = Math.min(least, d);
            most = Math.max(most, d);
        }
        assertTrue(most < 1.8 * least, least + " to " + most);
    }
}
