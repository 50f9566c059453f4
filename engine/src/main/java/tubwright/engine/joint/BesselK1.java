// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/** The modified Bessel function of the second kind and first order. */
final class BesselK1 {
    private BesselK1() {}

    /**
     * e^x K1(x) for x > 0, to rounding: the integral of e^{−x (cosh t − 1)} cosh t over t > 0 (Abramowitz and Stegun 1964, eq.
     * 9.6.24) by the trapezoidal rule, which converges faster than any power here.
     */
    static double scaled(double x) {
        // Fine against the integrand's bell, which is 1/√x wide where x is large.
        double step = Math.min(1.0 / 16, 0.5 / Math.sqrt(x));
        double sum = 0.5;
        for (int i = 1; ; i++) {
            double t = i * step;
            double half = Math.sinh(t / 2);
            double term = Math.exp(-2 * x * half * half) * Math.cosh(t);
            sum += term;
            if (x * Math.sinh(t) > 1 && term < 1e-17 * sum) {
                return sum * step;
            }
        }
    }
}
