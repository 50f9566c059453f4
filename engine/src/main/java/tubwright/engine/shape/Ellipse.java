// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/**
 * An ellipse with axes along u and v; a circle when both half axes are equal. Distance by Newton iteration on the foot of
 * the perpendicular, safeguarded by bisection (after Eberly, "Distance from a point to an ellipse", 2013; from memory).
 *
 * @param u centre, m
 * @param v centre, m
 * @param a half axis along u, m
 * @param b half axis along v, m
 */
public record Ellipse(double u, double v, double a, double b) implements Contour {
    /** @throws IllegalArgumentException when a value is not finite or a half axis is not positive */
    public Ellipse {
        if (!Double.isFinite(u) || !Double.isFinite(v) || !(a > 0) || !(b > 0) || Double.isInfinite(a + b)) {
            throw new IllegalArgumentException("an ellipse needs a finite centre and half axes greater than zero");
        }
    }

    @Override
    public double distance(double pu, double pv) {
        if (a == b) {
            return Math.sqrt((pu - u) * (pu - u) + (pv - v) * (pv - v)) - a;
        }
        return a > b
                ? distance(a, b, Math.abs(pu - u), Math.abs(pv - v))
                : distance(b, a, Math.abs(pv - v), Math.abs(pu - u));
    }

    /** First quadrant, long half axis first. */
    private static double distance(double a, double b, double p, double q) {
        double level = (p / a) * (p / a) + (q / b) * (q / b) - 1;
        double x;
        double y;
        if (q <= 1e-14 * b) {
            double c = (a * a - b * b) / a;
            if (p < c) {
                x = a * a * p / (a * a - b * b);
                y = b * Math.sqrt(Math.max(0, 1 - x / a * (x / a)));
            } else {
                x = a;
                y = 0;
            }
        } else {
            // Root of (a p / (t + a²))² + (b q / (t + b²))² = 1 in t > -b²; the left side falls monotonically.
            double low = -b * b + b * q;
            double high = -b * b + Math.hypot(a * p, b * q);
            double t = Math.max(low, Math.min(high, 0));
            for (int i = 0; i < 100; i++) {
                double f1 = a * p / (t + a * a);
                double f2 = b * q / (t + b * b);
                double g = f1 * f1 + f2 * f2 - 1;
                if (g > 0) {
                    low = t;
                } else {
                    high = t;
                }
                double slope = -2 * (f1 * f1 / (t + a * a) + f2 * f2 / (t + b * b));
                double next = t - g / slope;
                if (!(next > low && next < high)) {
                    next = (low + high) / 2;
                }
                if (Math.abs(next - t) <= 1e-15 * a * a || next == t) {
                    t = next;
                    break;
                }
                t = next;
            }
            x = a * a * p / (t + a * a);
            y = b * b * q / (t + b * b);
        }
        double d = Math.sqrt((x - p) * (x - p) + (y - q) * (y - q));
        return level < 0 ? -d : d;
    }

    @Override
    public double[] bounds() {
        return new double[] {u - a, u + a, v - b, v + b};
    }

    @Override
    public double area() {
        return Math.PI * a * b;
    }

    @Override
    public double perimeter() {
        // Periodic integrand: the trapezoidal rule converges exponentially.
        int n = 512;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double t = 2 * Math.PI * i / n;
            sum += Math.hypot(a * Math.sin(t), b * Math.cos(t));
        }
        return sum * 2 * Math.PI / n;
    }

    @Override
    public double[] points(double step) {
        int n = Math.max(64, (int) Math.ceil(2 * Math.PI * Math.max(a, b) / step));
        double[] points = new double[2 * n];
        for (int i = 0; i < n; i++) {
            points[2 * i] = u + a * Math.cos(2 * Math.PI * i / n);
            points[2 * i + 1] = v + b * Math.sin(2 * Math.PI * i / n);
        }
        return points;
    }

    @Override
    public double[] sharpCorners() {
        return new double[0];
    }

    @Override
    public double smallestRadius() {
        return Math.min(a * a / b, b * b / a);
    }

    @Override
    public Contour mirroredInV() {
        return new Ellipse(u, -v, a, b);
    }

    @Override
    public Contour mirroredInU() {
        return new Ellipse(-u, v, a, b);
    }
}
