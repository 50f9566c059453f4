// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.List;

/**
 * Where one shape may not lie beside another: the no-fit region A ⊕ (−B) as a union of convex parts (Bennell and
 * Oliveira 2008), each grown by the gap along its edges' normals, which keeps at least the gap between the shapes.
 */
final class NoFit {
    private final int[] start;
    private final double[] nx;
    private final double[] ny;
    private final double[] limit;
    private final double[] boxes;
    private final double[] vertexX;
    private final double[] vertexY;
    private final double lowX;
    private final double highX;
    private final double lowY;
    private final double highY;

    /**
     * @param fixed convex parts of the shape that lies at the origin
     * @param moving convex parts of the other
     * @param gap between them, m
     */
    NoFit(List<double[]> fixed, List<double[]> moving, double gap) {
        int parts = fixed.size() * moving.size();
        start = new int[parts + 1];
        double[][] sums = new double[parts][];
        int k = 0;
        for (double[] a : fixed) {
            for (double[] b : moving) {
                sums[k] = grown(difference(a, b), gap);
                start[k + 1] = start[k] + sums[k].length / 2;
                k++;
            }
        }
        int edges = start[parts];
        nx = new double[edges];
        ny = new double[edges];
        limit = new double[edges];
        vertexX = new double[edges];
        vertexY = new double[edges];
        boxes = new double[4 * parts];
        double minX = Double.POSITIVE_INFINITY;
        double maxX = Double.NEGATIVE_INFINITY;
        double minY = minX;
        double maxY = maxX;
        for (int p = 0; p < parts; p++) {
            double[] s = sums[p];
            int n = s.length / 2;
            double x0 = Double.POSITIVE_INFINITY;
            double x1 = Double.NEGATIVE_INFINITY;
            double y0 = x0;
            double y1 = x1;
            for (int i = 0; i < n; i++) {
                int j = (i + 1) % n;
                int e = start[p] + i;
                double dx = s[2 * j] - s[2 * i];
                double dy = s[2 * j + 1] - s[2 * i + 1];
                double l = Math.hypot(dx, dy);
                nx[e] = dy / l;
                ny[e] = -dx / l;
                limit[e] = nx[e] * s[2 * i] + ny[e] * s[2 * i + 1];
                vertexX[e] = s[2 * i];
                vertexY[e] = s[2 * i + 1];
                x0 = Math.min(x0, s[2 * i]);
                x1 = Math.max(x1, s[2 * i]);
                y0 = Math.min(y0, s[2 * i + 1]);
                y1 = Math.max(y1, s[2 * i + 1]);
            }
            boxes[4 * p] = x0;
            boxes[4 * p + 1] = x1;
            boxes[4 * p + 2] = y0;
            boxes[4 * p + 3] = y1;
            minX = Math.min(minX, x0);
            maxX = Math.max(maxX, x1);
            minY = Math.min(minY, y0);
            maxY = Math.max(maxY, y1);
        }
        lowX = minX;
        highX = maxX;
        lowY = minY;
        highY = maxY;
    }

    /** How deep the moving shape sits in the fixed one at an offset: depths of all parts added, m; nought outside. */
    double depth(double x, double y, double tolerance) {
        if (x <= lowX || x >= highX || y <= lowY || y >= highY) {
            return 0;
        }
        double sum = 0;
        int parts = start.length - 1;
        for (int p = 0; p < parts; p++) {
            if (x <= boxes[4 * p] || x >= boxes[4 * p + 1] || y <= boxes[4 * p + 2] || y >= boxes[4 * p + 3]) {
                continue;
            }
            double least = Double.POSITIVE_INFINITY;
            for (int e = start[p]; e < start[p + 1]; e++) {
                double d = limit[e] - nx[e] * x - ny[e] * y;
                if (d <= tolerance) {
                    least = 0;
                    break;
                }
                least = Math.min(least, d);
            }
            sum += least;
        }
        return sum;
    }

    /** Number of corners of all parts; touching offsets are among them. */
    int corners() {
        return vertexX.length;
    }

    double cornerX(int i) {
        return vertexX[i];
    }

    double cornerY(int i) {
        return vertexY[i];
    }

