// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/** How fast a thermoset cures: the degree of cure α, 0 fresh to 1, against time at a temperature. */
public sealed interface CureLaw permits TwoStageCure, DiffusionCure {
    /**
     * Gas constant, J/(mol K), with the digits that published constants of cure are used with: the activation energies
     * were fitted to three digits, and those of the SI of 2019 would move the rates by 0.14 %.
     */
    double GAS_CONSTANT = 8.314;

    /**
     * dα/dt, 1/s; never negative.
     *
     * @param degree α, 0 to 1
     * @param temperature K
     */
    double rate(double degree, double temperature);

    /** Arrhenius' exp(−E/RT); E in J/mol, T in K. */
    static double arrhenius(double activation, double temperature) {
        return Math.exp(-activation / (GAS_CONSTANT * temperature));
    }

    /**
     * Degree of cure after a time at one temperature, by the classical fourth-order Runge–Kutta rule.
     *
     * @param start α at the beginning
     * @param temperature K
     * @param seconds how long
     */
    default double after(double start, double temperature, double seconds) {
        double degree = start;
        int steps = Math.max(200, (int) Math.ceil(seconds / 2));
        double h = seconds / steps;
        for (int i = 0; i < steps; i++) {
            degree = advanced(degree, temperature, h);
        }
        return degree;
    }

    /**
     * Time at one temperature until a degree of cure is reached, s; infinite if it is not reached in thirty days.
     *
     * @param start α at the beginning
     * @param wanted α asked for
     * @param temperature K
     */
    default double timeTo(double start, double wanted, double temperature) {
        double degree = start;
        double time = 0;
        double h = 0.5;
        while (degree < wanted) {
            double next = advanced(degree, temperature, h);
            if (next >= wanted) {
                return time + h * (wanted - degree) / (next - degree);
            }
            time += h;
            degree = next;
            if (time > 30 * 86_400.0) {
                return Double.POSITIVE_INFINITY;
            }
            h = Math.min(h * 1.001, 60);
        }
        return time;
    }

    private double advanced(double degree, double temperature, double h) {
        double k1 = rate(degree, temperature);
        double k2 = rate(degree + h / 2 * k1, temperature);
        double k3 = rate(degree + h / 2 * k2, temperature);
        double k4 = rate(degree + h * k3, temperature);
        return Math.min(1, degree + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4));
    }
}
