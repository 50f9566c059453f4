// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tubwright.engine.quantity.Dimension;

/**
 * Regular expressions for the schema, in the dialect editors share (ECMA-262). They know the usual spellings of units; the
 * reader of the document accepts more.
 */
final class UnitPattern {
    private static final String NUMBER = "[-+−]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?";
    private static final String FRACTION = "(\\d+ +)?\\d+/\\d+";
    private static final String POSITIVE =
            "\\+?(?!0*\\.?0*([eE][-+]?\\d+)?([^.\\d]|$))(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?";
    /** Spellings beside the usual ones that a designer may well use. */
    private static final Map<Dimension, List<String>> MORE = Map.of(
            Dimension.LENGTH, List.of("cm", "ft", "µm"),
            Dimension.ANGLE, List.of("°"),
            Dimension.TIME, List.of("ms"),
            Dimension.MOMENT, List.of("lbf·in", "N·mm"),
            Dimension.TORSIONAL_STIFFNESS,
                    List.of("N·m/°", "kN·m/°", "kN·m/rad", "MN·m/rad", "lbf·in/deg", "N·mm/deg", "N·mm/rad"),
            Dimension.FORCE, List.of("MN", "kgf"),
            Dimension.STIFFNESS, List.of("kN/m", "MN/m"),
            Dimension.PRESSURE, List.of("Pa", "N/mm²", "bar"));

    private UnitPattern() {}

    private static String unit(Dimension dimension) {
        List<String> spellings = Stream.concat(
                        dimension.usualUnits().stream(), MORE.getOrDefault(dimension, List.of()).stream())
                .distinct()
                .toList();
        return spellings.stream().map(UnitPattern::escaped).collect(Collectors.joining("|", "(", ")"));
    }

    private static String escaped(String unit) {
        StringBuilder pattern = new StringBuilder();
        for (char c : unit.toCharArray()) {
            switch (c) {
                case '·' -> pattern.append("[·*. ⋅-]?");
                case '²' -> pattern.append("(²|\\^2|\\*\\*2)");
                case '³' -> pattern.append("(³|\\^3|\\*\\*3)");
                case '⁴' -> pattern.append("(⁴|\\^4|\\*\\*4)");
                case '/' -> pattern.append("\\s*/\\s*");
                case '.', '^', '*', '$' -> pattern.append('\\').append(c);
                default -> pattern.append(c);
            }
        }
        return pattern.toString();
    }

    private static String one(Dimension dimension, boolean positive) {
        return "(" + (positive ? POSITIVE : NUMBER) + "|" + FRACTION + ")\\s*" + unit(dimension)
                + (bare(dimension) ? "?" : "");
    }

    /** True for what may be written as a plain number. */
    static boolean bare(Dimension dimension) {
        return dimension == Dimension.DIMENSIONLESS || dimension == Dimension.MOISTURE_EXPANSION;
    }

    static String amount(Dimension dimension, boolean positive) {
        return "^\\s*" + one(dimension, positive) + "\\s*$";
    }

    static String amounts(In in) {
        return "^\\s*(" + NUMBER + "\\s*" + unit(in.value()) + "?\\s*[,x×]\\s*)*" + NUMBER + "\\s*" + unit(in.value())
                + "\\s*$";
    }

    static String points(In in) {
        String coordinate = "\\s*" + NUMBER + "\\s*";
        return "^\\s*(\\(" + coordinate + "," + coordinate + "\\)\\s*)+" + unit(in.value()) + "\\s*$";
    }

    static String span(In in) {
        return "^\\s*" + NUMBER + "\\s*" + unit(in.value()) + "?\\s*\\.\\.\\s*" + NUMBER + "\\s*" + unit(in.value())
                + "\\s*$";
    }

    static String limit(In in) {
        return "^(at least|at most)\\s+" + one(in.value(), in.positive()) + "\\s*$";
    }
}
