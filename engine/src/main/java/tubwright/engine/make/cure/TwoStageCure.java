// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/**
 * The law of amine-cured epoxies with a change of mechanism (Lee, Loos and Springer 1982): up to the change
 * dα/dt = (k₁ + k₂ α)(1 − α)(B − α), beyond it dα/dt = k₃ (1 − α), kᵢ = Aᵢ exp(−Eᵢ/RT). It jumps at the change, as
 * published; what comes out negative counts as nought.
 *
 * @param a1 A₁, 1/s
 * @param e1 E₁, J/mol
 * @param a2 A₂, 1/s; may be negative
 * @param e2 E₂, J/mol
 * @param a3 A₃, 1/s
 * @param e3 E₃, J/mol
 * @param limit B
 * @param change degree of cure at which the mechanism changes
 */
public record TwoStageCure(
        double a1, double e1, double a2, double e2, double a3, double e3, double limit, double change)
        implements CureLaw {

    @Override
    public double rate(double degree, double temperature) {
        if (degree > change) {
            return Math.max(0, third(temperature) * (1 - degree));
        }
        return Math.max(0, (first(temperature) + second(temperature) * degree) * (1 - degree) * (limit - degree));
    }

    /** k₁, 1/s, at a temperature in K. */
    public double first(double temperature) {
        return a1 * CureLaw.arrhenius(e1, temperature);
    }

    /** k₂, 1/s, at a temperature in K. */
    public double second(double temperature) {
        return a2 * CureLaw.arrhenius(e2, temperature);
    }

    /** k₃, 1/s, at a temperature in K. */
    public double third(double temperature) {
        return a3 * CureLaw.arrhenius(e3, temperature);
    }
}
