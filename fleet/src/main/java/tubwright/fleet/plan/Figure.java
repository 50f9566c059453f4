// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

/**
 * A number with whatever unit was written behind it.
 *
 * @param number in that unit
 * @param unit as written; empty for a plain number
 */
record Figure(double number, String unit) {
    private static final Pattern NUMBER =
            Pattern.compile("\\s*([-+−]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+−]?\\d+)?)\\s*(.*?)\\s*");
    private static final Pattern POINT = Pattern.compile("\\(([^()]*),([^()]*)\\)");

    /** The figure of a text, if it is one. */
    static Optional<Figure> of(String text) {
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        double number = Double.parseDouble(matcher.group(1).replace('−', '-'));
        if (!matcher.group(2).isEmpty()) {
            try {
                Quantity.parse("1 " + matcher.group(2));
            } catch (QuantityException none) {
                return Optional.empty();
            }
        }
        return Optional.of(new Figure(number, matcher.group(2)));
    }

    /** Figures parted by something, where the last one's unit serves those that have none. */
    static Optional<List<Figure>> several(String text, String separator) {
        List<Figure> figures = new ArrayList<>();
        for (String part : text.split(separator, -1)) {
            Optional<Figure> each = of(part);
            if (each.isEmpty()) {
                return Optional.empty();
            }
            figures.add(each.get());
        }
        String unit = figures.getLast().unit;
        figures.replaceAll(f -> f.unit.isEmpty() ? new Figure(f.number, unit) : f);
        return Optional.of(figures);
    }

    /** Points as a design has them, {@code (0, 140) (130, 140) mm}, m. */
    static List<double[]> points(String text) {
        String unit = text.substring(text.lastIndexOf(')') + 1).strip();
        List<double[]> points = new ArrayList<>();
        Matcher matcher = POINT.matcher(text);
        while (matcher.find()) {
            points.add(new double[] {metres(matcher.group(1), unit), metres(matcher.group(2), unit)});
        }
        return points;
    }

    private static double metres(String text, String unit) {
        Figure figure = of(text).orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is no length"));
        return new Figure(figure.number, figure.unit.isEmpty() ? unit : figure.unit).si();
    }

    /** Points as a design has them. */
    static String points(List<double[]> metres) {
        StringBuilder text = new StringBuilder();
        for (double[] p : metres) {
            text.append(String.format(Locale.ROOT, "(%s, %s) ", millimetres(p[0]), millimetres(p[1])));
        }
        return text + "mm";
    }

    /** A length in mm, to the nanometre. */
    static String millimetres(double metres) {
        return plain(Math.round(metres * 1e9) / 1e6);
    }

    double si() {
        return unit.isEmpty()
                ? number
                : Quantity.parse(plain(number) + " " + unit).si();
    }

    /** In another unit of its kind. */
    Figure in(String other) {
        if (other.equals(unit) || unit.isEmpty() && other.isEmpty()) {
            return this;
        }
        return new Figure(Quantity.parse(plain(number) + " " + unit).in(other), other);
    }

    /** Whether it measures the same kind of thing. */
    boolean like(Figure other) {
        try {
            in(other.unit);
            return unit.isEmpty() == other.unit.isEmpty();
        } catch (RuntimeException unlike) {
            return false;
        }
    }

    /** As it would be written, to nine digits. */
    @Override
    public String toString() {
        return unit.isEmpty() ? plain(number) : plain(number) + " " + unit;
    }

    static String plain(double number) {
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(9)).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
