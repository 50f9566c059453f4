// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.Arrays;

/**
 * A closed outline without holes, counter-clockwise, its last corner joined to the first. Corners that lie on a straight
 * line between their neighbours are left out.
 *
 * @param x along the roll, m
 * @param y across the roll, m
 */
public record Outline(double[] x, double[] y) {
    private static final double SMALL = 1e-12;

    /** Takes over the corners; a clockwise outline is turned round. */
    public Outline {
        if (x.length != y.length) {
            throw new NestException("an outline has " + x.length + " x and " + y.length + " y");
        }
        double scale = square(extent(x)) + square(extent(y));
        int[] kept = new int[x.length];
        int n = 0;
        for (int i = 0; i < x.length; i++) {
            kept[n++] = i;
        }
        boolean changed = true;
        while (changed && n > 3) {
            changed = false;
            for (int i = 0; i < n && n > 3; i++) {
                int a = kept[(i + n - 1) % n];
                int b = kept[i];
                int c = kept[(i + 1) % n];
                if (Math.abs(cross(x, y, a, b, c)) <= SMALL * scale) {
                    System.arraycopy(kept, i + 1, kept, i, n - i - 1);
                    n--;
                    changed = true;
                }
            }
        }
        double[] cleanX = new double[n];
        double[] cleanY = new double[n];
        for (int i = 0; i < n; i++) {
            cleanX[i] = x[kept[i]];
            cleanY[i] = y[kept[i]];
        }
        double area = area(cleanX, cleanY);
        if (n < 3 || Math.abs(area) <= SMALL * scale) {
            throw new NestException("an outline encloses no area");
        }
        if (area < 0) {
            reverse(cleanX);
            reverse(cleanY);
        }
        x = cleanX;
        y = cleanY;
        refuseCrossings(x, y);
    }

    /** Corners one after the other: x, y, x, y. */
    public static Outline of(double... corners) {
        double[] x = new double[corners.length / 2];
        double[] y = new double[corners.length / 2];
        for (int i = 0; i < x.length; i++) {
            x[i] = corners[2 * i];
            y[i] = corners[2 * i + 1];
        }
        return new Outline(x, y);
    }

    /** Number of corners. */
    public int corners() {
        return x.length;
    }

    /** Enclosed area, m². */
    public double area() {
        return area(x, y);
    }

    /** Extent along the roll, m. */
    public double length() {
        return extent(x);
    }

    /** Extent across the roll, m. */
    public double width() {
        return extent(y);
    }

    /** The outline moved. */
    public Outline moved(double byX, double byY) {
        return new Outline(
                Arrays.stream(x).map(v -> v + byX).toArray(),
                Arrays.stream(y).map(v -> v + byY).toArray());
    }

    /** The outline moved so that its least x and y are nought. */
    public Outline atOrigin() {
        return moved(-Arrays.stream(x).min().orElse(0), -Arrays.stream(y).min().orElse(0));
    }

    /** The outline turned counter-clockwise by quarters of a turn, exactly. */
    public Outline turned(int quarters) {
        double[] u = x.clone();
        double[] v = y.clone();
        for (int q = 0; q < Math.floorMod(quarters, 4); q++) {
            for (int i = 0; i < u.length; i++) {
                double old = u[i];
                u[i] = -v[i];
                v[i] = old;
            }
        }
        return new Outline(u, v);
    }

    private static void refuseCrossings(double[] x, double[] y) {
        int n = x.length;
        for (int i = 0; i < n; i++) {
            int i2 = (i + 1) % n;
            for (int j = i + 2; j < n; j++) {
                int j2 = (j + 1) % n;
                if (j2 != i
                        && cross(x, y, i, i2, j) * cross(x, y, i, i2, j2) < 0
                        && cross(x, y, j, j2, i) * cross(x, y, j, j2, i2) < 0) {
                    throw new NestException(
                            "an outline crosses itself near (" + x[i] + ", " + y[i] + ") m; split the pattern there");
                }
            }
        }
    }

    private static double cross(double[] x, double[] y, int a, int b, int c) {
        return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
    }

    private static double area(double[] x, double[] y) {
        double twice = 0;
        for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
            twice += x[j] * y[i] - x[i] * y[j];
        }
        return twice / 2;
    }

    private static double extent(double[] values) {
        return Arrays.stream(values).max().orElse(0)
                - Arrays.stream(values).min().orElse(0);
    }

    private static double square(double v) {
        return v * v;
    }

    private static void reverse(double[] values) {
        for (int i = 0, j = values.length - 1; i < j; i++, j--) {
            double v = values[i];
            values[i] = values[j];
            values[j] = v;
        }
    }
}
