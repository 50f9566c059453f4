// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

/**
 * A number read of a design.
 *
 * @param text as written: {@code torsional stiffness}, {@code width at 1400 mm}
 * @param kind what it is
 * @param of the case, where one is named
 * @param at where or at what, SI, for kinds that ask
 */
public record Reading(String text, Kind kind, Optional<String> of, OptionalDouble at) {
    /** What may be read. */
    public enum Kind {
        /** Of the whole tub as a run tells it, kg. */
        MASS("mass", Dimension.MASS, "kg"),
        /** Of the first torsion case, or the one named, between its stations, N·m/rad. */
        TORSION("torsional stiffness", Dimension.TORSIONAL_STIFFNESS, "kN·m/deg"),
        /** Of the first bending case, or the one named, N/m. */
        BENDING("bending stiffness", Dimension.STIFFNESS, "kN/mm"),
        /** From wheel to wheel with all that is bolted on, N·m/rad. */
        HUB("stiffness from hub to hub", Dimension.TORSIONAL_STIFFNESS, "kN·m/deg"),
        /** Least over the load cases, spots at inserts and first cracks left out. */
        RESERVE("reserve factor", Dimension.DIMENSIONLESS, "1"),
        /** Least over the load cases, or over all cases where there is none. */
        BUCKLING("buckling factor", Dimension.DIMENSIONLESS, "1"),
        /** Of the tub free in space, Hz. */
        FREQUENCY("first torsion frequency", Dimension.FREQUENCY, "Hz"),
        /** Skin with openings cut out, m². */
        SKIN("skin area", Dimension.AREA, "m²"),
        /** Plies, counted over zones and patches; films and cores are none. */
        PLIES("plies", Dimension.DIMENSIONLESS, "1"),
        /** Area of all plies laid, m². */
        LAID("ply area", Dimension.AREA, "m²"),
        /** Enclosed by the section at a station, m². */
        ENCLOSED("enclosed area", Dimension.AREA, "m²", Dimension.LENGTH),
        /** Round the section at a station, m. */
        PERIMETER("perimeter", Dimension.LENGTH, "mm", Dimension.LENGTH),
        /** Largest of the section at a station, m. */
        WIDTH("width", Dimension.LENGTH, "mm", Dimension.LENGTH),
        /** Of the section at a station, m. */
        HEIGHT("height", Dimension.LENGTH, "mm", Dimension.LENGTH),
        /** Of the lightest layup found that has a torsional stiffness, kg. */
        LIGHTEST("lightest mass", Dimension.MASS, "kg", Dimension.TORSIONAL_STIFFNESS),
        /** Mass below which no layup has it, kg. */
        LIGHTEST_BOUND("bound of the lightest mass", Dimension.MASS, "kg", Dimension.TORSIONAL_STIFFNESS),
        /** Plies of the lightest layup found. */
        LIGHTEST_PLIES("plies of the lightest", Dimension.DIMENSIONLESS, "1", Dimension.TORSIONAL_STIFFNESS),
        /** Area of plies laid of the lightest layup found, m². */
        LIGHTEST_LAID("ply area of the lightest", Dimension.AREA, "m²", Dimension.TORSIONAL_STIFFNESS),
        /** Torsional stiffness of the stiffest layup found that weighs no more than this, N·m/rad. */
        STIFFEST("stiffest", Dimension.TORSIONAL_STIFFNESS, "kN·m/deg", Dimension.MASS);

        private final String words;
        private final Dimension dimension;
        private final String unit;
        private final Optional<Dimension> asks;

        Kind(String words, Dimension dimension, String unit) {
            this(words, dimension, unit, Optional.empty());
        }

        Kind(String words, Dimension dimension, String unit, Dimension asks) {
            this(words, dimension, unit, Optional.of(asks));
        }

        Kind(String words, Dimension dimension, String unit, Optional<Dimension> asks) {
            this.words = words;
            this.dimension = dimension;
            this.unit = unit;
            this.asks = asks;
        }

        /** As it is written. */
        public String words() {
            return words;
        }

        /** What it measures. */
        public Dimension dimension() {
            return dimension;
        }

        /** The unit it is shown in; {@code 1} for a plain number. */
        public String unit() {
            return unit;
        }

        /** What must be said after {@code at}, if anything. */
        public Optional<Dimension> asks() {
            return asks;
        }

        /** Whether a case may be named after {@code in}. */
        boolean ofCase() {
            return this == TORSION || this == BENDING;
        }

        /** Whether a search for another layup is needed. */
        boolean searched() {
            return ordinal() >= LIGHTEST.ordinal();
        }
    }

    /**
     * The reading of a text.
     *
     * @throws IllegalArgumentException with what would be right
     */
    public static Reading of(String text) {
        String words = text.strip();
        Optional<String> of = Optional.empty();
        OptionalDouble at = OptionalDouble.empty();
        String name = words;
        for (Kind each : Kind.values()) {
            if (each.ofCase() && words.startsWith(each.words + " in ")) {
                name = each.words;
                of = Optional.of(words.substring(each.words.length() + 4).strip());
            }
        }
        int place = words.lastIndexOf(" at ");
        if (place > 0) {
            name = words.substring(0, place).strip();
        }
        Kind kind = kind(name);
        if (place < 0 && kind.asks.isPresent()) {
            throw new IllegalArgumentException("\"" + words + "\" does not say at what\n    write it as \"" + kind.words
                    + " at " + example(kind.asks.get()) + "\"");
        }
        if (place > 0) {
            at = OptionalDouble.of(amount(kind, words, words.substring(place + 4)));
        }
        return new Reading(words, kind, of, at);
    }

    private static double amount(Kind kind, String words, String amount) {
        Dimension asks = kind.asks.orElseThrow(
                () -> new IllegalArgumentException("\"" + words + "\": " + kind.words + " is read at no place"));
        try {
            return Quantity.parse(amount.strip(), asks).si();
        } catch (QuantityException e) {
            throw new IllegalArgumentException(
                    "\"" + words + "\": " + e.reason() + "\n    write it as \"" + kind.words + " at " + example(asks)
                            + "\"",
                    e);
        }
    }

    private static String example(Dimension asks) {
        return switch (asks) {
            case LENGTH -> "1400 mm";
            case MASS -> "16 kg";
            default -> "10 kN·m/deg";
        };
    }

    private static Kind kind(String name) {
        List<String> known = Arrays.stream(Kind.values()).map(k -> k.words).toList();
        int at = known.indexOf(name);
        if (at < 0) {
            throw new IllegalArgumentException("nothing is called \"" + name + "\""
                    + NearestName.of(name, known)
                            .map(n -> "\n    did you mean \"" + n + "\"?")
                            .orElse("\n    there are: " + String.join(", ", known)));
        }
        return Kind.values()[at];
    }

    /** A value in the unit it is shown in; NaN stays what it is. */
    public double shown(double si) {
        return kind.unit.equals("1") || Double.isNaN(si) ? si : new Quantity(si, kind.dimension).in(kind.unit);
    }

    /** Its words and unit, for a heading: {@code mass (kg)}. */
    public String heading() {
        return kind.unit.equals("1") ? text : text + " (" + kind.unit + ")";
    }
}
