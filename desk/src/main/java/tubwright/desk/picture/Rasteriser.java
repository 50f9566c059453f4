// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.Arrays;

/**
 * Paints triangles and lines into a depth buffer at twice the picture's resolution. Triangles carry a unit normal and a
 * value per corner; values index a ramp of {@link Palette#STEPS} colours. Not for use by several threads.
 */
final class Rasteriser {
    /** Sub-pixels per pixel each way. */
    static final int SUPERSAMPLING = 2;

    private final View view;
    private final int width;
    private final int height;
    private final float[] depth;
    private final int[] colour;
    private final int[] owner;
    private final double[] key;
    private final double[] scratch = new double[3];
    private final double[] corners = new double[9];

    Rasteriser(View view) {
        this.view = view.times(SUPERSAMPLING);
        width = this.view.width();
        height = this.view.height();
        depth = new float[width * height];
        colour = new int[width * height];
        owner = new int[width * height];
        Arrays.fill(depth, Float.POSITIVE_INFINITY);
        Arrays.fill(owner, -1);
        // The key light stands over the viewer's left shoulder.
        double[] light = new double[3];
        for (int i = 0; i < 3; i++) {
            light[i] = 0.80 * view.toward()[i] + 0.45 * view.up()[i] - 0.06 * view.right()[i];
        }
        key = light;
    }

