// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.function.DoubleUnaryOperator;

/** Gauss-Legendre quadrature of smooth pieces; nodes by Newton iteration on the Legendre recurrence. */
final class Quadrature {
    private static final int N = 12;
    private static final double[] NODE = new double[N];
    private static final double[] WEIGHT = new double[N];

    static {
        for (int i = 0; i < N; i++) {
            double z = Math.cos(Math.PI * (i + 0.75) / (N + 0.5));
            double slope = 1;
            for (int it = 0; it < 50; it++) {
                double p0 = 1;
                double p1 = 0;
                for (int j = 0; j < N; j++) {
                    double p2 = p1;
                    p1 = p0;
                    p0 = ((2 * j + 1) * z * p1 - j * p2) / (j + 1);
                }
                slope = N * (z * p0 - p1) / (z * z - 1);
                double step = p0 / slope;
                z -= step;
                if (Math.abs(step) < 1e-15) {
                    break;
                }
            }
            NODE[i] = z;
            WEIGHT[i] = 2 / ((1 - z * z) * slope * slope);
        }
    }

    private Quadrature() {}

    static double integrate(DoubleUnaryOperator f, double from, double to) {
        double sum = 0;
        double half = (to - from) / 2;
        for (int i = 0; i < N; i++) {
            sum += WEIGHT[i] * f.applyAsDouble(from + half * (1 + NODE[i]));
        }
        return sum * half;
    }
}
