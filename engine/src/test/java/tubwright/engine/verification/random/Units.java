// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.random;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Units to write a drawn design in. A drawn design holds its quantities in SI between marks, {@code <L 0 .. 0.95>}, the
 * letter telling the kind: L length, E modulus, D density, M moment, F force, K stiffness, R rotational stiffness, W mass.
 */
enum Units {
    /** Millimetres and newtons. */
    METRIC(Map.of(
            'L', new Unit("mm", "0.001"),
            'E', new Unit("GPa", "1e9"),
            'D', new Unit("kg/m³", "1"),
            'M', new Unit("N·m", "1"),
            'F', new Unit("N", "1"),
            'K', new Unit("kN/mm", "1e6"),
            'R', new Unit("kN·m/rad", "1e3"),
            'W', new Unit("g", "0.001"))),
    /** Inches and pounds, by their definitions (inch 25.4 mm, pound .45359237 kg, standard gravity 9.80665 m/s²). */
    INCH(Map.of(
            'L', new Unit("in", "0.0254"),
            'E', new Unit("Msi", "6894757293.1683613367"),
            'D', new Unit("lb/in³", "27679.904710203122"),
            'M', new Unit("lbf·ft", "1.3558179483314004"),
            'F', new Unit("lbf", "4.4482216152605"),
            'K', new Unit("kN/mm", "1e6"),
            'R', new Unit("kN·m/rad", "1e3"),
            'W', new Unit("lb", "0.45359237")));

    private static final Pattern MARK = Pattern.compile("<([A-Z]) ([^>]*)>");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]*\\.?[0-9]+(E[+-]?[0-9]+)?");

    private final Map<Character, Unit> units;

    Units(Map<Character, Unit> units) {
        this.units = units;
    }

    private record Unit(String word, BigDecimal size) {
        Unit(String word, String size) {
            this(word, new BigDecimal(size));
        }
    }

    /** The text with every quantity in these units. */
    String write(String drawn) {
        return MARK.matcher(drawn).replaceAll(m -> {
            Unit unit = units.get(m.group(1).charAt(0));
            String numbers = NUMBER.matcher(m.group(2))
                    .replaceAll(n -> new BigDecimal(n.group())
                            .divide(unit.size, MathContext.DECIMAL64)
                            .stripTrailingZeros()
                            .toPlainString());
            return Matcher.quoteReplacement(numbers + " " + unit.word);
        });
    }
}
