// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

/** Reads single values: quantities, lists of quantities, points, spans, limits, names, numbers, choices. */
final class ValueReader {
    private static final Pattern POINT = Pattern.compile("\\(([^()]*)\\)");
    private static final Pattern LIMIT = Pattern.compile("(at least|at most)\\s+(.*)", Pattern.DOTALL);
    /** A number at the start of a text, with whatever unit follows. */
    private static final Pattern NUMBER = Pattern.compile("[-+−]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+−]?\\d+)?");

    /** Between quantities of a list: a comma, or the sign of "25 x 25 x 1.6 mm". */
    private static final Pattern SEPARATOR = Pattern.compile(",|×|(?<=[\\s\\d])x(?=[\\s\\d])");

    private ValueReader() {}

    static Amount amount(Tree.Scalar scalar, String key, In in) {
        return amount(scalar, key, in.value(), in.positive());
    }

    static Amount amount(Tree.Scalar scalar, String key, Dimension dimension, boolean positive) {
        double si = quantity(scalar.text(), scalar.place(), key, dimension, positive);
        return new Amount(si, scalar.text(), scalar.place());
    }

    private static double quantity(String text, Place place, String key, In in) {
        return quantity(text, place, key, in.value(), in.positive());
    }

    private static double quantity(String text, Place place, String key, Dimension dimension, boolean positive) {
        double si = parse(text, place, key, dimension);
        if (positive && si <= 0) {
            throw new DesignError(
                    place,
                    key + ": \"" + text + "\" is not greater than zero",
                    dimension.withArticle() + " above zero is due here");
        }
        return si;
    }

    private static double parse(String text, Place place, String key, Dimension dimension) {
        if (text.strip().toLowerCase(Locale.ROOT).matches("[-+]?\\.?(inf|infinity|nan)\\b.*")) {
            throw new DesignError(
                    place,
                    key + ": \"" + text + "\" is not a finite number",
                    "write a number with a unit, for example in "
                            + dimension.usualUnits().getFirst());
        }
        try {
            return Quantity.parse(text, dimension).si();
        } catch (QuantityException e) {
            String nearest = e.nearestUnit()
                    .map(unit -> "did you mean \"" + unit + "\"? ")
                    .orElse("");
            throw new DesignError(
                    place,
                    key + ": \"" + text + "\" is not " + dimension.withArticle() + ": " + e.reason(),
                    nearest + "units that fit: " + String.join(", ", dimension.usualUnits()));
        }
    }

    static Limit limit(Tree.Scalar scalar, String key, In in) {
        Matcher matcher = LIMIT.matcher(scalar.text().strip());
        if (!matcher.matches()) {
            throw new DesignError(
                    scalar.place(),
                    key + ": \"" + scalar.text() + "\" does not say which way it binds",
                    "write \"at least ...\" or \"at most ...\" before the quantity");
        }
        double si = quantity(matcher.group(2), scalar.at(matcher.start(2)), key, in);
        return new Limit(matcher.group(1).equals("at least"), si, scalar.text(), scalar.place());
    }

    static Span span(Tree.Scalar scalar, String key, In in) {
        String[] ends = scalar.text().split("\\.\\.", -1);
        if (ends.length != 2) {
            throw new DesignError(
                    scalar.place(),
                    key + ": \"" + scalar.text() + "\" is not a span",
                    "write it as \"950 .. 1650 mm\"");
        }
        double to = parse(ends[1].strip(), scalar.at(ends[0].length() + 2), key, in.value());
        String first = ends[0].strip();
        String withUnit = NUMBER.matcher(first).matches() ? first + " " + unitOf(ends[1]) : first;
        double from = parse(withUnit, scalar.place(), key, in.value());
        if (from >= to) {
            throw new DesignError(
                    scalar.place(),
                    key + ": \"" + scalar.text() + "\" ends before it starts",
                    "the smaller end comes first");
        }
        return new Span(from, to, scalar.text(), scalar.place());
    }

    private static String unitOf(String quantity) {
        return NUMBER.matcher(quantity.strip()).replaceFirst("").strip();
    }

    static Amounts amounts(Tree.Scalar scalar, String key, In in) {
        String[] parts = SEPARATOR.split(scalar.text(), -1);
        String unit = unitOf(parts[parts.length - 1]);
        double[] si = new double[parts.length];
        Place[] places = new Place[parts.length];
        int at = 0;
        for (int i = 0; i < parts.length; i++) {
            places[i] = scalar.at(at + leading(parts[i]));
            String part = parts[i].strip();
            si[i] = quantity(NUMBER.matcher(part).matches() ? part + " " + unit : part, places[i], key, in);
            at = Math.min(scalar.text().length(), at + parts[i].length() + 1);
        }
        return new Amounts(si, places, scalar.place());
    }

