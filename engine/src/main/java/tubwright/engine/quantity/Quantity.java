// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.List;
import java.util.Optional;

/**
 * A number with what it measures.
 *
 * @param si value in SI units, angles in radians, temperatures in kelvin; finite
 * @param dimension what is measured
 */
public record Quantity(double si, Dimension dimension) {
    public Quantity {
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException(dimension.words() + " must be a finite number, not " + si);
        }
    }

    /** {@code number} of the unit written as text. */
    public static Quantity of(double number, String unit) {
        Unit read = Unit.of(unit);
        return new Quantity(read.toSi(number), dimensionOf(unit, read));
    }

    /**
     * Reads a number with its unit and takes the first dimension of those base units.
     *
     * @throws QuantityException if the text is not a quantity
     */
    public static Quantity parse(String text) {
        QuantityReader.Split split = QuantityReader.split(text, List.of());
        Unit unit = split.unit().isEmpty() ? Unit.ONE : Unit.of(split.unit());
        return new Quantity(unit.toSi(split.number()), dimensionOf(text, unit));
    }

    /**
     * Reads a number with its unit, which must be one of the dimension wanted. Pure numbers may stand without a unit.
     *
     * @throws QuantityException if the text is not a quantity or measures something else
     */
    public static Quantity parse(String text, Dimension dimension) {
        return new Quantity(QuantityReader.readSi(text, dimension), dimension);
    }

    private static Dimension dimensionOf(String text, Unit unit) {
        return Dimension.firstWith(unit.exponents())
                .orElseThrow(() -> new QuantityException(
                        text,
                        0,
                        "'" + unit.text() + "' measures nothing that is used here",
                        List.of(),
                        Optional.empty()));
    }

    /** The number in another unit of the same base units. */
    public double in(Unit unit) {
        if (!dimension.accepts(unit)) {
            throw new QuantityException(
                    unit.text(), 0, "not a unit of " + dimension.words(), dimension.usualUnits(), Optional.empty());
        }
        Unit scale = dimension == Dimension.TEMPERATURE ? unit : unit.asDifference();
        return scale.fromSi(si);
    }

    /** The number in the unit written as text. */
    public double in(String unit) {
        return in(Unit.of(unit));
    }

    /** Number and unit with so many significant digits, for instance {@code 18.2 kN·m/deg}. */
    public String format(Unit unit, int digits) {
        return QuantityFormat.format(in(unit), unit, digits);
    }

    /** As {@link #format(Unit, int)} with the unit as text. */
    public String format(String unit, int digits) {
        return format(Unit.of(unit), digits);
    }

    /** In the usual unit that keeps the number nearest to between 1 and 1000, four significant digits. */
    @Override
    public String toString() {
        return format(QuantityFormat.readable(this), 4);
    }
}
