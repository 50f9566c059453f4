// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a reader likes them: so many significant digits, an exponent only where zeros would pile up. */
public final class QuantityFormat {
    private QuantityFormat() {}

    /** The number with so many significant digits, rounded half up, trailing zeros after the point kept. */
    public static String significant(double number, int digits) {
        if (digits < 1) {
            throw new IllegalArgumentException("at least one significant digit is needed, not " + digits);
        }
        if (!Double.isFinite(number)) {
            return Double.isNaN(number) ? "not a number" : number > 0 ? "infinite" : "-infinite";
        }
        if (number == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(digits, RoundingMode.HALF_UP));
        int leading = rounded.precision() - rounded.scale() - 1;
        if (leading < -4 || leading > 8) {
            BigDecimal mantissa = rounded.scaleByPowerOfTen(-leading);
            return mantissa.setScale(digits - 1, RoundingMode.HALF_UP).toPlainString() + "e" + leading;
        }
        return rounded.setScale(Math.max(0, digits - 1 - leading), RoundingMode.HALF_UP)
                .toPlainString();
    }

    static String format(double number, Unit unit, int digits) {
        String text = significant(number, digits);
        if (unit.text().isEmpty() || unit.text().equals("1")) {
            return text;
        }
        if (unit.text().startsWith("1/")) {
            return text + " " + unit.text().substring(1);
        }
        if (unit.text().startsWith("1e-6/") && !text.contains("e")) {
            return text + (number == 0 ? " " : "e-6 ") + unit.text().substring(4);
        }
        return text + " " + unit.text();
    }

    /** The usual SI unit of the quantity's dimension whose number lies best between 1 and 1000. */
    static Unit readable(Quantity quantity) {
        Unit best = Unit.of(quantity.dimension().usualUnits().getFirst());
        if (quantity.si() == 0 || quantity.dimension() == Dimension.DIMENSIONLESS) {
            return best;
        }
        double bestDistance = distance(quantity.in(best));
        for (String name : quantity.dimension().usualUnits()) {
            Unit unit = Unit.of(name);
            double distance = distance(quantity.in(unit));
            if (!isInchPound(name) && distance < bestDistance - 1e-12) {
                best = unit;
                bestDistance = distance;
            }
        }
        return best;
    }

    private static boolean isInchPound(String name) {
        return name.matches(".*(in|ft|lb|psi|ksi|Msi|°F|oz|mph).*") && !name.matches(".*min.*");
    }

    /** Decades outside 1 .. 1000. */
    private static double distance(double number) {
        double decades = Math.log10(Math.abs(number));
        return decades < 0 ? -decades : Math.max(0, decades - 3);
    }
}
