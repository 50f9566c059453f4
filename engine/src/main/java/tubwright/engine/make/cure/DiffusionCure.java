// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/**
 * An autocatalytic law that stops where the resin turns to glass and the chains can no longer find each other (Hubert,
 * Johnston, Poursartip and Nelson 2001):
 * dα/dt = A exp(−E/RT) αᵐ (1 − α)ⁿ / (1 + exp(C (α − α₀ − β T))), T in K.
 *
 * @param a A, 1/s
 * @param e E, J/mol
 * @param m power of α
 * @param n power of 1 − α
 * @param c C, sharpness of the stop
 * @param stop α₀, degree of cure at which it stops, extrapolated to 0 K
 * @param stopByTemperature β, how that degree grows with temperature, 1/K
 */
public record DiffusionCure(double a, double e, double m, double n, double c, double stop, double stopByTemperature)
        implements CureLaw {

    @Override
    public double rate(double degree, double temperature) {
        if (degree >= 1 || degree <= 0) {
            return 0;
        }
        return a
                * CureLaw.arrhenius(e, temperature)
                * Math.pow(degree, m)
                * Math.pow(1 - degree, n)
                / (1 + Math.exp(c * (degree - stop - stopByTemperature * temperature)));
    }
}
