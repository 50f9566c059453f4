// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

/**
 * Powers of the base units a unit is made of: metre, kilogram, second, kelvin, radian, mole.
 *
 * <p>The radian counts as a base unit here (in SI it is the number one) so that a torsional stiffness in N·m/rad and a
 * moment in N·m are told apart.
 */
record Exponents(int length, int mass, int time, int temperature, int angle, int amount) {
    static final Exponents NONE = new Exponents(0, 0, 0, 0, 0);

    /** Without moles, as nearly everything is. */
    Exponents(int length, int mass, int time, int temperature, int angle) {
        this(length, mass, time, temperature, angle, 0);
    }

    Exponents times(Exponents other, int power) {
        return new Exponents(
                length + power * other.length,
                mass + power * other.mass,
                time + power * other.time,
                temperature + power * other.temperature,
                angle + power * other.angle,
                amount + power * other.amount);
    }

    Exponents power(int power) {
        return NONE.times(this, power);
    }
}
