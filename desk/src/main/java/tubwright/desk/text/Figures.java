// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.text;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text, the same on every machine: point for decimals, a given mark between groups of three digits. */
public final class Figures {
    /** Narrow no-break space, the mark between groups of three digits on a page. */
    public static final String NARROW_SPACE = "\u202f";

    private Figures() {}

    /** {@code value} with {@code decimals} digits after the point, groups of three parted by {@code mark}. */
    public static String fixed(double value, int decimals, String mark) {
        if (Double.isNaN(value)) {
            return "–";
        }
        if (Double.isInfinite(value)) {
            return value > 0 ? "∞" : "−∞";
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        String digits = rounded.abs().toPlainString();
        String sign = rounded.signum() < 0 ? "−" : "";
        int point = digits.indexOf('.');
        String whole = point < 0 ? digits : digits.substring(0, point);
        String rest = point < 0 ? "" : digits.substring(point);
        StringBuilder grouped = new StringBuilder();
        for (int i = 0; i < whole.length(); i++) {
            // Four digits stay together, as ISO 80000-1 allows: 1250, but 12 500.
            if (i > 0 && (whole.length() - i) % 3 == 0 && whole.length() > 4) {
                grouped.append(mark);
            }
            grouped.append(whole.charAt(i));
        }
        return sign + grouped + rest;
    }

    /** {@code value} to {@code digits} significant digits (never fewer digits than its whole part has). */
    public static String significant(double value, int digits, String mark) {
        return fixed(value, decimalsFor(value, digits), mark);
    }

    /**
     * Digits after the point that show {@code value} to {@code digits} significant digits; 0 for large numbers.
     *
     * @param value any finite number
     * @param digits significant digits wanted, at least 1
     */
    public static int decimalsFor(double value, int digits) {
        if (value == 0 || !Double.isFinite(value)) {
            return 0;
        }
        int magnitude = (int) Math.floor(Math.log10(Math.abs(value)));
        return Math.clamp(digits - 1L - magnitude, 0, 12);
    }

    /**
     * A value and the half-width of its error, both rounded to where the error begins to matter: two significant digits
     * of the error, and never more than five of the value. An error that is NaN leaves the value alone, at four digits.
     */
    public static String plusMinus(double value, double error, String mark) {
        if (!Double.isFinite(error)) {
            return significant(value, 4, mark);
        }
        int decimals = error == 0 ? decimalsFor(value, 5) : Math.min(decimalsFor(error, 2), decimalsFor(value, 5));
        return fixed(value, decimals, mark) + " ± " + fixed(error, decimals, mark);
    }

    /** A share between 0 and 1 as a percentage with one digit after the point below 10 %, none above. */
    public static String percent(double share) {
        double percent = 100 * share;
        return fixed(percent, Math.abs(percent) < 9.95 ? 1 : 0, "") + " %";
    }

    /** Seconds as a person says them: {@code 0.4 s}, {@code 12 s}, {@code 3 min 05 s}. */
    public static String elapsed(double seconds) {
        if (seconds < 9.95) {
            return fixed(seconds, 1, "") + " s";
        }
        long whole = Math.round(seconds);
        if (whole < 60) {
            return whole + " s";
        }
        return whole / 60 + " min " + (whole % 60 < 10 ? "0" : "") + whole % 60 + " s";
    }
}
