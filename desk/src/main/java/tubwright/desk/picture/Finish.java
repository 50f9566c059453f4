// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

/** The last passes over a painted picture: shade in hollows, outlines where depth jumps, down to picture size. */
final class Finish {
    private static final int OUTLINE = 0x1d2430;
    /** Unit-circle directions in which neighbours are asked whether they stand in front. */
    private static final double[][] RAYS = rays(8);

    private Finish() {}

    /**
     * Darkens pixels that lie in hollows: the share of nearby points that stand between {@code 0.02} and one reach in
     * front (screen-space ambient occlusion in its simplest form).
     *
     * @param painted what to darken
     * @param reach radius in metres
     */
    static void hollows(Rasteriser painted, double reach) {
        int width = painted.width();
        int height = painted.height();
        float[] depth = painted.depth();
        int[] colour = painted.colour();
        double pixels = reach * painted.view().scale();
        int cells = Rasteriser.SUPERSAMPLING;
        int[] steps = new int[RAYS.length * 2];
        for (int i = 0; i < RAYS.length; i++) {
            double r = pixels * (i % 2 == 0 ? 0.45 : 1);
            steps[2 * i] = (int) Math.round(r * RAYS[i][0]);
            steps[2 * i + 1] = (int) Math.round(r * RAYS[i][1]);
        }
        int columns = (width + cells - 1) / cells;
        int rows = (height + cells - 1) / cells;
        float[] shade = new float[columns * rows];
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                int x = i * cells;
                int y = j * cells;
                float z = depth[y * width + x];
                if (z == Float.POSITIVE_INFINITY) {
                    continue;
                }
                double sum = 0;
                for (int k = 0; k < steps.length; k += 2) {
                    sum += between(depth, width, height, x + steps[k], y + steps[k + 1], z, reach);
                    sum += between(depth, width, height, x - steps[k], y - steps[k + 1], z, reach);
                }
                shade[j * columns + i] = (float) (sum / steps.length);
            }
        }
        smooth(shade, columns, rows);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                float s = shade[y / cells * columns + x / cells];
                if (s > 0 && depth[at] != Float.POSITIVE_INFINITY) {
                    colour[at] = dim(colour[at], 1 - 0.38 * Math.max(0, s - 0.12));
                }
            }
        }
    }

    private static double between(float[] depth, int width, int height, int x, int y, float z, double reach) {
        if (x < 0 || y < 0 || x >= width || y >= height) {
            return 0;
        }
        double front = (z - depth[y * width + x]) / reach;
        if (!(front > 0.12)) {
            return 0;
        }
        return front < 1 ? 1 : Math.max(0, 2 - front);
    }

    private static void smooth(float[] field, int columns, int rows) {
        float[] half = new float[field.length];
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                half[j * columns + i] = (field[j * columns + Math.max(0, i - 1)]
                                + field[j * columns + i]
                                + field[j * columns + Math.min(columns - 1, i + 1)])
                        / 3;
            }
        }
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                field[j * columns + i] = (half[Math.max(0, j - 1) * columns + i]
                                + half[j * columns + i]
                                + half[Math.min(rows - 1, j + 1) * columns + i])
                        / 3;
            }
        }
    }

    /**
     * Draws outlines where depth bends sharply from one pixel to the next: silhouettes, and edges in front of others.
     *
     * @param painted what to outline
     * @param jump step of depth that counts, m
     */
    static void outlines(Rasteriser painted, double jump) {
        int width = painted.width();
        int height = painted.height();
        float[] depth = painted.depth();
        int[] colour = painted.colour();
        boolean[] edge = new boolean[width * height];
        for (int y = 1; y < height - 1; y++) {
            for (int x = 1; x < width - 1; x++) {
                int at = y * width + x;
                float z = depth[at];
                if (z == Float.POSITIVE_INFINITY) {
                    continue;
                }
                edge[at] = depth[at - 1] + depth[at + 1] - 2 * z > jump
                        || depth[at - width] + depth[at + width] - 2 * z > jump;
            }
        }
        for (int at = 0; at < edge.length; at++) {
            if (edge[at]) {
                colour[at] = Rasteriser.over(colour[at], OUTLINE, 215);
            }
        }
    }

    /** The picture at its own size: each pixel the mean of its sub-pixels. */
    static Image shrink(Rasteriser painted) {
        int n = Rasteriser.SUPERSAMPLING;
        int width = painted.width() / n;
        int height = painted.height() / n;
        int[] colour = painted.colour();
        int[] pixels = new int[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int alpha = 0;
                int r = 0;
                int g = 0;
                int b = 0;
                for (int k = 0; k < n * n; k++) {
                    int c = colour[(y * n + k / n) * painted.width() + x * n + k % n];
                    int a = c >>> 24;
                    alpha += a;
                    r += a * (c >> 16 & 255);
                    g += a * (c >> 8 & 255);
                    b += a * (c & 255);
                }
                if (alpha > 0) {
                    pixels[y * width + x] = alpha / (n * n) << 24 | r / alpha << 16 | g / alpha << 8 | b / alpha;
                }
            }
        }
        return new Image(width, height, pixels);
    }

    private static int dim(int argb, double factor) {
        int r = (int) ((argb >> 16 & 255) * factor);
        int g = (int) ((argb >> 8 & 255) * factor);
        int b = (int) ((argb & 255) * factor);
        return argb & 0xff000000 | r << 16 | g << 8 | b;
    }

    private static double[][] rays(int count) {
        double[][] result = new double[count][];
        for (int i = 0; i < count; i++) {
            double angle = Math.PI * (i + 0.5) / count;
            result[i] = new double[] {Math.cos(angle), Math.sin(angle)};
        }
        return result;
    }
}