    /** Writes the open intervals of x that are forbidden at a height y; returns how many numbers were written. */
    int forbidden(double y, double shift, double tolerance, double[] into, int at) {
        int end = at;
        if (y <= lowY + tolerance || y >= highY - tolerance) {
            return end;
        }
        for (int p = 0; p + 1 < start.length; p++) {
            if (y <= boxes[4 * p + 2] + tolerance || y >= boxes[4 * p + 3] - tolerance) {
                continue;
            }
            double low = Double.NEGATIVE_INFINITY;
            double high = Double.POSITIVE_INFINITY;
            for (int e = start[p]; e < start[p + 1]; e++) {
                double rest = limit[e] - ny[e] * y;
                if (nx[e] > 1e-12) {
                    high = Math.min(high, rest / nx[e]);
                } else if (nx[e] < -1e-12) {
                    low = Math.max(low, rest / nx[e]);
                } else if (rest <= tolerance) {
                    high = Double.NEGATIVE_INFINITY;
                }
            }
            if (high - low > tolerance) {
                into[end++] = low + shift;
                into[end++] = high + shift;
            }
        }
        return end;
    }

    int parts() {
        return start.length - 1;
    }

    /** A ⊕ (−B) of convex polygons by merging edges by direction. */
    private static double[] difference(double[] a, double[] b) {
        int n = a.length / 2;
        int m = b.length / 2;
        double[] c = new double[2 * m];
        for (int i = 0; i < 2 * m; i++) {
            c[i] = -b[i];
        }
        int i = lowest(a);
        int j = lowest(c);
        double[] sum = new double[2 * (n + m)];
        int k = 0;
        int doneA = 0;
        int doneB = 0;
        while (doneA < n || doneB < m) {
            double px = a[2 * i] + c[2 * j];
            double py = a[2 * i + 1] + c[2 * j + 1];
            sum[2 * k] = px;
            sum[2 * k + 1] = py;
            k++;
            int i2 = (i + 1) % n;
            int j2 = (j + 1) % m;
            double turn = turn(
                    a[2 * i2] - a[2 * i],
                    a[2 * i2 + 1] - a[2 * i + 1],
                    c[2 * j2] - c[2 * j],
                    c[2 * j2 + 1] - c[2 * j + 1]);
            boolean first = doneB >= m || doneA < n && turn >= 0;
            boolean second = doneA >= n || doneB < m && turn <= 0;
            if (first) {
                i = i2;
                doneA++;
            }
            if (second) {
                j = j2;
                doneB++;
            }
        }
        return cleaned(sum, k);
    }

    /** Positive if the first direction comes before the second, counted counter-clockwise from +x. */
    private static double turn(double ax, double ay, double bx, double by) {
        boolean lateA = ay < 0 || ay == 0 && ax < 0;
        boolean lateB = by < 0 || by == 0 && bx < 0;
        if (lateA != lateB) {
            return lateA ? -1 : 1;
        }
        return ax * by - ay * bx;
    }

    private static int lowest(double[] p) {
        int best = 0;
        for (int i = 1; i < p.length / 2; i++) {
            if (p[2 * i + 1] < p[2 * best + 1] || p[2 * i + 1] == p[2 * best + 1] && p[2 * i] < p[2 * best]) {
                best = i;
            }
        }
        return best;
    }

    /** Without edges too short to have a direction. */
    private static double[] cleaned(double[] p, int n) {
        double size = 0;
        for (int i = 0; i < n; i++) {
            size = Math.max(size, Math.hypot(p[2 * i] - p[0], p[2 * i + 1] - p[1]));
        }
        double[] result = new double[2 * n];
        int k = 0;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            if (Math.hypot(p[2 * j] - p[2 * i], p[2 * j + 1] - p[2 * i + 1]) > 1e-12 * size) {
                result[2 * k] = p[2 * i];
                result[2 * k + 1] = p[2 * i + 1];
                k++;
            }
        }
        return java.util.Arrays.copyOf(result, 2 * k);
    }

    /** Edges moved outward by the gap, corners where they meet then. */
    private static double[] grown(double[] p, double gap) {
        if (gap == 0) {
            return p;
        }
        int n = p.length / 2;
        double[] result = new double[2 * n];
        for (int i = 0; i < n; i++) {
            int h = (i + n - 1) % n;
            int j = (i + 1) % n;
            double ax = p[2 * i] - p[2 * h];
            double ay = p[2 * i + 1] - p[2 * h + 1];
            double bx = p[2 * j] - p[2 * i];
            double by = p[2 * j + 1] - p[2 * i + 1];
            double la = Math.hypot(ax, ay);
            double lb = Math.hypot(bx, by);
            double ux = ay / la;
            double uy = -ax / la;
            double vx = by / lb;
            double vy = -bx / lb;
            double shared = gap / (1 + ux * vx + uy * vy);
            result[2 * i] = p[2 * i] + shared * (ux + vx);
            result[2 * i + 1] = p[2 * i + 1] + shared * (uy + vy);
        }
        return result;
    }
}
