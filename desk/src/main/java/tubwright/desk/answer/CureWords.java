// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Figures.fixed;

import java.util.OptionalDouble;
import tubwright.engine.make.cure.CureCheck;
import tubwright.engine.make.cure.CureShop;

/** Cures in words. */
public final class CureWords {
    private CureWords() {}

    /** How parts are cured, in a sentence or two. */
    public static String shop(CureShop shop) {
        return "Moulds of " + shop.tool().description() + ", " + fixed(1e3 * shop.toolThickness(), 0, "") + " mm; "
                + fixed(shop.toolSide(), 0, "") + " W/m²K at the mould, " + fixed(shop.bagSide(), 0, "")
                + " at the bag. Solid laminates by \"" + shop.solid().name() + "\", over core by \""
                + shop.overCore().name() + "\"" + order(shop.order()) + ". Prepreg stored at "
                + fixed(100 * shop.humidity(), 0, "") + " % relative humidity.";
    }

    private static String order(CureShop.Order order) {
        return switch (order) {
            case THREE_CURES -> ": outer skin first at full pressure, core on it, inner skin over both at low pressure";
            case ONE_SHOT -> ": skins and core at once";
        };
    }

    /** The value of a check with its unit. */
    public static String value(CureCheck check) {
        return amount(check.subject(), check.value());
    }

    /** The value of a check with its unit, in brackets where it proves nothing. */
    public static String told(CureCheck check) {
        boolean open = check.verdict() == CureCheck.Verdict.NOT_CHECKED
                && check.value().isPresent();
        return open ? "(" + value(check) + ")" : value(check);
    }

    /** The limit of a check with its unit and whether it is a floor or a ceiling; "" where there is none. */
    public static String limit(CureCheck check) {
        if (check.limit().isEmpty()) {
            return "";
        }
        String side = switch (check.subject()) {
            case PEAK, CORE -> "at most ";
            case CYCLE, DEGREE, GLASS, VOIDS -> "at least ";
        };
        return side + amount(check.subject(), check.limit());
    }

    private static String amount(CureCheck.Subject subject, OptionalDouble amount) {
        if (amount.isEmpty()) {
            return "";
        }
        double value = amount.getAsDouble();
        return switch (subject) {
            case CYCLE -> "";
            case PEAK, GLASS -> fixed(value - 273.15, 1, "") + " °C";
            case DEGREE -> fixed(value, 3, "");
            case VOIDS -> fixed(100 * value, 0, "") + " %";
            case CORE -> fixed(value * 1e-6, 2, "") + " MPa";
        };
    }

    /** An angle in degrees; "not known" where it is not. */
    public static String degrees(double angle) {
        return Double.isNaN(angle) ? "not known" : fixed(Math.toDegrees(angle), 2, "") + "°";
    }
}
