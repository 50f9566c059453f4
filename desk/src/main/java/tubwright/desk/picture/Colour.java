// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

/**
 * Colours in OKLab, a space in which equal distances look about equally large (Ottosson 2020, "A perceptual color space
 * for image processing"; matrices from memory, held by a round-trip test and by white and the primaries).
 */
public final class Colour {
    private Colour() {}

    /**
     * The sRGB colour of a lightness, chroma and hue.
     *
     * @param lightness 0 black to 1 white
     * @param chroma 0 grey, about 0.3 the most vivid; reduced where the screen cannot show it
     * @param hueDegrees 30 red, 60 orange, 110 yellow, 145 green, 200 teal, 260 blue, 330 magenta
     * @return red, green, blue as 0xrrggbb
     */
    public static int ofLightnessChromaHue(double lightness, double chroma, double hueDegrees) {
        double c = chroma;
        double cos = Math.cos(Math.toRadians(hueDegrees));
        double sin = Math.sin(Math.toRadians(hueDegrees));
        double[] linear = linear(lightness, c * cos, c * sin);
        while (c > 0 && !inside(linear)) {
            c = Math.max(0, c - 0.002);
            linear = linear(lightness, c * cos, c * sin);
        }
        return channel(linear[0]) << 16 | channel(linear[1]) << 8 | channel(linear[2]);
    }

    /** Lightness, a and b of a colour 0xrrggbb. */
    public static double[] toLab(int rgb) {
        double r = linearOf((rgb >> 16 & 255) / 255.0);
        double g = linearOf((rgb >> 8 & 255) / 255.0);
        double b = linearOf((rgb & 255) / 255.0);
        double l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
        double m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
        double s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
        return new double[] {
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
        };
    }

    /** {@code #rrggbb} for a page. */
    public static String hex(int rgb) {
        return String.format(java.util.Locale.ROOT, "#%06x", rgb & 0xffffff);
    }

    private static double[] linear(double lightness, double a, double b) {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        return new double[] {
            4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
            -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
            -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s
        };
    }

    private static boolean inside(double[] linear) {
        for (double v : linear) {
            if (v < -1e-4 || v > 1 + 1e-4) {
                return false;
            }
        }
        return true;
    }

    private static int channel(double linear) {
        double v = Math.clamp(linear, 0, 1);
        double encoded = v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * encoded);
    }

    private static double linearOf(double encoded) {
        return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
    }

    private static double cube(double v) {
        return v * v * v;
    }
}
