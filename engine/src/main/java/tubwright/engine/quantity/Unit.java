// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

/**
 * A unit of measurement, read from text such as {@code kN·m/deg}, {@code g/m²}, {@code lb/ft^3} or {@code 1e-6/K}.
 *
 * <p>The grammar: atoms with an optional prefix ({@code mm}, {@code GPa}, {@code lbf}), joined by {@code ·}, {@code *},
 * {@code .}, {@code -} or a blank (product) and {@code /} (quotient, binding the next factor only), with powers
 * {@code ²}, {@code ^2} or {@code **2} and round brackets; a factor may be a plain number. Two atoms may touch when
 * nothing else is meant ({@code Nm}).
 *
 * @param text as it will be printed
 * @param factor SI value of one of this unit
 * @param offset SI value of this unit's zero; differs from 0 only for °C and °F standing alone
 * @param exponents base units
 */
public record Unit(String text, double factor, double offset, Exponents exponents) {

    /** The number one. */
    public static final Unit ONE = new Unit("", 1, 0, Exponents.NONE);

    /**
     * Reads a unit.
     *
     * @throws QuantityException if the text is not a unit; the message names the nearest one
     */
    public static Unit of(String text) {
        return new UnitReader(text).read();
    }

    /** SI value of {@code number} of this unit; a temperature in °C or °F is a point on the scale, not a difference. */
    public double toSi(double number) {
        return number * factor + offset;
    }

    /** Inverse of {@link #toSi}. */
    public double fromSi(double si) {
        return (si - offset) / factor;
    }

    /** The same unit for differences: without the offset of °C and °F. */
    public Unit asDifference() {
        return offset == 0 ? this : new Unit(text, factor, 0, exponents);
    }

    @Override
    public String toString() {
        return text;
    }
}
