// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Cuts a text into number and unit and checks the unit against what is wanted. */
final class QuantityReader {
    private static final String BLANK = "[\\s\\u00a0\\u202f]";
    private static final String SIGN = "([-+−]?)" + BLANK + "*";
    private static final Pattern DECIMAL = Pattern.compile(SIGN + "((?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+−]?\\d+)?)");

    /** Inch fractions as the trade writes cell sizes: {@code 3/16}, {@code 1 1/2}. */
    private static final Pattern FRACTION =
            Pattern.compile(SIGN + "(?:(\\d{1,9})" + BLANK + "+)?(\\d{1,9})/(\\d{1,9})(?![\\d.])");

    private QuantityReader() {}

    /** A text cut in two; the unit may be empty. */
    record Split(double number, String unit) {}

    static Split split(String text, List<String> suitable) {
        String read = text.strip();
        Matcher fraction = FRACTION.matcher(read);
        Matcher decimal = DECIMAL.matcher(read);
        double number;
        int end;
        if (fraction.lookingAt()) {
            double whole = fraction.group(2) == null ? 0 : Double.parseDouble(fraction.group(2));
            number = sign(fraction)
                    * (whole + Double.parseDouble(fraction.group(3)) / Double.parseDouble(fraction.group(4)));
            end = fraction.end();
        } else if (decimal.lookingAt()) {
            number = sign(decimal) * Double.parseDouble(decimal.group(2).replace('−', '-'));
            end = decimal.end();
        } else {
            String reason = read.isEmpty() ? "it is empty where a number with a unit is due" : "a number is due first";
            throw new QuantityException(read, 0, reason, suitable, Optional.empty());
        }
        if (!Double.isFinite(number)) {
            throw new QuantityException(read, 0, "the number is not finite", suitable, Optional.empty());
        }
        String rest = read.substring(end).strip();
        if (rest.startsWith(",")) {
            String reason = "a comma stands in the number; write 12000 for twelve thousand, 1.5 for one and a half";
            throw new QuantityException(read, end, reason, suitable, Optional.empty());
        }
        if (rest.matches("[\\d.].*") && !rest.matches("1(?:e-?\\d+)?" + BLANK + "*/.*")) {
            String reason = "there are two numbers; write digits without blanks between them";
            throw new QuantityException(read, end, reason, suitable, Optional.empty());
        }
        return new Split(number, rest);
    }

    private static double sign(Matcher matcher) {
        return matcher.group(1).isEmpty() || matcher.group(1).equals("+") ? 1 : -1;
    }

    static double readSi(String text, Dimension dimension) {
        String read = text.strip();
        List<String> suitable = dimension.usualUnits();
        Split split = split(read, suitable);
        int unitAt = read.length() - split.unit().length();
        if (split.unit().isEmpty()) {
            if (dimension.accepts(Unit.ONE)) {
                return split.number();
            }
            throw new QuantityException(
                    read,
                    unitAt,
                    "the unit is missing; " + dimension.withArticle() + " is wanted",
                    suitable,
                    Optional.empty());
        }
        if (dimension == Dimension.ACCELERATION && split.unit().equals("g")) {
            return Unit.of("g0").toSi(split.number()); // a crash or cornering load "in g"; a gram cannot be meant
        }
        Unit unit = unit(read, unitAt, split.unit(), suitable);
        if (!dimension.accepts(unit)) {
            String measured = Dimension.firstWith(unit.exponents())
                    .map(d -> " measures " + d.words() + ";")
                    .orElse(" is of another kind;");
            throw new QuantityException(
                    read,
                    unitAt,
                    "'" + split.unit() + "'" + measured + " " + dimension.withArticle() + " is wanted",
                    suitable,
                    likely(split.unit(), dimension));
        }
        double si = (dimension == Dimension.TEMPERATURE ? unit : unit.asDifference()).toSi(split.number());
        if (dimension == Dimension.TEMPERATURE && si < 0) {
            throw new QuantityException(read, 0, "it lies below absolute zero", suitable, Optional.empty());
        }
        if (!Double.isFinite(si)) {
            throw new QuantityException(read, 0, "the number is not finite", suitable, Optional.empty());
        }
        return si;
    }

    private static Unit unit(String read, int unitAt, String text, List<String> suitable) {
        try {
            return Unit.of(text);
        } catch (QuantityException e) {
            Optional<String> nearest = NearestName.of(text, suitable).or(e::nearestUnit);
            throw new QuantityException(read, unitAt + e.position(), e.reason(), suitable, nearest);
        }
    }

    /** Common slips: a pound mass where a force is due ({@code lb·ft} for {@code lbf·ft}, {@code kg} for {@code kgf}). */
    private static Optional<String> likely(String text, Dimension dimension) {
        for (String usual : dimension.usualUnits()) {
            if (usual.equalsIgnoreCase(text)) {
                return Optional.of(usual);
            }
        }
        for (String[] slip :
                new String[][] {{"lb", "lbf"}, {"kg", "kgf"}, {"NM", "N·m"}, {"mPa", "MPa"}, {"Kg", "kg"}}) {
            String candidate = text.replaceAll("(?<![A-Za-z])" + slip[0] + "(?![A-Za-z])", slip[1]);
            if (!candidate.equals(text)) {
                try {
                    if (dimension.accepts(Unit.of(candidate))) {
                        return Optional.of(candidate);
                    }
                } catch (QuantityException ignored) {
                    // not a unit either: no suggestion from this slip
                }
            }
        }
        return Optional.empty();
    }
}