    View view() {
        return view;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    float[] depth() {
        return depth;
    }

    int[] colour() {
        return colour;
    }

    /** What was painted where, as told to {@link #triangle}; -1 for nothing. */
    int[] owner() {
        return owner;
    }

    /**
     * Paints one triangle.
     *
     * @param p 9 coordinates, m
     * @param n 9 components of unit normals on the outer side
     * @param values 3 positions in the ramp, 0 to 1
     * @param ramp colours
     * @param id recorded in the owner buffer where the triangle is seen
     */
    void triangle(double[] p, double[] n, double[] values, int[] ramp, int id) {
        for (int i = 0; i < 3; i++) {
            view.project(p[3 * i], p[3 * i + 1], p[3 * i + 2], scratch);
            System.arraycopy(scratch, 0, corners, 3 * i, 3);
        }
        double x0 = corners[0];
        double y0 = corners[1];
        double x1 = corners[3];
        double y1 = corners[4];
        double x2 = corners[6];
        double y2 = corners[7];
        double area = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
        if (Math.abs(area) < 1e-9) {
            return;
        }
        double inverse = 1 / area;
        int left = Math.max(0, (int) Math.ceil(Math.min(x0, Math.min(x1, x2)) - 0.5));
        int right = Math.min(width - 1, (int) Math.floor(Math.max(x0, Math.max(x1, x2)) - 0.5));
        int top = Math.max(0, (int) Math.ceil(Math.min(y0, Math.min(y1, y2)) - 0.5));
        int bottom = Math.min(height - 1, (int) Math.floor(Math.max(y0, Math.max(y1, y2)) - 0.5));
        // Barycentric coordinates are linear in the pixel; so is everything interpolated from them.
        double ax = (y1 - y2) * inverse;
        double ay = (x2 - x1) * inverse;
        double bx = (y2 - y0) * inverse;
        double by = (x0 - x2) * inverse;
        double[] toward = view.toward();
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                double dx = x + 0.5 - x2;
                double dy = y + 0.5 - y2;
                double a = ax * dx + ay * dy;
                double b = bx * dx + by * dy;
                double c = 1 - a - b;
                if (a < -1e-9 || b < -1e-9 || c < -1e-9) {
                    continue;
                }
                float z = (float) (a * corners[2] + b * corners[5] + c * corners[8]);
                int at = y * width + x;
                if (z >= depth[at]) {
                    continue;
                }
                depth[at] = z;
                owner[at] = id;
                double nx = a * n[0] + b * n[3] + c * n[6];
                double ny = a * n[1] + b * n[4] + c * n[7];
                double nz = a * n[2] + b * n[5] + c * n[8];
                double value = a * values[0] + b * values[1] + c * values[2];
                int step = (int) (Math.clamp(value, 0, 1) * (Palette.STEPS - 1) + 0.5);
                colour[at] = shade(ramp[step], nx, ny, nz, toward);
            }
        }
    }

    /** Soft two-sided light: a key, a share from the sky, and a darker, cooler inside. */
    private int shade(int rgb, double nx, double ny, double nz, double[] toward) {
        double facing = nx * toward[0] + ny * toward[1] + nz * toward[2];
        boolean inside = facing < 0;
        double side = inside ? -1 : 1;
        double lambert = Math.max(0, side * (nx * key[0] + ny * key[1] + nz * key[2]));
        double sky = 0.5 + 0.5 * side * nz;
        double light = Math.min(1, 0.72 + 0.30 * lambert + 0.09 * sky);
        double tint = inside ? 0.88 : 1;
        int r = (int) ((rgb >> 16 & 255) * light * tint + 0.5);
        int g = (int) ((rgb >> 8 & 255) * light * tint + 0.5);
        int b = (int) ((rgb & 255) * light * (inside ? 0.91 : 1) + 0.5);
        return 0xff000000 | Math.min(255, r) << 16 | Math.min(255, g) << 8 | Math.min(255, b);
    }

    /** How a line fares behind surfaces. */
    enum Behind {
        /** Not drawn. */
        HIDDEN,
        /** Dashed and faint. */
        DASHED,
        /** Drawn all the same. */
        SEEN
    }

    /**
     * Draws a line of round-ended pen.
     *
     * @param a 3 coordinates of one end, m
     * @param b of the other
     * @param pen width in picture pixels
     * @param argb colour; its alpha is how much it covers
     * @param bias how far behind a surface it may lie and still be seen, m
     * @param behind what becomes of the parts further behind
     */
    void line(double[] a, double[] b, double pen, int argb, double bias, Behind behind) {
        view.project(a[0], a[1], a[2], scratch);
        double x0 = scratch[0];
        double y0 = scratch[1];
        double z0 = scratch[2];
        view.project(b[0], b[1], b[2], scratch);
        double x1 = scratch[0];
        double y1 = scratch[1];
        double z1 = scratch[2];
        double half = pen * SUPERSAMPLING / 2;
        double dx = x1 - x0;
        double dy = y1 - y0;
        double square = Math.max(dx * dx + dy * dy, 1e-12);
        int left = Math.max(0, (int) Math.floor(Math.min(x0, x1) - half));
        int right = Math.min(width - 1, (int) Math.ceil(Math.max(x0, x1) + half));
        int top = Math.max(0, (int) Math.floor(Math.min(y0, y1) - half));
        int bottom = Math.min(height - 1, (int) Math.ceil(Math.max(y0, y1) + half));
        int alpha = argb >>> 24;
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                double px = x + 0.5 - x0;
                double py = y + 0.5 - y0;
                double s = Math.clamp((px * dx + py * dy) / square, 0, 1);
                double ex = px - s * dx;
                double ey = py - s * dy;
                if (ex * ex + ey * ey > half * half) {
                    continue;
                }
                int at = y * width + x;
                double z = z0 + s * (z1 - z0);
                int cover = alpha;
                if (z > depth[at] + bias) {
                    if (behind == Behind.HIDDEN) {
                        continue;
                    }
                    if (behind == Behind.DASHED) {
                        // Dashes stand still in the picture, so that short pieces of one line join up.
                        if (Math.floorMod(x + y, 12 * SUPERSAMPLING) > 6 * SUPERSAMPLING) {
                            continue;
                        }
                        cover = alpha * 2 / 5;
                    }
                }
                colour[at] = over(colour[at], argb, cover);
            }
        }
    }

    /** {@code top} laid over {@code under} with the given cover, 0 to 255; anything drawn makes the pixel opaque enough. */
    static int over(int under, int top, int cover) {
        int back = under >>> 24;
        if (back == 0) {
            return cover << 24 | top & 0xffffff;
        }
        int r = mix(under >> 16 & 255, top >> 16 & 255, cover);
        int g = mix(under >> 8 & 255, top >> 8 & 255, cover);
        int b = mix(under & 255, top & 255, cover);
        return Math.max(back, cover) << 24 | r << 16 | g << 8 | b;
    }

    private static int mix(int from, int to, int share) {
        return from + (to - from) * share / 255;
    }
}
