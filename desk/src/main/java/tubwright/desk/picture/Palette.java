// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

/** The colours pictures are painted with: a ramp for quantities, a set for kinds. */
public final class Palette {
    /** Number of steps in a ramp. */
    public static final int STEPS = 256;

    private static final int[] EMBER = ember();

    private Palette() {}

    /**
     * From quiet to hot: pale blue-grey through sand and terracotta to deep plum. Lightness falls evenly, so that it reads
     * in print and with any colour vision; hue only helps.
     *
     * @return {@link #STEPS} colours 0xrrggbb, not to be modified
     */
    public static int[] ramp() {
        return EMBER;
    }

    /** Colour of the ramp at {@code t} from 0 to 1. */
    public static int ramp(double t) {
        return EMBER[(int) Math.round(Math.clamp(t, 0, 1) * (STEPS - 1))];
    }

    /** One colour, the whole ramp over. */
    public static int[] plain(int rgb) {
        int[] colours = new int[STEPS];
        java.util.Arrays.fill(colours, rgb);
        return colours;
    }

    /**
     * Colour of the {@code index}-th of several kinds: hues spread by the golden angle in three turns of lightness, so
     * that neighbours differ in both.
     */
    public static int kind(int index) {
        double hue = (250 + 137.508 * index) % 360;
        double[] lightness = {0.80, 0.68, 0.88};
        double[] chroma = {0.085, 0.095, 0.075};
        return Colour.ofLightnessChromaHue(lightness[index % 3], chroma[index % 3], hue);
    }

    private static int[] ember() {
        double[] at = {0, 0.25, 0.50, 0.75, 1};
        double[] chroma = {0.020, 0.060, 0.135, 0.175, 0.115};
        double[] hue = {240, 85, 50, 18, -30};
        int[] colours = new int[STEPS];
        for (int i = 0; i < STEPS; i++) {
            double t = i / (STEPS - 1.0);
            double c;
            double h;
            if (t < at[1]) {
                // Cool to warm through grey, not round the wheel by way of green.
                double s = t / at[1];
                double a = mix(chroma[0] * cos(hue[0]), chroma[1] * cos(hue[1]), s);
                double b = mix(chroma[0] * sin(hue[0]), chroma[1] * sin(hue[1]), s);
                c = Math.hypot(a, b);
                h = Math.toDegrees(Math.atan2(b, a));
            } else {
                int k = 1;
                while (k < at.length - 2 && t > at[k + 1]) {
                    k++;
                }
                double s = (t - at[k]) / (at[k + 1] - at[k]);
                c = mix(chroma[k], chroma[k + 1], s);
                h = mix(hue[k], hue[k + 1], s);
            }
            colours[i] = Colour.ofLightnessChromaHue(mix(0.94, 0.27, t), c, h);
        }
        return colours;
    }

    private static double mix(double from, double to, double s) {
        return from + (to - from) * s;
    }

    private static double cos(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }

    private static double sin(double degrees) {
        return Math.sin(Math.toRadians(degrees));
    }
}
