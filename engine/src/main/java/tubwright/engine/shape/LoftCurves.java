// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;

/**
 * Piecewise cubics in x of every corner's y, z and radius. Smooth lofts take the slopes of Steffen, "A simple method for
 * monotonic interpolation in one dimension", Astronomy and Astrophysics 239 (1990) 443-450, equations 6 to 11: continuous
 * slope, extrema only at frames, and a parabola wherever that is safe; straight lines are reproduced exactly.
 */
final class LoftCurves {
    /** Stations of the frames. */
    final double[] x;
    /** Numbers per frame: 3 per corner, y, z, radius. */
    final int width;
    /** Values at the frames. */
    private final double[][] value;
    /** Slopes at the rear of interval start and front of interval end. */
    private final double[][] slopeFrom;

    private final double[][] slopeTo;

    LoftCurves(List<Frame> frames, Loft loft) {
        int m = frames.size();
        int n = frames.getFirst().corners().size();
        width = 3 * n;
        x = new double[m];
        value = new double[m][width];
        for (int i = 0; i < m; i++) {
            x[i] = frames.get(i).x();
            for (int k = 0; k < n; k++) {
                OutlineCorner c = frames.get(i).corners().get(k);
                value[i][3 * k] = c.y();
                value[i][3 * k + 1] = c.z();
                value[i][3 * k + 2] = c.radius();
            }
        }
        slopeFrom = new double[m - 1][width];
        slopeTo = new double[m - 1][width];
        for (int j = 0; j < width; j++) {
            double[] secant = new double[m - 1];
            for (int i = 0; i < m - 1; i++) {
                secant[i] = (value[i + 1][j] - value[i][j]) / (x[i + 1] - x[i]);
            }
            for (int i = 0; i < m - 1; i++) {
                boolean smooth = loft == Loft.SMOOTH;
                slopeFrom[i][j] = smooth ? steffen(secant, i) : secant[i];
                slopeTo[i][j] = smooth ? steffen(secant, i + 1) : secant[i];
            }
        }
    }

    private double steffen(double[] s, int i) {
        int last = s.length;
        if (last == 1) {
            return s[0];
        }
        if (i == 0) {
            double ratio = (x[1] - x[0]) / (x[2] - x[0]);
            return end(s[0] * (1 + ratio) - s[1] * ratio, s[0]);
        }
        if (i == last) {
            double ratio = (x[last] - x[last - 1]) / (x[last] - x[last - 2]);
            return end(s[last - 1] * (1 + ratio) - s[last - 2] * ratio, s[last - 1]);
        }
        double before = x[i] - x[i - 1];
        double after = x[i + 1] - x[i];
        double parabola = (s[i - 1] * after + s[i] * before) / (before + after);
        return (Math.signum(s[i - 1]) + Math.signum(s[i]))
                * Math.min(Math.min(Math.abs(s[i - 1]), Math.abs(s[i])), 0.5 * Math.abs(parabola));
    }

    private static double end(double parabola, double secant) {
        if (parabola * secant <= 0) {
            return 0;
        }
        return Math.abs(parabola) > 2 * Math.abs(secant) ? 2 * secant : parabola;
    }

    /** Interval that holds x; at a frame the one behind it, at the rear end the last. */
    int interval(double at) {
        int i = 0;
        while (i < x.length - 2 && at >= x[i + 1]) {
            i++;
        }
        return i;
    }

    /** Value of number j at x, by the cubic of an interval. */
    double value(int interval, int j, double at) {
        double h = x[interval + 1] - x[interval];
        double u = (at - x[interval]) / h;
        double w = 1 - u;
        return value[interval][j] * (1 + 2 * u) * w * w
                + value[interval + 1][j] * (3 - 2 * u) * u * u
                + h * u * w * (slopeFrom[interval][j] * w - slopeTo[interval][j] * u);
    }

    /** Slope of number j in x, by the cubic of an interval. */
    double slope(int interval, int j, double at) {
        double h = x[interval + 1] - x[interval];
        double u = (at - x[interval]) / h;
        return 6 * u * (1 - u) * (value[interval + 1][j] - value[interval][j]) / h
                + slopeFrom[interval][j] * (1 - u) * (1 - 3 * u)
                + slopeTo[interval][j] * u * (3 * u - 2);
    }
}