    private static int leading(String text) {
        return text.length() - text.stripLeading().length();
    }

    static Points points(Tree.Scalar scalar, String key, In in) {
        String text = scalar.text();
        Matcher matcher = POINT.matcher(text);
        int lastBracket = text.lastIndexOf(')');
        String unit = text.substring(lastBracket + 1).strip();
        List<double[]> si = new ArrayList<>();
        List<Place> places = new ArrayList<>();
        int end = 0;
        while (matcher.find()) {
            Place place = scalar.at(matcher.start());
            String between = text.substring(end, matcher.start()).strip();
            String[] parts = matcher.group(1).split(",", -1);
            if (!between.isEmpty() || parts.length != 2) {
                throw notPoints(
                        between.isEmpty() ? place : scalar.at(end), key, between.isEmpty() ? matcher.group() : between);
            }
            double[] point = new double[2];
            for (int i = 0; i < 2; i++) {
                String part = parts[i].strip();
                if (unit.isEmpty() && NUMBER.matcher(part).matches()) {
                    throw new DesignError(
                            scalar.at(lastBracket + 1),
                            key + ": the unit is missing behind the last point",
                            "write it once, there: \"(0, 140) (130, 140) (150, 330) mm\"");
                }
                point[i] = parse(NUMBER.matcher(part).matches() ? part + " " + unit : part, place, key, in.value());
            }
            si.add(point);
            places.add(place);
            end = matcher.end();
        }
        if (si.isEmpty() || end != lastBracket + 1) {
            throw notPoints(scalar.at(si.isEmpty() ? 0 : end), key, text);
        }
        return new Points(si.toArray(double[][]::new), places.toArray(Place[]::new), scalar.place());
    }

    private static DesignError notPoints(Place place, String key, String text) {
        return new DesignError(
                place,
                key + ": \"" + text + "\" is not a point",
                "write points as \"(0, 140) (130, 140) (150, 330) mm\"");
    }

    static String word(Tree.Scalar scalar, String key) {
        if (scalar.empty()) {
            throw new DesignError(scalar.place(), key + ": nothing is written", "write a name or take the key out");
        }
        return scalar.text().strip();
    }

    static int count(Tree.Scalar scalar, String key) {
        try {
            int count = Integer.parseInt(scalar.text().strip());
            if (count > 0) {
                return count;
            }
        } catch (NumberFormatException e) {
            // said below, together with counts that are not positive
        }
        throw new DesignError(
                scalar.place(), key + ": \"" + scalar.text() + "\" is not a count", "write a whole number from 1 up");
    }

    static double number(Tree.Scalar scalar, String key) {
        try {
            double number = Double.parseDouble(scalar.text().strip());
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException e) {
            // said below, together with numbers that are not finite
        }
        throw new DesignError(
                scalar.place(),
                key + ": \"" + scalar.text() + "\" is not a finite number",
                "write a plain number without a unit");
    }

    static boolean yes(Tree.Scalar scalar, String key) {
        return switch (scalar.text().strip()) {
            case "yes", "true" -> true;
            case "no", "false" -> false;
            default ->
                throw new DesignError(
                        scalar.place(), key + ": \"" + scalar.text() + "\" is neither yes nor no", "write yes or no");
        };
    }

    static Object choice(Tree.Scalar scalar, String key, Class<?> type) {
        List<String> words = choices(type);
        String text = scalar.text().strip();
        int index = words.indexOf(text);
        if (index >= 0) {
            return type.getEnumConstants()[index];
        }
        throw new DesignError(
                scalar.place(),
                key + ": \"" + text + "\" is not a choice here",
                meant(text, words) + words.stream().map(w -> "\"" + w + "\"").collect(Collectors.joining(" or ")));
    }

    /** The words of an enum as written: {@code LONG_WAY} is {@code long way}. */
    static List<String> choices(Class<?> type) {
        return Arrays.stream(type.getEnumConstants())
                .map(c -> ((Enum<?>) c).name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .toList();
    }

    /** {@code did you mean "x"? } or nothing. */
    static String meant(String word, List<String> words) {
        Optional<String> nearest = NearestName.of(word, words);
        return nearest.map(n -> "did you mean \"" + n + "\"? ").orElse("");
    }
}
